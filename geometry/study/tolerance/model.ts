/**
 * The static moment of a bar as a linear function of what may be off about it: M + Σξᵢaᵢ, each ξ between −1 and 1 at its
 * limits. Moments in g·mm about the axis of the bore, of a plate of the nominal thickness. What is of second order, such
 * as the corner between two edges that both lie farther out, is left out.
 */
import type { Section } from "../../figures/section.ts";
import type { Point } from "../../language/design.ts";
import type { InnerLoop, Outline } from "../../outline/segment.ts";
import { signedAreaOf } from "../../outline/segment-geometry.ts";
import { norm, ORIGIN, plus, times } from "../../outline/vector.ts";
import type { CutTolerance } from "./cut-tolerance.ts";
import { type Edge, edgesOf, widthOf } from "./edges.ts";

export const CAUSES = ["wedge", "edges", "holes", "bore"] as const;
export type Cause = (typeof CAUSES)[number];

/** One thing that may be off, at its upper limit. */
export interface Influence {
  readonly cause: Exclude<Cause, "wedge">;
  /** What it does to the static moment, g·mm. */
  readonly momentGMm: Point;
  /** What it does to the mass, g. */
  readonly massG: number;
}

export interface BalanceModel {
  /** Of the outline as drawn. */
  readonly momentGMm: Point;
  readonly massG: number;
  readonly influences: readonly Influence[];
  /** The moment that a thickness growing by 1 mm over 1 mm along +x, or along +y, adds: g·mm. */
  readonly wedge: { readonly alongX: Point; readonly alongY: Point };
}

export interface ModelTask {
  readonly outline: Outline;
  readonly section: Section;
  readonly thicknessMm: number;
  readonly gPerMm3: number;
  readonly cut: CutTolerance;
  /** Whether each edge is off for itself, or all lie farther out or in alike, as a wrong kerf leaves them. */
  readonly edges: "each" | "together";
}

/**
 * A dimension lies between two edges, or an edge and a hole; each of the two ends takes half of what the dimension may be
 * off. `null` where the tolerance says nothing of a dimension.
 */
export function balanceModel(task: ModelTask): BalanceModel | null {
  const { section, thicknessMm, gPerMm3 } = task;
  const gPerMm2 = thicknessMm * gPerMm3;
  const massG = section.areaMm2 * gPerMm2;
  const shifts = edgeInfluences(task, gPerMm2);
  const places = placeInfluences(task, gPerMm2, massG);
  if (!shifts || !places) return null;
  const { xx, yy, xy } = section.secondMomentsMm4;
  return {
    momentGMm: times(section.centroidMm ?? ORIGIN, massG),
    massG,
    influences: [...shifts, ...places],
    wedge: { alongX: times({ x: yy, y: xy }, gPerMm3), alongY: times({ x: xy, y: xx }, gPerMm3) },
  };
}

const HALF = 0.5;

function edgeInfluences(
  { outline, thicknessMm, cut, edges }: ModelTask,
  gPerMm2: number,
): readonly Influence[] | null {
  const all = [outline.outer, ...outline.inner].flatMap((loop) => edgesOf(loop, thicknessMm));
  const found: Influence[] = [];
  for (const edge of all) {
    const influence = influenceOf(edge, cut, gPerMm2);
    if (!influence) return null;
    found.push(influence);
  }
  if (edges === "each") return found;
  return [
    {
      cause: "edges",
      momentGMm: found.reduce((sum, { momentGMm }) => plus(sum, momentGMm), ORIGIN),
      massG: found.reduce((sum, influence) => sum + influence.massG, 0),
    },
  ];
}

/** Farther out is more metal, at the edge of a hole too. */
function influenceOf(
  { lengthMm, momentMm2, acrossMm }: Edge,
  cut: CutTolerance,
  gPerMm2: number,
): Influence | null {
  const limit = cut.limitMm(acrossMm);
  if (limit === null) return null;
  const widthMm = limit * HALF;
  return {
    cause: "edges",
    momentGMm: times(momentMm2, widthMm * gPerMm2),
    massG: lengthMm * widthMm * gPerMm2,
  };
}

/** Along x and along y, each for itself. A bore that is off takes the axis with it: all else is off the other way. */
function placeInfluences(
  { outline, cut }: ModelTask,
  gPerMm2: number,
  massG: number,
): readonly Influence[] | null {
  const found: Influence[] = [];
  for (const loop of outline.inner) {
    const isBore = loop.kind === "bore";
    const areaMm2 = Math.abs(signedAreaOf(loop));
    const limit = cut.limitMm(isBore ? widestOf(outline) / 2 : norm(middleOf(loop)));
    if (limit === null) return null;
    const weight = isBore ? massG + areaMm2 * gPerMm2 : areaMm2 * gPerMm2;
    const offMm = limit * HALF;
    for (const along of [X, Y])
      found.push({ cause: isBore ? "bore" : "holes", momentGMm: times(along, -weight * offMm), massG: 0 });
  }
  return found;
}

const X: Point = { x: 1, y: 0 };
const Y: Point = { x: 0, y: 1 };

function widestOf({ outer }: Outline): number {
  return Math.max(widthOf(outer, X), widthOf(outer, Y));
}

/** Of its corners and arcs, near enough to look a dimension up. */
function middleOf({ segments }: InnerLoop): Point {
  const sum = segments.reduce(
    (total, segment) => plus(total, segment.kind === "arc" ? segment.centre : segment.from),
    ORIGIN,
  );
  return times(sum, 1 / Math.max(1, segments.length));
}

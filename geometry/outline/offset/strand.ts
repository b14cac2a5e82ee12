/**
 * An outline as the strands that an offset is made of: its segments, and its convex corners as arcs of radius 0. At a
 * distance a strand becomes its curve there: a line moved outwards, an arc about the same centre. Every point of a
 * strand moves along its own normal, so a fraction of the strand is the same fraction of its curve at any distance.
 */
import type { Point } from "../../language/design.ts";
import type { ArcSegment, Loop, Segment } from "../segment.ts";
import { tangentAt } from "../segment-geometry.ts";
import { SAME_DIRECTION_RAD } from "../tolerance.ts";
import { angleOf, leftOf, plus, times, turnBetween, unit } from "../vector.ts";

/** Where a segment of an offset loop comes from. A corner stands between the segment of its index and the next. */
export type OffsetSource =
  | { readonly kind: "segment"; readonly index: number }
  | { readonly kind: "corner"; readonly index: number };

export interface Strand {
  readonly source: OffsetSource;
  readonly base: Segment;
  /** The directions, away from the metal, in which the two ends move; strands that run on share them exactly. */
  readonly startNormal: Point;
  readonly endNormal: Point;
  /** Its place along the outline, from 0. */
  readonly order: number;
  /** Whether the next strand starts where this one ends, in the same direction, at every distance. */
  readonly runsOn: boolean;
}

/** Directions that differ by less are equal but for rounding. */
const TANGENT_RAD = 1e-9;

/** The strands of a counter-clockwise loop, in its order. */
export function strandsOf(outer: Loop): Strand[] {
  const { segments } = outer;
  const joints = segments.map((segment, i) =>
    jointOf(segment, segments[(i + 1) % segments.length] ?? segment),
  );
  const strands = segments.flatMap((base, index) => {
    const before = joints.at(index - 1);
    const after = joints[index];
    if (before === undefined || after === undefined) return [];
    const strand = { source: { kind: "segment", index }, base, startNormal: before.after } as const;
    const along = { ...strand, endNormal: after.before, runsOn: after.runsOn };
    return after.fan === null ? [along] : [along, fanStrand(index, after, after.fan)];
  });
  return strands.map((strand, order) => ({ ...strand, order }));
}

/** How two neighbours part: the normals at their common end, and the arc of radius 0 that fills a convex corner. */
interface Joint {
  readonly before: Point;
  readonly after: Point;
  readonly fan: ArcSegment | null;
  readonly runsOn: boolean;
}

function fanStrand(index: number, { before, after }: Joint, base: ArcSegment): Omit<Strand, "order"> {
  return { source: { kind: "corner", index }, base, startNormal: before, endNormal: after, runsOn: true };
}

function jointOf(a: Segment, b: Segment): Joint {
  const before = outwardOf(tangentAt(a, 1));
  const after = outwardOf(tangentAt(b, 0));
  const turnRad = cornerTurn(a, b, turnBetween(before, after));
  if (Math.abs(turnRad) <= SAME_DIRECTION_RAD) {
    // The common normal lies off either by half the turn at most, and its point off either curve by its square.
    const common = unit(plus(before, after));
    return { before: common, after: common, fan: null, runsOn: Math.abs(turnRad) <= TANGENT_RAD };
  }
  if (turnRad < 0) return { before, after, fan: null, runsOn: false };
  const corner = b.from;
  const fan: ArcSegment = {
    kind: "arc",
    from: corner,
    to: corner,
    centre: corner,
    radiusMm: 0,
    startRad: angleOf(before),
    sweepRad: turnRad,
    source: a.source,
  };
  return { before, after, fan, runsOn: true };
}

const outwardOf = (tangent: Point): Point => times(leftOf(tangent), -1);

/**
 * The turn at a corner, positive to the left. Where one segment runs straight back along the other, rounding hides
 * whether that is a spike or a slit; what tells is which of the two bends away to which side.
 */
function cornerTurn(a: Segment, b: Segment, turnRad: number): number {
  if (Math.PI - Math.abs(turnRad) > SAME_DIRECTION_RAD) return turnRad;
  const bend = bendOf(a) + bendOf(b);
  if (bend === 0) return turnRad;
  return bend < 0 ? Math.PI : -Math.PI;
}

/** Curvature in 1/mm, positive to the left. */
const bendOf = (segment: Segment): number =>
  segment.kind === "line" ? 0 : Math.sign(segment.sweepRad) / segment.radiusMm;

/** A part of a strand, between two fractions of it. */
export interface Stretch {
  readonly strand: Strand;
  readonly start: number;
  readonly end: number;
}

/**
 * The whole strand's curve at a distance, or null where a concave arc has shrunk to nothing: of what lies beyond its
 * centre no point is as far from the arc as the distance.
 */
export function curveAt(strand: Strand, distanceMm: number, leastRadiusMm: number): Segment | null {
  const { base, startNormal, endNormal } = strand;
  const from = plus(base.from, times(startNormal, distanceMm));
  const to = plus(base.to, times(endNormal, distanceMm));
  if (base.kind === "line") return { ...base, from, to };
  const radiusMm = base.radiusMm + Math.sign(base.sweepRad) * distanceMm;
  return radiusMm <= leastRadiusMm ? null : { ...base, from, to, radiusMm };
}

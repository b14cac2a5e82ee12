/** A tooth worn from its tip: what is farther out than a radius is gone, and an arc about the axis is left there. */
import type { Point } from "../../language/design.ts";
import { arcAbout } from "../../outline/arc.ts";
import type { ArcSegment, LineSegment, Loop, Segment } from "../../outline/segment.ts";
import { arcFractionAt, distanceToSegment, pointAt } from "../../outline/segment-geometry.ts";
import { SAME_POINT_MM } from "../../outline/tolerance.ts";
import { joined, pieceOf } from "../../outline/trim.ts";
import { angleOf, dot, minus, norm, ORIGIN } from "../../outline/vector.ts";

/**
 * A counter-clockwise loop about the axis whose parts beyond `radiusMm` are worn down to it where they hold one of the
 * `tips`; other parts stay. `null` where nothing would be left within.
 */
export function wornTips(loop: Loop, radiusMm: number, tips: readonly Point[]): Loop | null {
  const pieces = loop.segments.flatMap((segment) => cutAt(segment, radiusMm));
  const isOutside = pieces.map((piece) => norm(pointAt(piece, 0.5)) > radiusMm);
  const first = isOutside.findIndex((outside, i) => !outside && isOutside[(i + 1) % pieces.length] === true);
  if (!isOutside.includes(true)) return loop;
  if (first < 0) return null;
  // From a piece within, so that no part beyond is split by where the loop begins.
  const turned = [...pieces.slice(first), ...pieces.slice(0, first)];
  const kept: Segment[] = [];
  let beyond: Segment[] = [];
  for (const piece of [...turned, ...turned.slice(0, 1)]) {
    if (norm(pointAt(piece, 0.5)) > radiusMm) {
      beyond.push(piece);
      continue;
    }
    kept.push(...wornRun(beyond, radiusMm, tips));
    beyond = [];
    if (kept.length === 0 || piece !== turned[0]) kept.push(piece);
  }
  return { ...loop, segments: joined(kept) };
}

function wornRun(run: readonly Segment[], radiusMm: number, tips: readonly Point[]): readonly Segment[] {
  const [first, last] = [run[0], run.at(-1)];
  if (!first || !last) return [];
  const holdsTip = tips.some((tip) => run.some((piece) => distanceToSegment(piece, tip) <= SAME_POINT_MM));
  return holdsTip ? [arcAbout(ORIGIN, first.from, last.to, 1, first.source, radiusMm)] : run;
}

/** A segment cut where it crosses the circle. */
function cutAt(segment: Segment, radiusMm: number): Segment[] {
  const crossings = segment.kind === "line" ? onLine(segment, radiusMm) : onArc(segment, radiusMm);
  const inner = crossings.filter((share) => share > SLIVER && share < 1 - SLIVER).sort((a, b) => a - b);
  const cuts = [0, ...inner, 1];
  return cuts.slice(1).map((end, i) => pieceOf(segment, cuts[i] ?? 0, end));
}

/** A cut this near to an end, as a share of the segment, is the end. */
const SLIVER = 1e-9;

/** |from + s·along| = r, solved for s. */
function onLine({ from, to }: LineSegment, radiusMm: number): number[] {
  const along = minus(to, from);
  const square = dot(along, along);
  const half = dot(from, along) / square;
  const under = half * half - (dot(from, from) - radiusMm * radiusMm) / square;
  if (!(under > 0)) return [];
  return [-half - Math.sqrt(under), -half + Math.sqrt(under)];
}

/** Two circles: the angle at the arc's centre by the law of cosines. */
function onArc(arc: ArcSegment, radiusMm: number): number[] {
  const off = norm(arc.centre);
  if (off === 0) return [];
  const cosine = (radiusMm ** 2 - off ** 2 - arc.radiusMm ** 2) / (2 * off * arc.radiusMm);
  if (!(Math.abs(cosine) < 1)) return [];
  const outward = angleOf(arc.centre);
  return [outward - Math.acos(cosine), outward + Math.acos(cosine)].map((angle) => arcFractionAt(arc, angle));
}

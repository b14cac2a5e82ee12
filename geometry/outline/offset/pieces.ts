/** The curves at a distance, cut where they meet. */
import type { Point } from "../../language/design.ts";
import { forNearPairs } from "../check/near-pairs.ts";
import { crossings } from "../intersect.ts";
import type { Segment } from "../segment.ts";
import { type Bounds, boundsOf, distanceToSegment, nearestOn } from "../segment-geometry.ts";
import { pieceOf } from "../trim.ts";
import { surelyApart } from "./apart.ts";
import { samePoints } from "./same-points.ts";
import { curveAt, type Stretch } from "./strand.ts";
import type { OffsetTolerances } from "./tolerances.ts";

/** A piece between two meetings, no other meeting between them. Its segment ends exactly at its two nodes. */
export interface Piece extends Stretch {
  readonly segment: Segment;
  readonly fromNode: number;
  readonly toNode: number;
}

/** A stretch's curve with the places where it is cut, its own ends first. */
interface CutCurve {
  readonly stretch: Stretch;
  readonly curve: Segment;
  readonly box: Bounds;
  readonly cuts: { readonly fraction: number; readonly point: Point }[];
}

/**
 * The pieces of the stretches' curves at a distance.
 * @param strandCount how many strands the whole outline has
 */
export function piecesAt(
  stretches: readonly Stretch[],
  distanceMm: number,
  strandCount: number,
  tolerances: OffsetTolerances,
): Piece[] {
  const curves = stretches.flatMap((stretch) => cutCurve(stretch, distanceMm, tolerances));
  forNearPairs(curves, tolerances.touchMm, (a, b) => {
    if (runsOn(a.stretch, b.stretch, strandCount) || runsOn(b.stretch, a.stretch, strandCount)) return;
    cutWhereMeeting(a, b, tolerances.touchMm);
  });
  return betweenCuts(curves, tolerances);
}

function cutCurve(stretch: Stretch, distanceMm: number, { sameMm }: OffsetTolerances): CutCurve[] {
  // An arc this small may go: its neighbours' ends are one point without it.
  const whole = curveAt(stretch.strand, distanceMm, sameMm / 4);
  if (whole === null) return [];
  const curve = pieceOf(whole, stretch.start, stretch.end);
  const cuts = [
    { fraction: 0, point: curve.from },
    { fraction: 1, point: curve.to },
  ];
  return [{ stretch, curve, box: boundsOf(curve), cuts }];
}

/** Whether `b` goes on where `a` ends: tangent curves, which meet nowhere else. */
function runsOn(a: Stretch, b: Stretch, strandCount: number): boolean {
  const isNext = b.strand.order === (a.strand.order + 1) % strandCount;
  return isNext && a.strand.runsOn && a.end === 1 && b.start === 0;
}

function cutWhereMeeting(a: CutCurve, b: CutCurve, touchMm: number): void {
  if (surelyApart(a.curve, b.curve, touchMm)) return;
  const touches = (curve: Segment, point: Point): boolean => distanceToSegment(curve, point) <= touchMm;
  const points = [
    ...[a.curve.from, a.curve.to].filter((end) => touches(b.curve, end)),
    ...[b.curve.from, b.curve.to].filter((end) => touches(a.curve, end)),
    ...crossings(a.curve, b.curve, touchMm),
  ];
  for (const point of points) {
    for (const { curve, cuts } of [a, b]) cuts.push({ fraction: nearestOn(curve, point).fraction, point });
  }
}

function betweenCuts(curves: readonly CutCurve[], { sameMm }: OffsetTolerances): Piece[] {
  const points = curves.flatMap(({ cuts }) => cuts.map(({ point }) => point));
  const nodes = samePoints(points, sameMm);
  let passed = 0;
  return curves.flatMap((curve) => {
    const places = curve.cuts.map(({ fraction }, i): Place => {
      const node = nodes[passed + i] ?? 0;
      return { fraction, node, point: points[node] ?? curve.curve.from };
    });
    passed += places.length;
    places.sort((a, b) => a.fraction - b.fraction);
    return places.slice(1).flatMap((to, i) => pieceBetween(curve, places[i] ?? to, to));
  });
}

/** A cut with the node it is at, and the node's point. */
interface Place {
  readonly fraction: number;
  readonly node: number;
  readonly point: Point;
}

/** A piece of a curve, or none where it has no length; one that comes back to its start after a full turn has. */
function pieceBetween({ stretch, curve }: CutCurve, from: Place, to: Place): Piece[] {
  const sweepRad = curve.kind === "arc" ? (to.fraction - from.fraction) * Math.abs(curve.sweepRad) : 0;
  if (from.node === to.node && sweepRad < Math.PI) return [];
  const segment = { ...pieceOf(curve, from.fraction, to.fraction), from: from.point, to: to.point };
  const [start, end] = [alongStretch(stretch, from.fraction), alongStretch(stretch, to.fraction)];
  return [{ strand: stretch.strand, start, end, segment, fromNode: from.node, toNode: to.node }];
}

/** A fraction of a stretch as a fraction of its strand; the ends stay exactly what they are. */
function alongStretch({ start, end }: Stretch, fraction: number): number {
  return fraction === 1 ? end : start + fraction * (end - start);
}

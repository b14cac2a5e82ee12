/**
 * A tooth whose face is ground back: the line or arc that is its face goes into the metal, parallel to itself. At the
 * tip it meets the back of the tooth anew; at the root it ends as far in as the old face did, with a step square to
 * it, and the root's own rounding stays as drawn.
 *
 *          back of the tooth
 *      ───────P────────T        T  the tip, A  where the face begins, B  where it ends
 *             │        │
 *             │ ground │ face   P  the new tip
 *             │        │
 *             B'───────B___ root
 */
import type { Point } from "../../language/design.ts";
import type { SpinDirection } from "../../language/tree.ts";
import { lineBetween } from "../../outline/arc.ts";
import { intersections } from "../../outline/intersect.ts";
import type { Loop, Segment } from "../../outline/segment.ts";
import { distanceToSegment, lengthOf, nearestOn, normalAt } from "../../outline/segment-geometry.ts";
import { SAME_POINT_MM } from "../../outline/tolerance.ts";
import { mirroredLoop, reversedLoop } from "../../outline/transform.ts";
import { joined, pieceOf } from "../../outline/trim.ts";
import { distance, FULL_TURN, minus, norm, plus, polar, times } from "../../outline/vector.ts";

/**
 * A counter-clockwise loop with the faces at its `tips` ground back by `byMm`. The face is on the side to which the bar
 * turns. `null` where a tip has no face, or where that far back nothing of the tooth's back is met.
 */
export function groundFaces(
  loop: Loop,
  byMm: number,
  tips: readonly Point[],
  direction: SpinDirection,
): Loop | null {
  if (byMm === 0) return loop;
  if (direction === "cw") {
    const mirrored = groundFaces(flippedLoop(loop), byMm, tips.map(flipped), "ccw");
    return mirrored && flippedLoop(mirrored);
  }
  return tips.reduce<Loop | null>((ground, tip) => ground && groundAt(ground, byMm, tip), loop);
}

/** Reflected in the x axis and run counter-clockwise again: what turns clockwise then turns counter-clockwise. */
function flippedLoop(loop: Loop): Loop {
  return reversedLoop(mirroredLoop(loop, "x"));
}

const flipped = ({ x, y }: Point): Point => ({ x, y: -y });

function groundAt(loop: Loop, byMm: number, tip: Point): Loop | null {
  const row = fromTip(loop, tip);
  const at = row && faceIndex(row);
  const face = row && at !== null ? row[at] : undefined;
  if (!row || at === null || !face) return null;
  const ground = movedIn(face, byMm);
  if (!ground) return null;
  // From where the old face ends once round to where it begins; looked through from there, over the tip to the back.
  const others = [...row.slice(at + 1), ...row.slice(0, at)];
  for (let i = others.length - 1; i >= others.length / 2; i -= 1) {
    const segment = others[i];
    const tipShare = segment ? lastMeeting(segment, ground) : null;
    if (!segment || tipShare === null) continue;
    const back = pieceOf(segment, 0, tipShare);
    const newFace = beginningAt(ground, back.to);
    const pieces = [...others.slice(0, i), back, newFace, lineBetween(newFace.to, face.to, face.source)];
    return { ...loop, segments: joined(pieces.filter((piece) => lengthOf(piece) > SAME_POINT_MM)) };
  }
  return null;
}

/** The loop from its tip on; an arc that the tip lies on is cut there. */
function fromTip({ segments }: Loop, tip: Point): readonly Segment[] | null {
  const begins = segments.findIndex(({ from }) => distance(from, tip) <= SAME_POINT_MM);
  if (begins >= 0) return [...segments.slice(begins), ...segments.slice(0, begins)];
  const on = segments.findIndex((segment) => distanceToSegment(segment, tip) <= SAME_POINT_MM);
  const segment = segments[on];
  if (!segment) return null;
  const { fraction } = nearestOn(segment, tip);
  return [
    pieceOf(segment, fraction, 1),
    ...segments.slice(on + 1),
    ...segments.slice(0, on),
    pieceOf(segment, 0, fraction),
  ];
}

/** Behind a tip that is rounded, or flat about the axis, comes the face; else it begins at the tip. */
function faceIndex([first, second]: readonly Segment[]): number | null {
  if (!first || !second) return null;
  if (first.kind === "line") return 0;
  const isFlat = norm(first.centre) <= SAME_POINT_MM;
  const isRounding = second.kind === "line" && lengthOf(first) < lengthOf(second);
  return isFlat || isRounding ? 1 : 0;
}

/** The face moved into the metal and drawn out beyond the tip; it runs inwards as the face does. */
function movedIn(face: Segment, byMm: number): Segment | null {
  if (face.kind === "line") {
    const into = times(normalAt(face, 0), byMm);
    const [from, to] = [plus(face.from, into), plus(face.to, into)];
    const longer = times(minus(from, to), norm(face.from) / distance(from, to));
    return { ...face, from: plus(from, longer), to };
  }
  const radiusMm = face.radiusMm - byMm * Math.sign(face.sweepRad);
  if (!(radiusMm > SAME_POINT_MM)) return null;
  const { centre, startRad, sweepRad } = face;
  const more = Math.sign(sweepRad) * Math.min(FULL_TURN / 4, (FULL_TURN - Math.abs(sweepRad)) / 2);
  const start = startRad - more;
  return {
    ...face,
    radiusMm,
    startRad: start,
    sweepRad: sweepRad + more,
    from: polar(centre, radiusMm, start),
    to: polar(centre, radiusMm, startRad + sweepRad),
  };
}

/** Where a segment meets the ground face last, as a fraction of it. */
function lastMeeting(segment: Segment, ground: Segment): number | null {
  const shares = intersections(segment, ground).map((point) => nearestOn(segment, point).fraction);
  return shares.length === 0 ? null : Math.max(...shares);
}

function beginningAt(ground: Segment, point: Point): Segment {
  return { ...pieceOf(ground, nearestOn(ground, point).fraction, 1), from: point };
}

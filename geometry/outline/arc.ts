/**
 * Arcs from what describes them. Turning left is counter-clockwise. Nothing here judges what a builder wrote; the
 * callers make sure that the arc exists.
 */
import type { Point } from "../language/design.ts";
import type { TextRange } from "../language/text.ts";
import type { Turning } from "../language/tree.ts";
import type { ArcSegment, LineSegment, Segment } from "./segment.ts";
import {
  angleOf,
  cross,
  direction,
  distance,
  dot,
  FULL_TURN,
  leftOf,
  midpoint,
  minus,
  plus,
  polar,
  times,
  turnBetween,
  wrapped,
} from "./vector.ts";

/** +1 for left, −1 for right: the sign of the sweep. */
export const signOf = (turning: Turning): 1 | -1 => (turning === "left" ? 1 : -1);

export function lineBetween(from: Point, to: Point, source: TextRange): LineSegment {
  return { kind: "line", from, to, source };
}

/** The arc about a centre from one point to another, less than a full turn, `sign` 1 to the left and −1 to the right. */
export function arcAbout(
  centre: Point,
  from: Point,
  to: Point,
  sign: 1 | -1,
  source: TextRange,
  radiusMm: number = (distance(centre, from) + distance(centre, to)) / 2,
): ArcSegment {
  const startRad = angleOf(minus(from, centre));
  const sweepRad = sign * wrapped(sign * (angleOf(minus(to, centre)) - startRad));
  return { kind: "arc", from, to, centre, radiusMm, startRad, sweepRad, source };
}

/** A full turn about a centre from a point back to it. */
export function fullTurn(centre: Point, from: Point, sign: 1 | -1, source: TextRange): ArcSegment {
  const outward = minus(from, centre);
  const radiusMm = distance(centre, from);
  const startRad = angleOf(outward);
  return { kind: "arc", from, to: from, centre, radiusMm, startRad, sweepRad: sign * FULL_TURN, source };
}

/** A clockwise circle, as the inner loops run, from its rightmost point. */
export function circle(centre: Point, radiusMm: number, source: TextRange): ArcSegment {
  const from = polar(centre, radiusMm, 0);
  return { kind: "arc", from, to: from, centre, radiusMm, startRad: 0, sweepRad: -FULL_TURN, source };
}

/** The half circle between two points. */
export function halfCircle(from: Point, to: Point, sign: 1 | -1, source: TextRange): ArcSegment {
  const centre = midpoint(from, to);
  const startRad = angleOf(minus(from, centre));
  const radiusMm = distance(from, to) / 2;
  return { kind: "arc", from, to, centre, radiusMm, startRad, sweepRad: sign * Math.PI, source };
}

/**
 * The arc of a radius between two points, on the short way or the long way round. The radius is more than half the
 * chord. The centre of a short left arc lies to the left of the chord.
 */
export function arcOfRadius(
  from: Point,
  to: Point,
  radiusMm: number,
  turning: Turning,
  long: boolean,
  source: TextRange,
): ArcSegment {
  const halfChord = distance(from, to) / 2;
  // Factored, so that a radius close to half the chord keeps its digits.
  const height = Math.sqrt((radiusMm - halfChord) * (radiusMm + halfChord));
  const sign = signOf(turning);
  const side = sign * (long ? -1 : 1);
  const toCentre = times(leftOf(direction(from, to)), side * height);
  const centre = plus(midpoint(from, to), toCentre);
  const shortSweep = 2 * Math.atan2(halfChord, height);
  const sweepRad = sign * (long ? FULL_TURN - shortSweep : shortSweep);
  return {
    kind: "arc",
    from,
    to,
    centre,
    radiusMm,
    startRad: angleOf(minus(from, centre)),
    sweepRad,
    source,
  };
}

/** The arc through three points that do not lie on one line. */
export function arcThrough(from: Point, through: Point, to: Point, source: TextRange): ArcSegment {
  const a = minus(through, from);
  const b = minus(to, from);
  const twiceArea = cross(a, b);
  const aa = dot(a, a);
  const bb = dot(b, b);
  // The point equally far from all three: the circumcentre, relative to `from`.
  const centre = plus(from, {
    x: (b.y * aa - a.y * bb) / (2 * twiceArea),
    y: (a.x * bb - b.x * aa) / (2 * twiceArea),
  });
  // From `from` over a point to the right of the chord, one turns left, and the other way about.
  return arcAbout(centre, from, to, twiceArea > 0 ? 1 : -1, source);
}

/** Below this bend an arc is as good as its chord: 1e-9 rad over a metre is a rise of a quarter of a nanometre. */
const STRAIGHT_RAD = 1e-9;

/** The arc that leaves a point in a direction and ends at another point; a line where that is straight ahead. */
export function arcByTangent(from: Point, tangent: Point, to: Point, source: TextRange): Segment {
  const chord = minus(to, from);
  const halfSweep = turnBetween(tangent, chord);
  if (Math.abs(halfSweep) < STRAIGHT_RAD) return lineBetween(from, to, source);
  const radiusMm = distance(from, to) / (2 * Math.sin(Math.abs(halfSweep)));
  const sign = halfSweep > 0 ? 1 : -1;
  const centre = plus(from, times(leftOf(tangent), sign * radiusMm));
  const startRad = angleOf(minus(from, centre));
  return { kind: "arc", from, to, centre, radiusMm, startRad, sweepRad: 2 * halfSweep, source };
}

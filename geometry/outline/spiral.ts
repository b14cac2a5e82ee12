/**
 * A spiral about the spin axis, radius linear in the angle, as arcs that a cutting head can follow: pairs of arcs that
 * join without a kink and touch the true curve at every second joint, with its direction there.
 */
import type { Point } from "../language/design.ts";
import type { TextRange } from "../language/text.ts";
import type { Turning } from "../language/tree.ts";
import { arcByTangent, signOf } from "./arc.ts";
import type { Segment } from "./segment.ts";
import { distanceToSegment } from "./segment-geometry.ts";
import { reversedSegment } from "./transform.ts";
import { angleOf, dot, minus, norm, ORIGIN, plus, polar, times, unit, wrapped } from "./vector.ts";

/** The arcs stay this near to the true spiral: a tenth of what the best of cuts holds. */
export const SPIRAL_DEVIATION_MM = 0.005;

/** radius(φ) = startRadiusMm + risePerRad·φ at the angle startRad + sign·φ, for φ from 0 to sweepRad. */
interface Spiral {
  readonly startRadiusMm: number;
  readonly risePerRad: number;
  readonly startRad: number;
  readonly sweepRad: number;
  readonly sign: 1 | -1;
}

/** The spiral from one point to another; its sweep lies between 0 (both on one ray) and a full turn. */
function spiralBetween(from: Point, to: Point, turning: Turning): Spiral {
  const sign = signOf(turning);
  const startRad = angleOf(from);
  const sweepRad = wrapped(sign * (angleOf(to) - startRad));
  const startRadiusMm = norm(from);
  return { startRadiusMm, risePerRad: (norm(to) - startRadiusMm) / sweepRad, startRad, sweepRad, sign };
}

const radiusAt = (spiral: Spiral, phi: number): number => spiral.startRadiusMm + spiral.risePerRad * phi;
const angleAt = (spiral: Spiral, phi: number): number => spiral.startRad + spiral.sign * phi;

/** The point of the true curve. */
function spiralPoint(spiral: Spiral, phi: number): Point {
  return polar(ORIGIN, radiusAt(spiral, phi), angleAt(spiral, phi));
}

/** The unit tangent of the true curve: along the ray by the rise, across it by the radius. */
function spiralTangent(spiral: Spiral, phi: number): Point {
  const angle = angleAt(spiral, phi);
  const ray = { x: Math.cos(angle), y: Math.sin(angle) };
  const across = { x: -ray.y * spiral.sign, y: ray.x * spiral.sign };
  return unit(plus(times(ray, spiral.risePerRad), times(across, radiusAt(spiral, phi))));
}

/** The spiral as arcs, the ends exactly `from` and `to`, with about as few pairs as keep it near the true curve. */
export function spiralSegments(from: Point, to: Point, turning: Turning, source: TextRange): Segment[] {
  const spiral = spiralBetween(from, to, turning);
  let pairs = 1;
  for (;;) {
    const { segments, strayMm } = arcPairs(spiral, from, to, pairs, source);
    if (strayMm <= TARGET_MM || pairs >= MOST_PAIRS) return segments;
    pairs = morePairs(pairs, strayMm);
  }
}

/** The samples between the knots may miss the top of a wave by 1 %. */
const TARGET_MM = 0.98 * SPIRAL_DEVIATION_MM;

/** Enough for a spiral of kilometres; beyond that the digits of its points give out before the arcs do. */
const MOST_PAIRS = 4096;

/** A pair strays with the cube of its length; the next try stays below what that promises, so as not to overshoot. */
function morePairs(pairs: number, strayMm: number): number {
  const promised = Math.floor(0.9 * pairs * Math.cbrt(strayMm / TARGET_MM));
  return Math.min(MOST_PAIRS, Number.isFinite(promised) ? Math.max(pairs + 1, promised) : pairs + 1);
}

interface ArcPairs {
  readonly segments: Segment[];
  /** The farthest that any of them lies from the true curve. */
  readonly strayMm: number;
}

function arcPairs(spiral: Spiral, from: Point, to: Point, pairs: number, source: TextRange): ArcPairs {
  const segments: Segment[] = [];
  let strayMm = 0;
  let start = { phi: 0, point: from };
  for (const phi of spreadKnots(spiral, pairs).slice(1)) {
    const end = { phi, point: phi === spiral.sweepRad ? to : spiralPoint(spiral, phi) };
    const leaving = spiralTangent(spiral, start.phi);
    const pair = biarc(start.point, leaving, end.point, spiralTangent(spiral, phi), source);
    // Math.max keeps a NaN, which no limit is fulfilled by.
    strayMm = Math.max(strayMm, deviation(spiral, start.phi, phi, pair));
    segments.push(...pair);
    start = end;
  }
  return { segments, strayMm };
}

/** Cells for spreading the knots; the bend of a spiral changes slowly, so that few are enough. */
const SPREAD_CELLS = 64;

/**
 * Angles that part the spiral so that every pair of arcs strays about equally. A pair strays by the change of
 * curvature times the cube of its length, so that ∫ ∛(dκ/ds) ds is to be shared out evenly.
 */
function spreadKnots(spiral: Spiral, pairs: number): number[] {
  const cell = spiral.sweepRad / SPREAD_CELLS;
  const sums = [0];
  for (let i = 0; i < SPREAD_CELLS; i++) sums.push((sums[i] ?? 0) + strayDensity(spiral, (i + 0.5) * cell));
  const total = sums[SPREAD_CELLS] ?? 0;
  const knots = Array.from({ length: pairs + 1 }, (_, i) => {
    if (total === 0) return (spiral.sweepRad * i) / pairs;
    return cell * positionOf(sums, (total * i) / pairs);
  });
  knots[pairs] = spiral.sweepRad;
  return knots;
}

/** Where rising sums reach a value, as an index with its fraction. */
function positionOf(sums: readonly number[], value: number): number {
  const after = Math.max(
    1,
    sums.findIndex((sum) => sum >= value),
  );
  const low = sums[after - 1] ?? 0;
  const high = sums[after] ?? 0;
  return after - 1 + (value - low) / (high - low);
}

/**
 * ∛(dκ/ds) ds/dφ for r(φ) with r′ = b: with s′² = r² + b² and κ = (r² + 2b²)/s′³, dκ/dφ = −b·r(r² + 4b²)/s′⁵.
 */
function strayDensity(spiral: Spiral, phi: number): number {
  const b = spiral.risePerRad;
  const r = radiusAt(spiral, phi);
  const speedSquared = r * r + b * b;
  const change = (Math.abs(b) * r * (r * r + 4 * b * b)) / speedSquared ** 2.5;
  return Math.cbrt(change) * Math.cbrt(speedSquared);
}

/**
 * Two arcs from point to point that leave and arrive in the given directions and join without a kink. Of the many
 * such pairs, the one whose ends are equally far from the meeting of their tangents with the tangent at the joint.
 */
function biarc(from: Point, leaving: Point, to: Point, arriving: Point, source: TextRange): Segment[] {
  const chord = minus(to, from);
  const along = dot(chord, plus(leaving, arriving));
  const square = dot(chord, chord);
  // (v·(t₀+t₁) + √…) written so that parallel directions, where the textbook form divides by zero, need no care.
  const root = Math.sqrt(along * along + 2 * (1 - dot(leaving, arriving)) * square);
  const handle = square / (along + root);
  const joint = times(plus(plus(from, to), times(minus(leaving, arriving), handle)), 0.5);
  const second = arcByTangent(to, times(arriving, -1), joint, source);
  return [arcByTangent(from, leaving, joint, source), reversedSegment(second)];
}

/** Looks between the knots. A pair strays in two smooth waves, so that the largest of these is within 1 % of the top. */
const DEVIATION_SAMPLES = 24;

function deviation(spiral: Spiral, phi0: number, phi1: number, pair: readonly Segment[]): number {
  let most = 0;
  for (let i = 1; i < DEVIATION_SAMPLES; i++) {
    const point = spiralPoint(spiral, phi0 + ((phi1 - phi0) * i) / DEVIATION_SAMPLES);
    most = Math.max(most, Math.min(...pair.map((segment) => distanceToSegment(segment, point))));
  }
  return most;
}

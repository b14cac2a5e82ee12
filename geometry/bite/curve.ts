/**
 * A path of the target's reference point in polar form about the spin axis, in the order in which a bar that
 * turns counter-clockwise offers it to its target: θ = −φ grows once round the outline. `s` runs along it.
 *
 * The target comes along a straight line that passes the axis at the distance `aside`, on the side to which the
 * struck part of the bar moves. Where it is met it still has to go `along` = √(r² − aside²) until it is abreast of
 * the axis, and the bar has turned by ψ = θ + asin(aside/r). Without `aside` these are r and θ.
 *
 * Every curve answers with its radius r, `along`, ψ up to a constant, and its heading as a unit vector in polar
 * form: `outward` = dr/dℓ and `around` = r·dθ/dℓ, ℓ the length. On the outline itself the outward normal lies left
 * of the heading and the struck point moves with −θ, so the strike angle is the angle between the heading and the
 * outward ray: its cosine is `outward`.
 */
import type { Segment } from "../outline/segment.ts";
import { angleOf, cross, direction, dot, minus, norm, turnBetween } from "../outline/vector.ts";

/** `s` is the way from the foot of the perpendicular from the axis, in mm. */
export interface LineCurve {
  readonly kind: "line";
  /** Distance of the line from the axis, positive where θ grows along it. */
  readonly offset: number;
  readonly aside: number;
}

/** `s` is the angle at the centre from the direction away from the axis, in rad. */
export interface ArcCurve {
  readonly kind: "arc";
  /** Distance of the centre from the axis. 0 for an arc about the axis, rounding left aside. */
  readonly reach: number;
  /** 0 for a corner, whose normals turn on the spot. */
  readonly radius: number;
  /** 1 for an arc that turns left, −1 for one that turns right. */
  readonly side: 1 | -1;
  readonly aside: number;
}

/**
 * How far a corner or a convex arc holds off a face square to the approach: r = radius + reach·cos s, `s` as on the
 * arc, is the distance of the tangent and θ the direction of its normal.
 */
export interface SupportCurve {
  readonly kind: "support";
  readonly reach: number;
  readonly radius: number;
  readonly aside: 0;
}

export type Curve = LineCurve | ArcCurve | SupportCurve;

/** A curve with the range of `s` that a segment takes of it. */
export interface CurveRange {
  readonly curve: LineCurve | ArcCurve;
  readonly from: number;
  readonly to: number;
}

/** An arc's centre is on the axis when its distance from it is rounding against its radius. */
const CONCENTRIC_SHARE = 1e-12;

/** The curve of a segment that is already in offering order. */
export function curveOf(segment: Segment, aside = 0): CurveRange {
  if (segment.kind === "line") {
    const along = direction(segment.from, segment.to);
    const curve: LineCurve = { kind: "line", offset: cross(along, segment.from), aside };
    return { curve, from: dot(segment.from, along), to: dot(segment.to, along) };
  }
  const { centre, radiusMm: radius, sweepRad } = segment;
  const side = sweepRad > 0 ? 1 : -1;
  const distance = norm(centre);
  const concentric = distance <= CONCENTRIC_SHARE * radius;
  const outward = minus(segment.from, centre);
  const from = concentric ? side * angleOf(outward) : side * turnBetween(centre, outward);
  const curve: ArcCurve = { kind: "arc", reach: concentric ? 0 : distance, radius, side, aside };
  return { curve, from, to: from + Math.abs(sweepRad) };
}

/** The distance from the axis; of a support curve, that of the tangent. */
export function radiusAt(curve: Curve, s: number): number {
  if (curve.kind === "line") return Math.sqrt(s * s + curve.offset * curve.offset);
  const { reach, radius } = curve;
  if (curve.kind === "support") return radius + reach * Math.cos(s);
  const cos = Math.cos(s / 2);
  // (reach² + radius² + 2·reach·radius·cos s), so written that a wide arc close to the axis keeps its digits.
  return Math.sqrt((reach - radius) * (reach - radius) + 4 * reach * radius * cos * cos);
}

/** What the target still has to go until it is abreast of the axis. */
export function alongAt(curve: Curve, s: number): number {
  return alongOf(radiusAt(curve, s), curve.aside);
}

/** √(radius² − aside²), 0 where rounding would make it imaginary. */
export function alongOf(radius: number, aside: number): number {
  const off = Math.abs(aside);
  return off === 0 ? radius : Math.sqrt(Math.max(0, (radius - off) * (radius + off)));
}

/** ψ up to a constant of the curve; continuous along it. */
export function turnAt(curve: Curve, s: number): number {
  return curve.aside === 0 ? bareThetaAt(curve, s) : turnWhere(curve, s, alongAt(curve, s));
}

/** The same where `along` is known better than it follows from `s`: near 0 it is the root of a difference. */
export function turnWhere(curve: Curve, s: number, along: number): number {
  const theta = bareThetaAt(curve, s);
  return curve.aside === 0 ? theta : theta + Math.atan2(curve.aside, along);
}

/** θ up to a constant of the curve; continuous along it. */
export function bareThetaAt(curve: Curve, s: number): number {
  if (curve.kind === "line") return Math.atan(s / curve.offset);
  if (curve.kind === "support") return s;
  const { reach, radius, side } = curve;
  const cos = Math.cos(s / 2);
  const sin = 2 * cos * Math.sin(s / 2);
  // Seen from the axis the point lies at this angle off the centre's direction, or at this one off its own
  // normal: whichever of the two cannot pass half a turn.
  return reach > radius
    ? -side * Math.atan2(radius * sin, reach - radius + 2 * radius * cos * cos)
    : -side * (s - Math.atan2(reach * sin, radius - reach + 2 * reach * cos * cos));
}

/** dr/dℓ: on the outline the cosine of the strike angle. It has the sign of the change of `along`. */
export function outwardAt(curve: Curve, s: number): number {
  if (curve.kind === "line") return s / radiusAt(curve, s);
  const across = -curve.reach * Math.sin(s);
  const radius = radiusAt(curve, s);
  return curve.kind === "arc" ? across / radius : across / Math.hypot(across, radius);
}

/** r·dθ/dℓ: on the outline the sine of the strike angle, negative where θ runs back. */
export function aroundAt(curve: Curve, s: number): number {
  const radius = radiusAt(curve, s);
  if (curve.kind === "support") return radius / Math.hypot(curve.reach * Math.sin(s), radius);
  return axisDistance(curve, s) / radius;
}

/** dψ, in the measure in which `outwardAt` is the change of `along`. */
export function turningAt(curve: Curve, s: number): number {
  const radius = radiusAt(curve, s);
  const { aside } = curve;
  if (aside === 0) return aroundAt(curve, s) / radius;
  return (alongOf(radius, aside) * aroundAt(curve, s) - aside * outwardAt(curve, s)) / (radius * radius);
}

/** |d along/dψ|, infinite where the target's line runs along the outline. */
export function steepnessAt(curve: Curve, s: number): number {
  return Math.abs(outwardAt(curve, s) / turningAt(curve, s));
}

/** The distance of the axis from the tangent, with the sign of dθ: r²·dθ/dℓ. */
export function axisDistance(curve: LineCurve | ArcCurve, s: number): number {
  if (curve.kind === "line") return curve.offset;
  const { reach, radius, side } = curve;
  const cos = Math.cos(s / 2);
  return -side * (radius - reach + 2 * reach * cos * cos);
}

/** Where on a part of the curve, along which `along` runs one way, it has a given value. */
export function placeAt(curve: Curve, from: number, to: number, along: number): number {
  const place = Math.sign(from + to) * distanceFromFoot(curve, along);
  return Math.min(to, Math.max(from, place));
}

function distanceFromFoot(curve: Curve, along: number): number {
  const { aside } = curve;
  const radius = aside === 0 ? along : Math.sqrt(along * along + aside * aside);
  if (curve.kind === "line") {
    const offset = Math.abs(curve.offset);
    return Math.sqrt(Math.max(0, (radius - offset) * (radius + offset)));
  }
  const { reach } = curve;
  const own = curve.radius;
  // tan² of half the angle, which keeps its digits at both ends.
  const [far, near] =
    curve.kind === "support"
      ? [reach + own - radius, radius - (own - reach)]
      : [(reach + own - radius) * (reach + own + radius), (radius - own + reach) * (radius + own - reach)];
  return 2 * Math.atan2(Math.sqrt(Math.max(0, far)), Math.sqrt(Math.max(0, near)));
}

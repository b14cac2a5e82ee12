/**
 * A line or arc in polar form about the spin axis, in the order in which a bar that turns counter-clockwise
 * offers it to its target: θ = −φ grows once round the outline. `s` runs along the curve.
 *
 * Every curve answers with its radius r, a polar angle θ up to a constant, and its heading as a unit vector:
 * `outward` = dr/dℓ and `around` = r·dθ/dℓ, ℓ the length. The outward normal lies left of the heading and the
 * struck point moves with −θ, so the strike angle is the angle between the heading and the outward ray: its
 * cosine is `outward`.
 */
import type { Segment } from "../outline/segment.ts";
import { angleOf, cross, direction, dot, minus, norm, turnBetween } from "../outline/vector.ts";
import { integral } from "./quadrature.ts";

/** `s` is the way from the foot of the perpendicular from the axis, in mm. */
export interface LineCurve {
  readonly kind: "line";
  /** Distance of the line from the axis, positive where θ grows along it. */
  readonly offset: number;
}

/** `s` is the angle at the centre from the direction away from the axis, in rad. */
export interface ArcCurve {
  readonly kind: "arc";
  /** Distance of the centre from the axis. 0 for an arc about the axis, rounding left aside. */
  readonly reach: number;
  readonly radius: number;
  /** 1 for an arc that turns left, −1 for one that turns right. */
  readonly side: 1 | -1;
}

export type Curve = LineCurve | ArcCurve;

/** A curve with the range of `s` that a segment takes of it. */
export interface CurveRange {
  readonly curve: Curve;
  readonly from: number;
  readonly to: number;
}

/** An arc's centre is on the axis when its distance from it is rounding against its radius. */
const CONCENTRIC_SHARE = 1e-12;

/** The curve of a segment that is already in offering order. */
export function curveOf(segment: Segment): CurveRange {
  if (segment.kind === "line") {
    const along = direction(segment.from, segment.to);
    const curve: LineCurve = { kind: "line", offset: cross(along, segment.from) };
    return { curve, from: dot(segment.from, along), to: dot(segment.to, along) };
  }
  const { centre, radiusMm: radius, sweepRad } = segment;
  const side = sweepRad > 0 ? 1 : -1;
  const distance = norm(centre);
  const concentric = distance <= CONCENTRIC_SHARE * radius;
  const outward = minus(segment.from, centre);
  const from = concentric ? side * angleOf(outward) : side * turnBetween(centre, outward);
  const curve: ArcCurve = { kind: "arc", reach: concentric ? 0 : distance, radius, side };
  return { curve, from, to: from + Math.abs(sweepRad) };
}

export function radiusAt(curve: Curve, s: number): number {
  if (curve.kind === "line") return Math.sqrt(s * s + curve.offset * curve.offset);
  const { reach, radius } = curve;
  const cos = Math.cos(s / 2);
  // (reach² + radius² + 2·reach·radius·cos s), so written that a wide arc close to the axis keeps its digits.
  return Math.sqrt((reach - radius) * (reach - radius) + 4 * reach * radius * cos * cos);
}

/** θ up to a constant of the curve; continuous along it. */
export function bareThetaAt(curve: Curve, s: number): number {
  if (curve.kind === "line") return Math.atan(s / curve.offset);
  const { reach, radius, side } = curve;
  const cos = Math.cos(s / 2);
  const sin = 2 * cos * Math.sin(s / 2);
  // Seen from the axis the point lies at this angle off the centre's direction, or at this one off its own
  // normal: whichever of the two cannot pass half a turn.
  return reach > radius
    ? -side * Math.atan2(radius * sin, reach - radius + 2 * radius * cos * cos)
    : -side * (s - Math.atan2(reach * sin, radius - reach + 2 * reach * cos * cos));
}

/** dr/dℓ: the cosine of the strike angle. */
export function outwardAt(curve: Curve, s: number): number {
  const across = curve.kind === "line" ? s : -curve.reach * Math.sin(s);
  return across / radiusAt(curve, s);
}

/** r·dθ/dℓ: the sine of the strike angle, negative where θ runs back. */
export function aroundAt(curve: Curve, s: number): number {
  return axisDistance(curve, s) / radiusAt(curve, s);
}

/** The distance of the axis from the tangent, with the sign of dθ: r²·dθ/dℓ. */
function axisDistance(curve: Curve, s: number): number {
  if (curve.kind === "line") return curve.offset;
  const { reach, radius, side } = curve;
  const cos = Math.cos(s / 2);
  return -side * (radius - reach + 2 * reach * cos * cos);
}

/** Gauss–Legendre is trusted up to this share of the distance to the nearest singularity. */
const PANEL_SHARE = 0.5;
/** … and up to this half-width, for the cosine itself. */
const WIDEST_PANEL_RAD = 1;

/**
 * ∫(depth below `rim`) dθ from one place to another, in mm·rad. The places lie on one side of the nearest
 * point.
 */
export function depthSwept(curve: Curve, rim: number, from: number, to: number): number {
  if (curve.kind === "line") {
    const growth = lineStretch(curve, from, to);
    return rim * (bareThetaAt(curve, to) - bareThetaAt(curve, from)) - curve.offset * growth;
  }
  if (curve.reach === 0) return (rim - curve.radius) * -curve.side * (to - from);
  return arcDepthSwept(curve, rim, from, to);
}

/** ∫ds/r along a line, from the end at which the sum does not cancel. */
function lineStretch(curve: LineCurve, from: number, to: number): number {
  const [a, b] = [radiusAt(curve, from), radiusAt(curve, to)];
  return from + to > 0 ? Math.log((to + b) / (from + a)) : Math.log((a - from) / (b - to));
}

/**
 * The integrand has branch points where r would vanish: at s = ±π with the imaginary part ln(reach/radius).
 * Panels are halved until they keep away from it.
 */
function arcDepthSwept(curve: ArcCurve, rim: number, from: number, to: number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  const off = Math.hypot(Math.PI - Math.abs(middle), Math.log(curve.reach / curve.radius));
  if (half <= Math.min(PANEL_SHARE * off, WIDEST_PANEL_RAD) || middle <= from || middle >= to) {
    return integral((s) => depthRate(curve, rim, s), from, to);
  }
  return arcDepthSwept(curve, rim, from, middle) + arcDepthSwept(curve, rim, middle, to);
}

function depthRate(curve: ArcCurve, rim: number, s: number): number {
  const r = radiusAt(curve, s);
  return ((rim - r) * axisDistance(curve, s) * curve.radius) / (r * r);
}

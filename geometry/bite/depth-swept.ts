import {
  type ArcCurve,
  alongAt,
  axisDistance,
  bareThetaAt,
  type Curve,
  type LineCurve,
  radiusAt,
  turnAt,
} from "./curve.ts";
import { adaptiveIntegral, integral } from "./quadrature.ts";

/** Gauss–Legendre is trusted up to this share of the distance to the nearest singularity. */
const PANEL_SHARE = 0.5;
/** … and up to this half-width, for the cosine itself. */
const WIDEST_PANEL_RAD = 1;
/** What of a part of ∫along dψ is lost in the sum over a turn, as a share of the farthest the curve reaches. */
const ROUNDING_SHARE = 1e-15;

/**
 * ∫(depth) dψ from one place to another, in mm·rad; the depth is what `along` is below `rim`. The places lie on one
 * side of the nearest point.
 */
export function depthSwept(curve: Curve, rim: number, from: number, to: number): number {
  if (curve.kind === "support") {
    return (rim - curve.radius) * (to - from) - curve.reach * (Math.sin(to) - Math.sin(from));
  }
  if (curve.kind === "arc" && curve.reach === 0) {
    return (rim - alongAt(curve, from)) * -curve.side * (to - from);
  }
  if (curve.aside !== 0) return rim * (turnAt(curve, to) - turnAt(curve, from)) - alongSwept(curve, from, to);
  if (curve.kind === "arc") return arcDepthSwept(curve, rim, from, to);
  const growth = lineStretch(curve, from, to);
  return rim * (bareThetaAt(curve, to) - bareThetaAt(curve, from)) - curve.offset * growth;
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

/**
 * ∫along dψ with the line of approach aside of the axis. dψ = dθ − aside·dr/(r·along), so it is
 * ∫along dθ − aside·ln r.
 */
function alongSwept(curve: LineCurve | ArcCurve, from: number, to: number): number {
  const growth = curve.aside * Math.log(radiusAt(curve, to) / radiusAt(curve, from));
  if (curve.kind === "line") return alongSweptOnLine(curve, from, to) - growth;
  const rate = (s: number) => {
    const r = radiusAt(curve, s);
    return (alongAt(curve, s) * axisDistance(curve, s) * curve.radius) / (r * r);
  };
  return adaptiveIntegral(rate, from, to, ROUNDING_SHARE * (curve.reach + curve.radius)) - growth;
}

/**
 * ∫d·√(s² + d² − h²)/(s² + d²) ds = d·ln(s + X) − |h|·sign(d)·artanh(|h|s/(|d|X)), X the root: d the offset, h the aside.
 * The artanh is ± ln(|d|X + |hs|) ∓ ½·ln(s² + d²) and a constant, which holds on either side of |h| = |d|.
 */
function alongSweptOnLine(curve: LineCurve, from: number, to: number): number {
  const side = from + to > 0 ? 1 : -1;
  const off = Math.abs(curve.offset);
  const aside = Math.abs(curve.aside);
  // (s + X)·(X − s) is a constant: take the one that does not cancel.
  const log = (s: number) => side * Math.log(alongAt(curve, s) + side * s);
  const area = (s: number) =>
    side * Math.log((off * alongAt(curve, s) + aside * side * s) / radiusAt(curve, s));
  return curve.offset * (log(to) - log(from)) - Math.sign(curve.offset) * aside * (area(to) - area(from));
}

import { arcCuts, lineCuts } from "./aside-cuts.ts";
import type { ArcCurve, Curve, SupportCurve } from "./curve.ts";
import { rootBetween } from "./root.ts";

/** Cuts nearer to an end than this share of a turn, or of the line's length, are that end. */
const SAME_PLACE_SHARE = 1e-13;

/**
 * The places strictly between two others, in order, where the distance to go, ψ, its slope or the strike angle
 * turns about. None depends on the speed.
 */
export function cutsOf(curve: Curve, from: number, to: number): number[] {
  const places = curve.kind === "line" ? [0, ...lineCuts(curve, from, to)] : roundPlaces(curve, from, to);
  return between(places, curve, from, to);
}

/** The cuts of two curves with the same `s`, such as an outline and what runs beside it. */
export function cutsOfBoth(a: Curve, b: Curve, from: number, to: number): number[] {
  if (a === b) return cutsOf(a, from, to);
  return between([...cutsOf(a, from, to), ...cutsOf(b, from, to)], a, from, to);
}

/** The places clear of the ends and of each other, in order. */
function between(places: readonly number[], { kind }: Curve, from: number, to: number): number[] {
  const scale = kind === "line" ? Math.max(Math.abs(from), Math.abs(to)) : 2 * Math.PI;
  const margin = SAME_PLACE_SHARE * scale;
  const inside = places.filter((s) => s > from + margin && s < to - margin).sort((a, b) => a - b);
  return inside.filter((s, i) => i === 0 || s > (inside[i - 1] ?? 0) + margin);
}

function roundPlaces(curve: ArcCurve | SupportCurve, from: number, to: number): number[] {
  if (curve.kind === "arc" && curve.reach === 0) return [];
  const own =
    curve.kind === "arc" ? [...sidePlaces(curve), ...arcCuts(curve)] : [Math.PI / 2, ...sidePlaces(curve)];
  const places: number[] = [];
  for (const place of [0, Math.PI, ...own]) {
    // The place itself, its mirror image, and both again in each turn that the arc reaches into.
    for (const s of place === 0 || place === Math.PI ? [place] : [place, -place]) {
      const first = s + 2 * Math.PI * Math.ceil((from - s) / (2 * Math.PI));
      for (let again = first; again < to; again += 2 * Math.PI) places.push(again);
    }
  }
  return places;
}

/**
 * With the axis outside the circle: the two points whose tangents pass through the axis. With the axis
 * inside: where the radius to the axis stands square on that to the centre, so that the strike angle turns
 * about, and where dr/dθ does.
 */
function sidePlaces({ reach, radius }: ArcCurve | SupportCurve): number[] {
  if (reach > radius) return [Math.acos(-radius / reach)];
  return [Math.acos(-reach / radius), Math.acos(steepestCosine(reach / radius))];
}

/**
 * cos s where |dr/dθ| = reach·|sin s|·r / (reach·cos s + radius) is greatest, e = reach/radius: its square
 * has the derivative zero where e²x³ + 3ex² + (1 + 2e²)x + e³ = 0, which is (e − 1)³ < 0 at x = −1 and e³ > 0
 * at x = 0.
 */
function steepestCosine(e: number): number {
  return rootBetween((x) => ((e * e * x + 3 * e) * x + 1 + 2 * e * e) * x + e * e * e, -1, 0);
}

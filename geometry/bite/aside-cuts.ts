/**
 * Where the slope of the outline against the target's path turns about, or ψ does, when the line of approach passes
 * aside of the axis by h. With p = r·outward, q = r·around, A = r² and X² = A − h², the slope is −A·p/(X·q − h·p).
 */
import type { ArcCurve, LineCurve } from "./curve.ts";
import { plus, rootsBetween, times } from "./polynomial.ts";

/**
 * On a line, p = s and q = d: the slope has its extremes where d·(2u² + 3mu + d²m) = 2h·s³·X, u = s², m = d² − h².
 * ψ turns about nowhere. Squared, it is a polynomial in u; what squaring adds are cuts too many, which do no harm.
 */
export function lineCuts({ offset, aside }: LineCurve, from: number, to: number): number[] {
  if (aside === 0) return [];
  // In units of the line's distance or of the aside, so that the coefficients are tame.
  const unit = Math.max(Math.abs(offset), Math.abs(aside));
  const [d, h] = [offset / unit, aside / unit];
  const m = d * d - h * h;
  const left = [d * d * m, 3 * m, 2].map((coefficient) => d * coefficient);
  const squared = plus(times(left, left), times([-4 * h * h], [0, 0, 0, 1], [m, 1]));
  const most = Math.max(Math.abs(from), Math.abs(to)) / unit;
  return rootsBetween(squared, 0, most * most).flatMap((u) => [-Math.sqrt(u) * unit, Math.sqrt(u) * unit]);
}

/**
 * On an arc, with c = cos s, a the reach, g = radius + a·c: p² = a²(1 − c²), q² = g². ψ turns about where g = ±h,
 * the slope where X²·(2ρp²g − a·c·A·g − A·p²) − ρ·A·p²·g = ∓2ρ·h·p³·X, which squared is a polynomial in c.
 * The angles are between 0 and π; each has its mirror image.
 */
export function arcCuts({ reach, radius, aside }: ArcCurve): number[] {
  if (aside === 0 || reach === 0) return [];
  const [a, h] = [reach / (reach + radius), aside / (reach + radius)];
  const rho = radius / (reach + radius);
  const g = [rho, a];
  const square = [a * a + rho * rho, 2 * a * rho];
  const along2 = plus(square, [-h * h]);
  const p2 = [a * a, 0, -a * a];
  const inner = plus(times([2 * rho], p2, g), times([0, -a], square, g), times([-1], square, p2));
  const left = plus(times(along2, inner), times([-rho], square, p2, g));
  const turning = plus(times(left, left), times([-4 * rho * rho * h * h], p2, p2, p2, along2));
  const cosines = [...rootsBetween(turning, -1, 1), (h - rho) / a, (-h - rho) / a];
  return cosines.filter((c) => c > -1 && c < 1).map((c) => Math.acos(c));
}

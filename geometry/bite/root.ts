/** The width, in roundings of the larger end, at which a bracket counts as one number. */
const BRACKET_ROUNDINGS = 4;

/**
 * The argument between two others at which a function changes sign, to the last digits. Where rounding leaves
 * the same sign at both ends, the end nearer to zero.
 *
 * T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear
 * function without using derivatives", Advances in Engineering Software 28 (1997) 145–149: inverse quadratic
 * steps where they are safe, halving where they are not. (From memory; the tests check the roots.)
 */
export function rootBetween(f: (x: number) => number, from: number, to: number): number {
  let [a, fa] = [to, f(to)];
  let [b, fb] = [from, f(from)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) return Math.abs(fa) < Math.abs(fb) ? a : b;
  let share = 0.5;
  for (;;) {
    const x = a + share * (b - a);
    const fx = f(x);
    const keepsSide = fx > 0 === fa > 0;
    const [c, fc] = keepsSide ? [a, fa] : [b, fb];
    if (!keepsSide) [b, fb] = [a, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const width = BRACKET_ROUNDINGS * Number.EPSILON * Math.max(Math.abs(a), Math.abs(b), Number.MIN_VALUE);
    const least = width / Math.abs(b - a);
    if (fa === 0 || !(least < 0.5)) return best;
    share = Math.min(1 - least, Math.max(least, step(a, b, c, fa, fb, fc)));
  }
}

/**
 * The share of the way from `a` to `b` to try next: by inverse interpolation where the three points allow it.
 */
function step(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(1 - Math.sqrt(1 - xi) < phi && phi < Math.sqrt(xi))) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}

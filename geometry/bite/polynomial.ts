/** Polynomials as lists of coefficients, the constant first. */
import { rootBetween } from "./root.ts";

export type Polynomial = readonly number[];

export function times(...factors: readonly Polynomial[]): Polynomial {
  return factors.reduce((a, b) => {
    const product = new Array<number>(a.length + b.length - 1).fill(0);
    for (const [i, x] of a.entries()) {
      for (const [j, y] of b.entries()) product[i + j] = (product[i + j] ?? 0) + x * y;
    }
    return product;
  });
}

export function plus(...terms: readonly Polynomial[]): Polynomial {
  const length = Math.max(...terms.map((term) => term.length));
  return Array.from({ length }, (_, i) => terms.reduce((sum, term) => sum + (term[i] ?? 0), 0));
}

/**
 * The roots between two numbers at which the polynomial changes sign, in order: between the roots of its derivative
 * it runs one way. A double root, where it only touches zero, may be left out.
 */
export function rootsBetween(polynomial: Polynomial, from: number, to: number): number[] {
  if (polynomial.length < 2) return [];
  const slope = polynomial.slice(1).map((coefficient, i) => coefficient * (i + 1));
  const at = (x: number) => polynomial.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
  const ends = [from, ...rootsBetween(slope, from, to), to];
  return ends.slice(1).flatMap((end, i) => {
    const start = ends[i] ?? from;
    return at(start) > 0 === at(end) > 0 ? [] : [rootBetween(at, start, end)];
  });
}

/** The curvature of a function, learnt from how its slope changes along the steps taken. */

export type Matrix = readonly (readonly number[])[];

export function identity(size: number, diagonal: number): Matrix {
  return Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_, k) => (i === k ? diagonal : 0)),
  );
}

/** Less of the old curvature along the step would make the update lose its sign. */
const LEAST_SHARE = 0.2;
/** Beyond this a slope by differences is noise. */
const MOST_CURVATURE = 1e8;

/**
 * The BFGS update, damped so that the curvature stays positive definite (Powell 1978; Nocedal and Wright 2006,
 * procedure 18.2).
 * @param step how far was gone
 * @param change of the slope over the step
 */
export function dampedUpdate(curvature: Matrix, step: readonly number[], change: readonly number[]): Matrix {
  const bent = curvature.map((row) => dot(row, step));
  const old = dot(step, bent);
  const found = dot(step, change);
  if (!(old > 0)) return curvature;
  const share = found >= LEAST_SHARE * old ? 1 : ((1 - LEAST_SHARE) * old) / (old - found);
  const damped = change.map((value, i) => share * value + (1 - share) * (bent[i] ?? 0));
  const along = dot(step, damped);
  const updated = curvature.map((row, i) =>
    row.map(
      (value, k) =>
        value - ((bent[i] ?? 0) * (bent[k] ?? 0)) / old + ((damped[i] ?? 0) * (damped[k] ?? 0)) / along,
    ),
  );
  return updated.every((row) => row.every((value) => Math.abs(value) < MOST_CURVATURE)) ? updated : curvature;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

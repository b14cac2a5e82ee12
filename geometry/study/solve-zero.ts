/**
 * A pair of numbers brought to (0, 0), or as near as it comes, by one or two unknowns within bounds: Newton's method
 * on the sum of squares, damped where a full step leads nowhere (Levenberg 1944, Marquardt 1963), with the unknowns
 * that press against a bound held there. Libraries for this fit curves to samples and take every value for possible;
 * an outline can fail to build, and then the way is to step back.
 */

/** The unknowns, each from 0 at its lower bound to 1 at its upper one. */
export type Unknowns = readonly number[];
export type Residual = readonly [number, number];

/** What the unknowns make of the residual; null where nothing can be worked out. */
export type Measure = (at: Unknowns) => Residual | null;

export interface Found {
  readonly at: Unknowns;
  /** Distance of the residual from (0, 0). */
  readonly size: number;
}

/** Width of a difference: rounding takes 1e-13 of the residual, curvature 1e-6 of the slope. */
const DIFFERENCE = 1e-6;
const MOST_STEPS = 40;
/** Damping below this is none, above that the step is shorter than any tool could cut. */
const LEAST_DAMPING = 1e-7;
const MOST_DAMPING = 1e9;
/** A gain smaller than this share is not worth another step. */
const LEAST_GAIN = 1e-6;

/**
 * Steps from `start` to where the residual is no larger than `enough`, or until no step makes it smaller. Null where
 * the start itself cannot be measured.
 */
export function solveZero(measure: Measure, start: Unknowns, enough: number): Found | null {
  const first = measure(start);
  if (first === null) return null;
  let here: Here = { at: start, residual: first, size: Math.hypot(...first) };
  let damping = LEAST_DAMPING;
  for (let step = 0; step < MOST_STEPS && here.size > enough; step += 1) {
    const next = nextFrom(measure, here, damping);
    if (next === null) break;
    const gain = here.size - next.size;
    const isNear = gain <= LEAST_GAIN * here.size;
    here = next;
    damping = Math.max(next.damping / 10, LEAST_DAMPING);
    if (isNear) break;
  }
  return { at: here.at, size: here.size };
}

interface Here extends Found {
  readonly residual: Residual;
}

/** The next better place; null where none is found however short the step. */
function nextFrom(measure: Measure, here: Here, first: number): (Here & { readonly damping: number }) | null {
  const slopes = slopesAt(measure, here);
  for (let damping = first; damping <= MOST_DAMPING; damping *= 10) {
    const at = stepFrom(here, slopes, damping);
    const residual = measure(at);
    const size = residual === null ? Number.POSITIVE_INFINITY : Math.hypot(...residual);
    if (residual !== null && size < here.size) return { at, residual, size, damping };
    if (at.every((value, i) => Math.abs(value - (here.at[i] ?? 0)) < 1e-12)) return null;
  }
  return null;
}

/** How the residual changes with each unknown; (0, 0) where it can be measured on neither side. */
function slopesAt(measure: Measure, { at, residual }: Here): readonly Residual[] {
  return at.map((value, index) => {
    const widths = value + DIFFERENCE <= 1 ? [DIFFERENCE, -DIFFERENCE] : [-DIFFERENCE];
    for (const width of widths) {
      const there = measure(at.map((other, i) => (i === index ? other + width : other)));
      if (there !== null) return [(there[0] - residual[0]) / width, (there[1] - residual[1]) / width];
    }
    return [0, 0];
  });
}

/** The damped step of least squares, by the unknowns that do not press against a bound. */
function stepFrom({ at, residual }: Here, slopes: readonly Residual[], damping: number): Unknowns {
  const downhill = slopes.map((slope) => -dot(slope, residual));
  const isFree = at.map((value, i) => ((downhill[i] ?? 0) > 0 ? value < 1 : value > 0));
  const [a = ZERO, b = ZERO] = slopes.map((slope, i) => (isFree[i] ? slope : ZERO));
  // The normal equations [aa ab; ab bb]·step = (down a, down b), their diagonal made heavier by the damping.
  const aa = dot(a, a) * (1 + damping);
  const bb = dot(b, b) * (1 + damping);
  const ab = dot(a, b);
  const [downA, downB] = [-dot(a, residual), -dot(b, residual)];
  const determinant = aa * bb - ab * ab;
  const steps =
    determinant > Number.EPSILON * aa * bb
      ? [(downA * bb - downB * ab) / determinant, (downB * aa - downA * ab) / determinant]
      : [aa > 0 ? downA / aa : 0, bb > 0 ? downB / bb : 0];
  return at.map((value, i) => Math.min(1, Math.max(0, value + (steps[i] ?? 0))));
}

const ZERO: Residual = [0, 0];

function dot(a: Residual, b: Residual): number {
  return a[0] * b[0] + a[1] * b[1];
}

/** Places of an even grid over the bounds, and how many along each unknown. */
export function gridOf(unknowns: number, along: number): readonly Unknowns[] {
  const marks = Array.from({ length: along }, (_, i) => (i + 0.5) / along);
  return unknowns === 1
    ? marks.map((mark) => [mark])
    : marks.flatMap((first) => marks.map((second) => [first, second]));
}

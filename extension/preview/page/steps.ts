/** Round steps for the grid, the scale bar and dragging, in the reader's units. All lengths in mm. */
import { fixed, type UnitSystem } from "../../../geometry/figures/present.ts";

const MM_PER_INCH = 25.4;

/** Inches go by halves down to a 64th, as rulers do; below and above by 1, 2, 5. */
const INCH_FRACTIONS: readonly number[] = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2];

/** 1, 2, 5 in every power of ten from `least` to `most` powers. */
function decades(least: number, most: number): number[] {
  const powers = Array.from({ length: most - least + 1 }, (_, index) => least + index);
  return powers.flatMap((power) => [1, 2, 5].map((digit) => Number(`${digit}e${power}`)));
}

const MM_STEPS: readonly number[] = decades(-3, 5);
const INCH_STEPS: readonly number[] = [...decades(-4, -3), 0.01, ...INCH_FRACTIONS, ...decades(0, 4)].map(
  (inches) => inches * MM_PER_INCH,
);

function stepsOf(units: UnitSystem): readonly number[] {
  return units === "mm" ? MM_STEPS : INCH_STEPS;
}

export interface GridSteps {
  readonly minorMm: number;
  /** Every so many minor lines is a major one. */
  readonly majorEvery: number;
}

/** Minor lines closer than this would be a tint, not lines. */
const LEAST_MINOR_PX = 11;

export function gridSteps(pxPerMm: number, units: UnitSystem): GridSteps {
  const steps = stepsOf(units);
  const minorMm = steps.find((step) => step * pxPerMm >= LEAST_MINOR_PX) ?? steps.at(-1) ?? 1;
  return { minorMm, majorEvery: units === "in" && minorMm < MM_PER_INCH ? 4 : 5 };
}

/** The longest round length that is at most so many px long. */
export function scaleBarMm(pxPerMm: number, units: UnitSystem, mostPx: number): number {
  const fitting = stepsOf(units).filter((step) => step * pxPerMm <= mostPx);
  return fitting.at(-1) ?? stepsOf(units)[0] ?? 1;
}

/** A round step as text: `50 mm`, `1/4 in`. */
export function stepText(mm: number, units: UnitSystem): string {
  if (units === "mm") return `${fixed(mm, 4)} mm`;
  const inches = mm / MM_PER_INCH;
  const fraction = INCH_FRACTIONS.find((candidate) => Math.abs(candidate - inches) < 1e-9);
  return fraction === undefined ? `${fixed(inches, 5)} in` : `1/${Math.round(1 / fraction)} in`;
}

const DRAG_MM: readonly number[] = [0.01, 0.05, 0.1, 0.5, 1, 5, 10, 50];
const DRAG_INCH: readonly number[] = [0.0005, 0.001, 0.005, 0.01, 0.05, 0.1, 0.5, 1].map(
  (inches) => inches * MM_PER_INCH,
);

/** A step of more than a px, so that a hand can find each. */
const LEAST_DRAG_PX = 1.5;
const FINER = 10;

/** The step by which a point is dragged at a scale, so that the text gets round numbers. */
export function dragStepMm(pxPerMm: number, units: UnitSystem, fine: boolean): number {
  const steps = units === "mm" ? DRAG_MM : DRAG_INCH;
  const step = steps.find((candidate) => candidate * pxPerMm >= LEAST_DRAG_PX) ?? steps.at(-1) ?? 1;
  return fine ? step / FINER : step;
}

/** A coordinate on the nearest step, free of the noise of the division. */
export function onStep(mm: number, stepMm: number): number {
  return Number((Math.round(mm / stepMm) * stepMm).toPrecision(12));
}

/** The next step in a direction (−1, 0 or 1): a coordinate between two steps goes to the nearer end first. */
export function nextOnStep(mm: number, direction: number, stepMm: number): number {
  if (direction === 0) return mm;
  // A coordinate on a step to the last bits counts as on it.
  const steps = mm / stepMm + direction * 1e-6;
  return onStep((direction > 0 ? Math.floor(steps) + 1 : Math.ceil(steps) - 1) * stepMm, stepMm);
}

/** Figures as people read them: sensible digits and units, in millimetres or inches. */
import type { Figure, FigureValue, Measure } from "./figure.ts";

export type UnitSystem = "mm" | "in";

/** A value ready to print: `12.4` and `mm` apart, so that tables can align them. */
export interface Presented {
  readonly text: string;
  readonly unit: string;
}

const MM_PER_INCH = 25.4;
const KG_PER_POUND = 0.453_592_37;
const UNKNOWN: Presented = { text: "–", unit: "" };

/** How a measure is shown in one system of units: what one shown unit is worth, and its name. */
interface Display {
  readonly unit: string;
  readonly perUnit: number;
  readonly digits: number;
}

const METRIC: Readonly<Partial<Record<Measure, Display>>> = {
  length: { unit: "mm", perUnit: 1, digits: 5 },
  area: { unit: "mm²", perUnit: 1, digits: 5 },
  mass: { unit: "kg", perUnit: 1, digits: 4 },
  inertia: { unit: "kg·m²", perUnit: 1, digits: 4 },
  imbalance: { unit: "g·mm", perUnit: 1, digits: 4 },
  speed: { unit: "m/s", perUnit: 1, digits: 4 },
  energy: { unit: "J", perUnit: 1, digits: 4 },
  angularMomentum: { unit: "kg·m²/s", perUnit: 1, digits: 4 },
  force: { unit: "N", perUnit: 1, digits: 4 },
  time: { unit: "s", perUnit: 1, digits: 4 },
  impulse: { unit: "N·s", perUnit: 1, digits: 4 },
  torque: { unit: "N·m", perUnit: 1, digits: 4 },
  turnRate: { unit: "°/s", perUnit: 1, digits: 4 },
  share: { unit: "%", perUnit: 0.01, digits: 3 },
};

/** Energy, inertia and force stay in SI: rules of events state joules whatever the builder's ruler says. */
const INCH: typeof METRIC = {
  ...METRIC,
  length: { unit: "in", perUnit: MM_PER_INCH, digits: 5 },
  area: { unit: "in²", perUnit: MM_PER_INCH ** 2, digits: 5 },
  mass: { unit: "lb", perUnit: KG_PER_POUND, digits: 4 },
  imbalance: { unit: "oz·in", perUnit: (KG_PER_POUND / 16) * 1000 * MM_PER_INCH, digits: 4 },
  speed: { unit: "mph", perUnit: 0.447_04, digits: 4 },
};

/** What a measure is shown in: the unit's name, and what one of it is worth in the unit of the JSON. */
export function unitOf(
  measure: Measure,
  system: UnitSystem,
): { readonly unit: string; readonly perUnit: number } {
  return (system === "mm" ? METRIC : INCH)[measure] ?? { unit: "", perUnit: 1 };
}

/**
 * A figure's value as text. `null` becomes a dash, never a zero.
 * @param value what the catalogue gave, in the unit of the figure's key
 */
export function presentFigure(figure: Figure, value: FigureValue, system: UnitSystem): Presented {
  if (value === null || figure.measure === null) return UNKNOWN;
  return presentMeasure(figure.measure, value, system);
}

/** A value of a measure as text; see {@link presentFigure}. */
export function presentMeasure(measure: Measure, value: FigureValue, system: UnitSystem): Presented {
  switch (measure) {
    case "point":
      return presentPoint(value, system);
    case "bounds":
      return presentBounds(value, system);
    case "secondMoments":
      return presentRecord(value, ["xx", "yy", "xy"], (moment) => number(moment, 5), "mm⁴");
    case "permissible":
      return presentPermissible(value, system);
    case "word":
      return { text: String(value), unit: "" };
    default:
      return typeof value === "number" ? presentScalar(measure, value, system) : UNKNOWN;
  }
}

function presentScalar(measure: Measure, value: number, system: UnitSystem): Presented {
  if (measure === "grade") return { text: `G${number(value, 3)}`, unit: "" };
  if (measure === "angle") return { text: number(value, 4), unit: "°" };
  if (measure === "rotation") return { text: number(value, 6), unit: "rpm" };
  if (measure === "mass" && system === "mm" && Math.abs(value) < 1)
    return { text: number(value * 1000, 4), unit: "g" };
  const display = (system === "mm" ? METRIC : INCH)[measure];
  if (!display) return { text: number(value, 6), unit: "" };
  return { text: number(value / display.perUnit, display.digits), unit: display.unit };
}

function presentPoint(value: FigureValue, system: UnitSystem): Presented {
  if (!isNumbers(value)) return UNKNOWN;
  const { perUnit, unit } = unitOf("length", system);
  return { text: `(${value.map((part) => fixed(part / perUnit, 3)).join(", ")})`, unit };
}

function presentBounds(value: FigureValue, system: UnitSystem): Presented {
  if (!isNumbers(value)) return UNKNOWN;
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = value;
  const { perUnit, unit } = unitOf("length", system);
  return { text: `${number((x1 - x0) / perUnit, 5)} × ${number((y1 - y0) / perUnit, 5)}`, unit };
}

function presentPermissible(value: FigureValue, system: UnitSystem): Presented {
  const { unit, perUnit } = unitOf("imbalance", system);
  const grades = typeof value === "object" && value !== null ? Object.keys(value) : [];
  return presentRecord(value, grades, (residual) => number(residual / perUnit, 4), unit);
}

function presentRecord(
  value: FigureValue,
  keys: readonly string[],
  show: (part: number) => string,
  unit: string,
): Presented {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return UNKNOWN;
  const parts = Object.entries(value).filter(([key]) => keys.includes(key));
  return { text: parts.map(([key, part]) => `${key} ${show(Number(part))}`).join(", "), unit };
}

function isNumbers(value: FigureValue): value is readonly number[] {
  return Array.isArray(value) && value.every((part) => typeof part === "number");
}

/**
 * A number with so many significant digits, but whole numbers whole, trailing zeros gone, no exponent in the range
 * of everyday and no `-0`.
 */
export function number(value: number, significantDigits: number): string {
  if (!Number.isFinite(value)) return "–";
  const magnitude = Math.abs(value);
  // In the units people read, a millionth is nil: rounding of the sums, not metal.
  if (magnitude < 5e-7) return "0";
  if (magnitude >= 1e12) return value.toExponential(significantDigits - 1);
  const wholeDigits = Math.floor(Math.log10(magnitude)) + 1;
  return fixed(value, Math.min(Math.max(significantDigits - wholeDigits, 0), 12));
}

/** A number with at most so many decimals, trailing zeros and `-0` gone. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const trimmed = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return trimmed === "-0" ? "0" : trimmed;
}

/** The settings of a bar: plate, spin, approach and target. */
import type { Approach, Located, Spin, Target } from "../design.ts";
import { ANGULAR_SPEED, DENSITY, SPEED, STRESS } from "../dimension.ts";
import { formatQuantity } from "../format-quantity.ts";
import type {
  ApproachStatement,
  Expression,
  QuantityStatement,
  SpinStatement,
  TargetStatement,
} from "../tree.ts";
import { numberOfUnit, unitFromText } from "../units.ts";
import { textOf } from "./expression-shape.ts";
import { failure, fix } from "./problems.ts";
import { coordinate, type Limits, type Scope, size, sizeOrZero, within } from "./values.ts";

/** 30 000 kg/m³; the densest metal has 22 600. */
const DENSITY_LIMITS: Limits = { dimension: DENSITY, unit: "kg/m^3", least: 0, above: true, most: 3e-5 };
/** 100 GPa. */
const YIELD_LIMITS: Limits = { dimension: STRESS, unit: "MPa", least: 0, above: true, most: 1e8 };
const ONE_RPM = (2 * Math.PI) / 60;
/** A million rpm; below one a bar does not spin, and what comes at it is deeper in than any number tells. */
const SPIN_LIMITS: Limits = {
  dimension: ANGULAR_SPEED,
  unit: "rpm",
  least: ONE_RPM * (1 - 1e-12),
  above: false,
  most: 1e6 * ONE_RPM,
};
/** 1000 m/s. */
const CLOSING_LIMITS: Limits = { dimension: SPEED, unit: "m/s", least: 0, above: false, most: 1e6 };

export function evaluateThickness(scope: Scope, statement: QuantityStatement): Located<number> | null {
  return size(scope, statement.value, "The thickness");
}

/** In kg/m³. */
export function evaluateDensity(scope: Scope, statement: QuantityStatement): number | null {
  return numberWithin(scope, statement.value, "The density", DENSITY_LIMITS);
}

/** In MPa. */
export function evaluateYield(scope: Scope, statement: QuantityStatement): number | null {
  return numberWithin(scope, statement.value, "The yield strength", YIELD_LIMITS);
}

/** A value as a number of the unit that its limits are in. */
function numberWithin(
  scope: Scope,
  expression: Expression | null,
  what: string,
  limits: Limits,
): number | null {
  const worth = within(scope, expression, what, limits);
  const scale = unitFromText(limits.unit);
  return worth === null || scale === null ? null : numberOfUnit(worth, scale);
}

export function evaluateSpin(scope: Scope, statement: SpinStatement): Spin | null {
  const worth = within(scope, statement.speed, "The spin", SPIN_LIMITS);
  const rpm = unitFromText("rpm");
  if (worth === null || rpm === null || statement.direction === null) return null;
  return { radPerS: worth.value, rpm: numberOfUnit(worth, rpm), direction: statement.direction };
}

/** A closing speed in m/s. */
export function closingSpeed(scope: Scope, expression: Expression | null, what: string): number | null {
  return numberWithin(scope, expression, what, CLOSING_LIMITS);
}

export function evaluateApproach(scope: Scope, statement: ApproachStatement): Approach | null {
  const { from, to } = statement;
  const fromMPerS = closingSpeed(scope, from, "The lowest closing speed");
  const toMPerS = closingSpeed(scope, to, "The highest closing speed");
  if (fromMPerS === null || toMPerS === null || from === null || to === null) return null;
  if (fromMPerS < toMPerS) return { fromMPerS, toMPerS };
  refuseOrder(scope, from, to, "The closing speeds run");
  return null;
}

/** Reports a range whose end is not above its start; where the order is wrong, the fix turns it round. */
export function refuseOrder(scope: Scope, from: Expression, to: Expression, subject: string): void {
  const { text, expressions, report } = scope;
  const [low, high] = [expressions.value(from), expressions.value(to)];
  if (low === null || high === null) return;
  const range = { start: from.range.start, end: to.range.end };
  const [first, second] = [textOf(text, from.range), textOf(text, to.range)];
  const swap = fix(`Swap: '${second} to ${first}'`, [
    { ...from.range, newText: second },
    { ...to.range, newText: first },
  ]);
  const message = `${subject} from low to high; these run from ${formatQuantity(low)} to ${formatQuantity(high)}.`;
  report(failure("out-of-range", range, message, low.value > high.value ? [swap] : []));
}

export const EDGE: Target = { kind: "edge", radiusMm: 0, offsetMm: 0 };

/** What the bar meets; an edge where the file does not say, or says it wrongly. */
export function evaluateTarget(scope: Scope, statement: TargetStatement): Target {
  const { shape, radius, offset } = statement;
  const radiusMm = sizeOrZero(scope, radius, "The radius of the target");
  const offsetMm = offset === null ? 0 : coordinate(scope, offset, "The offset");
  if (shape === null || offsetMm === null || (shape === "round" && radiusMm === null)) return EDGE;
  return { kind: shape, radiusMm: shape === "round" ? (radiusMm ?? 0) : 0, offsetMm };
}

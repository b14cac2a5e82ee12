/** Lengths, angles and speeds as the page writes them, in the reader's units. */
import { fixed, type Presented, presentMeasure, type UnitSystem } from "../../../geometry/figures/present.ts";

const MM_PER_INCH = 25.4;
const M_PER_S_PER_MPH = 0.447_04;

/** Hundredths of a millimetre, thousandths of an inch: finer is not cut. */
const DECIMALS: Readonly<Record<UnitSystem, number>> = { mm: 2, in: 3 };

export function mmPerUnit(units: UnitSystem): number {
  return units === "mm" ? 1 : MM_PER_INCH;
}

export function mPerSPerUnit(units: UnitSystem): number {
  return units === "mm" ? 1 : M_PER_S_PER_MPH;
}

/** A length as a bare number. */
export function lengthNumber(mm: number, units: UnitSystem, moreDecimals = 0): string {
  return fixed(mm / mmPerUnit(units), DECIMALS[units] + moreDecimals);
}

/** A length with its unit. */
export function lengthText(mm: number, units: UnitSystem, moreDecimals = 0): string {
  return `${lengthNumber(mm, units, moreDecimals)} ${units}`;
}

export function speedText(mPerS: number, units: UnitSystem): string {
  return valueText(presentMeasure("speed", mPerS, units));
}

/** Value and unit in one text, as the report writes them; that module would bring the whole core into the page. */
export function valueText({ text, unit }: Presented): string {
  if (unit === "") return text;
  return unit === "°" ? `${text}°` : `${text} ${unit}`;
}

export function speedUnit(units: UnitSystem): string {
  return presentMeasure("speed", 1, units).unit;
}

export function degreesText(rad: number): string {
  return `${fixed((rad * 180) / Math.PI, 1)}°`;
}

export function shareText(share: number): string {
  return `${Math.round(share * 100)} %`;
}

export function coordinates(
  point: { readonly x: number; readonly y: number },
  units: UnitSystem,
): readonly [x: string, y: string] {
  return [lengthText(point.x, units), lengthText(point.y, units)];
}

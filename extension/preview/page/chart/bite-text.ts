import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import type { BitePoint } from "../../protocol.ts";
import { fill, type PreviewStrings } from "../../strings.ts";
import { lengthNumber, lengthText, shareText, speedText } from "../units.ts";

/** One point of the curve as the cells of the table, without units. */
export function biteCells(
  { closingMPerS, maxMm, meanMm, idealMm, squareShare }: BitePoint,
  units: UnitSystem,
) {
  const [closing = ""] = speedText(closingMPerS, units).split(" ");
  return [
    closing,
    lengthNumber(maxMm, units),
    lengthNumber(meanMm, units),
    idealMm === null ? "–" : lengthNumber(idealMm, units),
    shareText(squareShare),
  ];
}

/** One point of the curve as a sentence. */
export function biteSentence(
  { closingMPerS, maxMm, meanMm, idealMm, squareShare }: BitePoint,
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  return fill(
    strings.readOut,
    speedText(closingMPerS, units),
    lengthText(maxMm, units),
    lengthText(meanMm, units),
    idealMm === null ? "–" : lengthText(idealMm, units),
    shareText(squareShare),
  );
}

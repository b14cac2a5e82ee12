import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { lengthNumber, lengthText, shareText, speedText } from "../../../webview/page/units.ts";
import type { BitePoint, ShownBite } from "../../protocol.ts";
import { fill, type PreviewStrings } from "../../strings.ts";
import { sameSpeed } from "./chart-model.ts";

/** One point of the curve as the cells of the table, without units. */
export function biteCells(point: BitePoint, units: UnitSystem) {
  const [closing = ""] = speedText(point.closingMPerS, units).split(" ");
  return [
    closing,
    lengthNumber(point.maxMm, units),
    lengthNumber(point.meanMm, units),
    `${lengthNumber(point.tenthMm, units)} – ${lengthNumber(point.ninetiethMm, units)}`,
    point.idealMm === null ? "–" : lengthNumber(point.idealMm, units),
    shareText(point.squareShare),
    shareText(point.toothShare),
  ];
}

/** One point of the curve as a sentence. */
export function biteSentence(point: BitePoint, units: UnitSystem, strings: PreviewStrings): string {
  const told = fill(
    strings.readOut,
    speedText(point.closingMPerS, units),
    lengthText(point.maxMm, units),
    lengthText(point.meanMm, units),
    lengthNumber(point.tenthMm, units),
    lengthText(point.ninetiethMm, units),
    point.idealMm === null ? "–" : lengthText(point.idealMm, units),
    shareText(point.squareShare),
    shareText(point.toothShare),
  );
  return point.passedShare > 0 ? fill(strings.readOutPassed, told, shareText(point.passedShare)) : told;
}

/** What the bar meets, and on which line. */
export function targetText(
  { kind, radiusMm, offsetMm }: ShownBite["target"],
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  if (kind === "face") return `${strings.againstFace}.`;
  const what =
    kind === "round" ? fill(strings.againstRound, lengthText(radiusMm, units)) : strings.againstEdge;
  if (offsetMm === 0) return `${what}.`;
  const side = offsetMm > 0 ? strings.offsetAhead : strings.offsetBehind;
  return `${fill(side, what, lengthText(Math.abs(offsetMm), units))}.`;
}

/** Up to which closing speeds the strikes are what they should be. */
export function limitsText(
  { curve, cleanMPerS, teethOnlyMPerS }: ShownBite,
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  const [slowest = 0, fastest = 0] = [curve[0]?.closingMPerS, curve.at(-1)?.closingMPerS];
  const limit = (mPerS: number | null, upTo: string, always: string, never: string) => {
    if (mPerS === null || mPerS > fastest) return always;
    return mPerS <= slowest ? never : fill(upTo, speedText(mPerS, units));
  };
  const clean = limit(cleanMPerS, strings.cleanTo, strings.cleanThroughout, strings.cleanNever);
  if (sameSpeed(cleanMPerS, teethOnlyMPerS)) return clean;
  const teeth = limit(teethOnlyMPerS, strings.teethTo, strings.teethThroughout, strings.teethNever);
  return clean === strings.cleanThroughout ? clean : `${clean} ${teeth}`;
}

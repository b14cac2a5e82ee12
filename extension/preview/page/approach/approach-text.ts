import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { degreesText, lengthText } from "../../../webview/page/units.ts";
import { fill, type PreviewStrings } from "../../strings.ts";
import { kindText } from "../strikes/strike-text.ts";
import type { Worked } from "./worked.ts";

/** How an approach ends, in words; where it ends is told beside it. */
export function contactText(
  { approach: { contact }, kind }: Worked,
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  const { depthMm, strikeAngleRad } = contact;
  if (kind === null || strikeAngleRad === null) return strings.approachPasses;
  const how = kindText(kind, strings);
  return fill(strings.approachMeets, lengthText(depthMm, units), how, degreesText(strikeAngleRad));
}

import type { KindOfStrike, Place, Range, StrikeKind } from "../../../../geometry/bite/bite.ts";
import { fixed, type UnitSystem } from "../../../../geometry/figures/present.ts";
import { coordinates, degreesText, lengthNumber, lengthText } from "../../../webview/page/units.ts";
import type { DrawnSegment } from "../../protocol.ts";
import { fill, type PreviewStrings } from "../../strings.ts";
import { edgeText, loopName } from "../drawing/edge-text.ts";

export function kindText(kind: StrikeKind, strings: PreviewStrings): string {
  const texts = {
    square: strings.strikeSquare,
    skidding: strings.strikeSkidding,
    off: strings.strikeOff,
  };
  return texts[kind];
}

/** A place of the outline in words: an edge with its measures, or a corner with where it is. */
export function placeText(
  { kind, index }: Place,
  segments: readonly DrawnSegment[],
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  const segment = segments[index];
  if (!segment) return "";
  if (kind === "segment") return edgeText(segment, "outer", units, strings);
  const corner = fill(strings.corner, ...coordinates(segment.to, units));
  return fill(strings.edgeInLoop, loopName("outer", strings), corner);
}

/** How deep, at which angles and how far out a strike is. */
export function strikeDetail(
  { depthMm, strikeAngleRad, radiusMm }: KindOfStrike,
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  const lengths = (range: Range) =>
    rangeText(
      range,
      (mm) => lengthNumber(mm, units),
      (mm) => lengthText(mm, units),
      strings,
    );
  const angles = rangeText(strikeAngleRad, degreesText, degreesText, strings);
  return fill(strings.strikeDetail, lengths(depthMm), angles, lengths(radiusMm));
}

/** Both ends, or one where they are written alike; only the last has its unit. */
function rangeText(
  { least, most }: Range,
  bare: (value: number) => string,
  whole: (value: number) => string,
  strings: PreviewStrings,
): string {
  if (whole(least) === whole(most)) return whole(most);
  return fill(strings.range, bare(least), whole(most));
}

/** A share with a digit more where it is small; what is left of nothing is not written as nothing. */
export function fineShareText(share: number): string {
  const percent = share * 100;
  if (percent > 0 && percent < 0.1) return "< 0.1 %";
  return `${fixed(percent, percent < 10 ? 1 : 0)} %`;
}

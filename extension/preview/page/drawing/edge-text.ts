import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { degreesText, lengthText } from "../../../webview/page/units.ts";
import type { DrawnLoop, DrawnSegment } from "../../protocol.ts";
import { fill, type PreviewStrings } from "../../strings.ts";

/** An edge in words: what it belongs to, with length, angle and radius. */
export function edgeText(
  segment: DrawnSegment,
  loop: DrawnLoop["kind"],
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  return fill(strings.edgeInLoop, loopName(loop, strings), segmentText(segment, units, strings));
}

function segmentText(segment: DrawnSegment, units: UnitSystem, strings: PreviewStrings): string {
  if (segment.kind === "line") {
    const { from, to } = segment;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    return fill(strings.line, lengthText(length, units), degreesText(slopeRad(segment)));
  }
  const { radiusMm, sweepRad, centre } = segment;
  const turned = Math.abs(sweepRad);
  if (turned >= Math.PI * 1.999) {
    const fromAxis = Math.hypot(centre.x, centre.y);
    return fill(strings.circle, lengthText(2 * radiusMm, units), lengthText(fromAxis, units));
  }
  return fill(
    strings.arc,
    lengthText(radiusMm, units),
    degreesText(turned),
    lengthText(radiusMm * turned, units),
  );
}

/** The slope of a line without a direction, 0° to 180°: which way round a loop runs is nobody's concern. */
function slopeRad({ from, to }: DrawnSegment): number {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const slope = angle < 0 ? angle + Math.PI : angle;
  return slope > Math.PI - 5e-4 ? 0 : slope;
}

export function loopName(kind: DrawnLoop["kind"], strings: PreviewStrings): string {
  const names = {
    outer: strings.loopOuter,
    bore: strings.loopBore,
    hole: strings.loopHole,
    slot: strings.loopSlot,
    cutout: strings.loopCutout,
  };
  return names[kind];
}

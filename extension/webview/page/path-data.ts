/** Loops as SVG path data in mm. The screen's y goes down, so every y changes its sign here and nowhere else. */
import type { Point } from "../../../geometry/language/design.ts";
import type { Loop, Segment } from "../../../geometry/outline/segment.ts";

/** What of a loop is drawn. */
export type DrawnShape = Pick<Loop, "segments">;

export function segmentPath(segment: Segment): string {
  return `M${pair(segment.from)}${drawTo(segment)}`;
}

export function loopPath({ segments }: DrawnShape): string {
  const [first] = segments;
  return first ? `M${pair(first.from)}${segments.map(drawTo).join("")}Z` : "";
}

export function loopsPath(loops: readonly DrawnShape[]): string {
  return loops.map(loopPath).join("");
}

function drawTo(segment: Segment): string {
  if (segment.kind === "line") return `L${pair(segment.to)}`;
  const { centre, radiusMm, startRad, sweepRad, to } = segment;
  // SVG takes an arc by its ends, so one that comes back to its start is drawn in two halves.
  if (Math.abs(sweepRad) < Math.PI * 1.999) return arcTo(radiusMm, sweepRad, to);
  const halfway = startRad + sweepRad / 2;
  const middle = {
    x: centre.x + radiusMm * Math.cos(halfway),
    y: centre.y + radiusMm * Math.sin(halfway),
  };
  return arcTo(radiusMm, sweepRad / 2, middle) + arcTo(radiusMm, sweepRad / 2, to);
}

function arcTo(radius: number, sweepRad: number, to: Point): string {
  const large = Math.abs(sweepRad) > Math.PI ? 1 : 0;
  return `A${short(radius)} ${short(radius)} 0 ${large} ${sweepRad > 0 ? 0 : 1} ${pair(to)}`;
}

function pair({ x, y }: Point): string {
  return `${short(x)} ${short(-y)}`;
}

/** A hundred-thousandth of a millimetre is beyond any screen. */
function short(mm: number): string {
  return String(Number(mm.toFixed(5)) + 0);
}

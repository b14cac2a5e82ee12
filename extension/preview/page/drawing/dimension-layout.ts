/** Where dimensions stand on the screen, in px. */
import type { PlanePoint } from "../../protocol.ts";
import type { Size } from "../viewport.ts";
import type { Dimension } from "./dimension-list.ts";

export interface LaidDimension {
  readonly path: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly "text-anchor": "start" | "middle" | "end";
  readonly transform: string | null;
}

type Place = (point: PlanePoint) => PlanePoint;
type Of<Kind extends Dimension["kind"]> = Extract<Dimension, { kind: Kind }>;

/**
 * Lay dimensions out. Hole labels stand above the bar, the rightmost lowest: so no leader runs through a label.
 * @param topPx the upper side of the bar
 */
export function layOutDimensions(
  dimensions: readonly Dimension[],
  place: Place,
  topPx: number,
  size: Size,
): LaidDimension[] {
  const holes = dimensions.filter((dimension) => dimension.kind === "hole").sort((a, b) => b.at.x - a.at.x);
  return dimensions.map((dimension) => {
    if (dimension.kind === "span") return layOutSpan(dimension, place);
    if (dimension.kind === "radius") return layOutRadius(dimension, place);
    const level = holes.indexOf(dimension);
    return layOutHole(dimension, place, labelLine(level, holes.length, topPx), size);
  });
}

const LINE_PX = 16;

/** The base line of a hole's label: over the bar, or at the upper rim of the panel when the bar reaches beyond it. */
function labelLine(level: number, count: number, topPx: number): number {
  return Math.max(topPx - 12 - level * LINE_PX, 14 + (count - 1 - level) * LINE_PX);
}

/** How far from the bar its extents are written. */
const OUT_PX = 20;

function layOutSpan({ from, to, outTo, label }: Of<"span">, place: Place): LaidDimension {
  const [a, b] = [place(from), place(to)];
  if (outTo === "below") {
    const y = a.y + OUT_PX;
    const rays = `M${a.x} ${a.y + 4}V${y + 4}M${b.x} ${b.y + 4}V${y + 4}`;
    return {
      path: `${rays}M${a.x} ${y}H${b.x}${slash(a.x, y)}${slash(b.x, y)}`,
      text: label,
      x: (a.x + b.x) / 2,
      y: y + 13,
      "text-anchor": "middle",
      transform: null,
    };
  }
  const x = a.x - OUT_PX;
  const middle = (a.y + b.y) / 2;
  const rays = `M${a.x - 4} ${a.y}H${x - 4}M${b.x - 4} ${b.y}H${x - 4}`;
  return {
    path: `${rays}M${x} ${a.y}V${b.y}${slash(x, a.y)}${slash(x, b.y)}`,
    text: label,
    x: x - 6,
    y: middle,
    "text-anchor": "middle",
    transform: `rotate(-90 ${x - 6} ${middle})`,
  };
}

function layOutRadius({ radiusMm, angleRad, label }: Of<"radius">, place: Place): LaidDimension {
  const along = (share: number) =>
    place({ x: share * radiusMm * Math.cos(angleRad), y: share * radiusMm * Math.sin(angleRad) });
  const [a, b, text] = [along(0), along(1), along(0.72)];
  return {
    path: `M${a.x} ${a.y}L${b.x} ${b.y}${slash(b.x, b.y)}`,
    text: label,
    x: text.x + 8,
    y: text.y + 3,
    "text-anchor": "start",
    transform: null,
  };
}

/** About the width of a sign of the labels. */
const SIGN_PX = 6.7;

function layOutHole({ at, label }: Of<"hole">, place: Place, y: number, { width }: Size): LaidDimension {
  const hole = place(at);
  const x = Math.min(hole.x + 14, Math.max(4, width - 6 - label.length * SIGN_PX));
  return {
    path: `M${hole.x} ${hole.y}L${x - 3} ${y - 4}M${hole.x - 3} ${hole.y}h6M${hole.x} ${hole.y - 3}v6`,
    text: label,
    x,
    y,
    "text-anchor": "start",
    transform: null,
  };
}

/** The slanted stroke that ends a span. */
function slash(x: number, y: number): string {
  return `M${x - 4} ${y + 4}L${x + 4} ${y - 4}`;
}

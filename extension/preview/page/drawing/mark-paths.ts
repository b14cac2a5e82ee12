/** Paths of the small marks, in px. Angles are counter-clockwise from the right, as in the plane. */
import type { PlanePoint } from "../../protocol.ts";

/** A point at a distance and direction from another on the screen, where y goes down. */
export function away({ x, y }: PlanePoint, radius: number, angleRad: number): PlanePoint {
  return { x: x + radius * Math.cos(angleRad), y: y - radius * Math.sin(angleRad) };
}

export function pair({ x, y }: PlanePoint): string {
  return `${x.toFixed(2)} ${y.toFixed(2)}`;
}

/** A tick outside the rim each 15°, longer each 45°, longest on the axes. */
export function ticks(middle: PlanePoint, radius: number): string {
  const marks = Array.from({ length: 24 }, (_, index) => {
    const angle = (index * Math.PI) / 12;
    const length = index % 6 === 0 ? 10 : index % 3 === 0 ? 7 : 4;
    return `M${pair(away(middle, radius + 2, angle))}L${pair(away(middle, radius + 2 + length, angle))}`;
  });
  return marks.join("");
}

const HEAD_PX = 10;

/** A head that stands on the end of a shaft and points along a direction. */
export function arrowHead(end: PlanePoint, headingRad: number): string {
  const point = away(end, HEAD_PX, headingRad);
  const wings = [1, -1].map((side) => away(end, HEAD_PX / 2, headingRad + (side * Math.PI) / 2));
  return `M${pair(point)}L${wings.map(pair).join("L")}Z`;
}

/** A short mark across the rim where a tip runs. */
export function tipMark(tip: PlanePoint, middle: PlanePoint): string {
  const angle = Math.atan2(middle.y - tip.y, tip.x - middle.x);
  return `M${pair(away(tip, -5, angle))}L${pair(away(tip, 9, angle))}`;
}

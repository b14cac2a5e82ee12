import type { Point } from "../../language/design.ts";
import type { Loop } from "../../outline/segment.ts";
import { farthestFromAxis } from "../../outline/segment-geometry.ts";
import { angleOf, distance, norm, wrapped } from "../../outline/vector.ts";

/** Points this near to the largest radius, as a share of it, are at it: a tenth of a µm on a bar of 100 mm. */
const TIP_SHARE = 1e-6;
/** Nearer than this two of them are one tip: a corner is the end of two segments. */
const SAME_TIP_MM = 1e-3;

/** The places of a loop that are farthest from the spin axis, counter-clockwise from +x. A rim about the axis counts once. */
export function tipsOf({ segments }: Loop): readonly Point[] {
  const farthest = segments.map((segment) => ({ segment, ...farthestFromAxis(segment) }));
  const rimMm = Math.max(...farthest.map(({ distanceMm }) => distanceMm));
  const tips: Point[] = [];
  for (const { segment, point, distanceMm } of farthest) {
    if (distanceMm < rimMm * (1 - TIP_SHARE)) continue;
    const isNew = tips.every((tip) => distance(tip, point) > SAME_TIP_MM);
    const isRim = segment.kind === "arc" && norm(segment.centre) <= SAME_TIP_MM;
    if (isNew && !(isRim && tips.some((tip) => distance(tip, segment.to) <= SAME_TIP_MM))) tips.push(point);
  }
  return tips.sort((a, b) => wrapped(angleOf(a)) - wrapped(angleOf(b)));
}

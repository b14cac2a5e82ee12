/**
 * How far the arcs of a model lie from their own ends. A model may take a centre for right that is off by less than
 * it tells points apart, and a huge radius has few digits left for the ends. By so much a file, which has only ends
 * and bulges, may differ from the model's radii and centres. It is next to nothing for most.
 */
import type { ArcSegment, Loop } from "../../outline/segment.ts";
import { SAME_POINT_MM } from "../../outline/tolerance.ts";
import { distance, polar } from "../../outline/vector.ts";

/** Rounding of a radius, a centre and an angle together. */
const DIGITS_OF_RADIUS = 8 * Number.EPSILON;

/** A centre may be off by one such distance, and an end moved by another to close its loop. */
const MOST_MM = 2 * SAME_POINT_MM;

/** In mm, for all arcs of some loops together. */
export function misfitOf(loops: readonly Loop[]): number {
  return arcsOf(loops).reduce((sum, arc) => sum + gapOf(arc) + DIGITS_OF_RADIUS * arc.radiusMm, 0);
}

/** Arcs that no tolerance explains: then the model itself is wrong, and no file of it can be right. */
export function misfitFaults(loops: readonly Loop[]): string[] {
  return arcsOf(loops)
    .filter((arc) => !(gapOf(arc) <= MOST_MM + DIGITS_OF_RADIUS * arc.radiusMm))
    .map(
      (arc) =>
        `an arc of the outline, from (${arc.from.x}, ${arc.from.y}), misses its own ends by ${gapOf(arc)} mm`,
    );
}

function arcsOf(loops: readonly Loop[]): ArcSegment[] {
  return loops.flatMap(({ segments }) => segments).filter((segment) => segment.kind === "arc");
}

/** From where the angles, radius and centre put the ends to where they are, both ends together. */
function gapOf({ from, to, centre, radiusMm, startRad, sweepRad }: ArcSegment): number {
  return (
    distance(from, polar(centre, radiusMm, startRad)) +
    distance(to, polar(centre, radiusMm, startRad + sweepRad))
  );
}

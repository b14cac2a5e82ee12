import type { Point } from "../language/design.ts";
import type { Loop, Outline } from "../outline/segment.ts";
import { type Bounds, perimeterOf } from "../outline/segment-geometry.ts";
import { plus } from "../outline/vector.ts";
import { AreaIntegrals } from "./area-integrals.ts";
import { extentOf } from "./extent.ts";
import { movedFromCentroid, type SecondMoments } from "./second-moments.ts";

/** What the shape alone says, in mm, mm² and mm⁴; the spin axis is (0, 0). */
export interface Section {
  /** Holes taken off. */
  readonly areaMm2: number;
  /** Of all edges to be cut, holes included. */
  readonly perimeterMm: number;
  /** `null` where there is no area to have one. */
  readonly centroidMm: Point | null;
  /** About the spin axis. */
  readonly secondMomentsMm4: SecondMoments;
  /** About the centroid; `null` without one. */
  readonly centroidalMomentsMm4: SecondMoments | null;
  /** From the spin axis to the farthest point of the outer loop. */
  readonly maxRadiusMm: number;
  /** The upright rectangle around the outer loop: least x, least y, greatest x, greatest y. */
  readonly boundsMm: readonly [x0: number, y0: number, x1: number, y1: number];
}

/**
 * An area below this share of the perimeter squared is no area: it is what the sums leave of a loop that runs out and
 * back on itself.
 */
const ROUNDING_OF_AREA = 4 * Number.EPSILON;

/**
 * Exact section properties of an outline: line and arc terms are integrated in closed form, nothing is flattened.
 * Works for any outline, sound or not: holes count as missing even where they leave the outer loop. An outer loop
 * without segments has no extent: everything is 0 and at the spin axis.
 * Source: Green's theorem, see `area-integrals.ts`; parallel-axis theorem.
 */
export function sectionOf(outline: Outline): Section {
  const loops: readonly Loop[] = [outline.outer, ...outline.inner];
  const { bounds, maxRadiusMm } = extentOf(outline.outer);
  const reference = nearestToAxisIn(bounds);
  const integrals = new AreaIntegrals(reference);
  for (const loop of loops) integrals.addLoop(loop);
  const perimeterMm = loops.reduce((sum, loop) => sum + perimeterOf(loop), 0);
  const fromReference = centroidOf(integrals, perimeterMm);
  return {
    areaMm2: integrals.areaMm2,
    perimeterMm,
    centroidMm: fromReference && plus(reference, fromReference),
    secondMomentsMm4: momentsAboutAxis(integrals, reference),
    centroidalMomentsMm4:
      fromReference && movedFromCentroid(integrals.secondMoments(), -integrals.areaMm2, fromReference),
    maxRadiusMm,
    boundsMm: [bounds.minX, bounds.minY, bounds.maxX, bounds.maxY],
  };
}

/**
 * Where to sum from: the axis itself for a bar around it, so that what is symmetrical cancels to the last bits, and
 * the nearest point of the box for a shape far away, so that the distance takes no digits.
 */
function nearestToAxisIn({ minX, minY, maxX, maxY }: Bounds): Point {
  return { x: Math.min(Math.max(0, minX), maxX), y: Math.min(Math.max(0, minY), maxY) };
}

/** From the reference of the sums. */
function centroidOf({ areaMm2, firstXMm3, firstYMm3 }: AreaIntegrals, perimeterMm: number): Point | null {
  if (Math.abs(areaMm2) <= ROUNDING_OF_AREA * perimeterMm * perimeterMm) return null;
  return { x: firstXMm3 / areaMm2, y: firstYMm3 / areaMm2 };
}

/** Not by way of the centroid: a section without area has second moments too. */
function momentsAboutAxis(integrals: AreaIntegrals, { x, y }: Point): SecondMoments {
  const { areaMm2, firstXMm3, firstYMm3, xxMm4, yyMm4, xyMm4 } = integrals;
  return {
    xx: xxMm4 + 2 * y * firstYMm3 + areaMm2 * y * y,
    yy: yyMm4 + 2 * x * firstXMm3 + areaMm2 * x * x,
    xy: xyMm4 + x * firstYMm3 + y * firstXMm3 + areaMm2 * x * y,
  };
}

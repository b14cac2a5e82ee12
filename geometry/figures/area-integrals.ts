import type { Point } from "../language/design.ts";
import type { ArcSegment, Loop } from "../outline/segment.ts";
import { type CapFactors, deepCap, SHALLOW_HALF_SWEEP_RAD, shallowCap } from "./circular-cap.ts";
import type { SecondMoments } from "./second-moments.ts";

/**
 * Sums the area of closed loops and its moments about a reference point by Green's theorem: each segment stands for
 * the triangle between the reference and its chord, an arc for its cap besides. Loops counter-clockwise add, loops
 * clockwise take away.
 * Sources: polygon formulas in the common handbook form (cross product of each edge); caps see `circular-cap.ts`.
 */
export class AreaIntegrals {
  /** ∫dA */
  areaMm2 = 0;
  /** ∫x dA and ∫y dA about the reference. */
  firstXMm3 = 0;
  firstYMm3 = 0;
  /** ∫y² dA, ∫x² dA, ∫xy dA about the reference. */
  xxMm4 = 0;
  yyMm4 = 0;
  xyMm4 = 0;
  readonly #x: number;
  readonly #y: number;

  /** Near the loops, or the sums lose the digits that the distance takes. */
  constructor(reference: Point) {
    this.#x = reference.x;
    this.#y = reference.y;
  }

  addLoop(loop: Loop): void {
    for (const segment of loop.segments) {
      this.#addTriangle(segment.from, segment.to);
      if (segment.kind === "arc") this.#addCap(segment);
    }
  }

  /** The sums as second moments about the reference. */
  secondMoments(): SecondMoments {
    return { xx: this.xxMm4, yy: this.yyMm4, xy: this.xyMm4 };
  }

  #addTriangle(from: Point, to: Point): void {
    const x0 = from.x - this.#x;
    const y0 = from.y - this.#y;
    const x1 = to.x - this.#x;
    const y1 = to.y - this.#y;
    const cross = x0 * y1 - x1 * y0;
    this.areaMm2 += cross / 2;
    this.firstXMm3 += (cross * (x0 + x1)) / 6;
    this.firstYMm3 += (cross * (y0 + y1)) / 6;
    this.xxMm4 += (cross * (y0 * y0 + y0 * y1 + y1 * y1)) / 12;
    this.yyMm4 += (cross * (x0 * x0 + x0 * x1 + x1 * x1)) / 12;
    this.xyMm4 += (cross * (x0 * y1 + 2 * (x0 * y0 + x1 * y1) + x1 * y0)) / 24;
  }

  #addCap(arc: ArcSegment): void {
    const halfSweepRad = arc.sweepRad / 2;
    if (Math.abs(halfSweepRad) <= SHALLOW_HALF_SWEEP_RAD) this.#addShallowCap(arc, halfSweepRad);
    else this.#addDeepCap(arc, halfSweepRad);
  }

  /** By the chord's own ends, so that the cap fits the triangle below it to the last bit. */
  #addShallowCap({ from, to }: ArcSegment, halfSweepRad: number): void {
    const middleX = (from.x - this.#x + (to.x - this.#x)) / 2;
    const middleY = (from.y - this.#y + (to.y - this.#y)) / 2;
    const halfX = (to.x - from.x) / 2;
    const halfY = (to.y - from.y) / 2;
    this.#addFramed(shallowCap(halfSweepRad), middleX, middleY, halfY, -halfX);
  }

  #addDeepCap({ centre, radiusMm, startRad }: ArcSegment, halfSweepRad: number): void {
    const middleRad = startRad + halfSweepRad;
    const towardsX = radiusMm * Math.cos(middleRad);
    const towardsY = radiusMm * Math.sin(middleRad);
    this.#addFramed(deepCap(halfSweepRad), centre.x - this.#x, centre.y - this.#y, towardsX, towardsY);
  }

  /** Add a cap whose frame lies at (x, y) with (u, v) as first and (−v, u) as second axis, both of the cap's unit length. */
  #addFramed(cap: CapFactors, x: number, y: number, u: number, v: number): void {
    const square = u * u + v * v;
    const area = square * cap.area;
    const firstX = square * cap.first * u;
    const firstY = square * cap.first * v;
    const along = square * cap.along;
    const across = square * cap.across;
    this.areaMm2 += area;
    this.firstXMm3 += area * x + firstX;
    this.firstYMm3 += area * y + firstY;
    this.xxMm4 += area * y * y + 2 * firstY * y + along * v * v + across * u * u;
    this.yyMm4 += area * x * x + 2 * firstX * x + along * u * u + across * v * v;
    this.xyMm4 += area * x * y + firstX * y + firstY * x + (along - across) * u * v;
  }
}

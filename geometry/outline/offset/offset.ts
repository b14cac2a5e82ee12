import type { Loop } from "../segment.ts";
import { lengthOf, pointAt, signedAreaOf } from "../segment-geometry.ts";
import { type Clearance, clearanceOf } from "./clearance.ts";
import { outerBoundary } from "./outer-boundary.ts";
import { type Piece, piecesAt } from "./pieces.ts";
import { type OffsetSource, type Stretch, strandsOf } from "./strand.ts";
import { type OffsetTolerances, offsetTolerances } from "./tolerances.ts";
import { united, withSlack } from "./united.ts";

export type { OffsetSource } from "./strand.ts";

export interface OffsetLoop {
  readonly loop: Loop;
  /** Where each segment of the loop comes from, in their order. */
  readonly sources: readonly OffsetSource[];
}

/**
 * The outer boundary of all points within `distanceMm` of the region inside a counter-clockwise simple loop: itself
 * simple and counter-clockwise, of exact lines and arcs. Pockets that the offset closes off are left out, as nothing
 * gets into them from outside.
 *
 * A point of an offset segment belongs to the point of its source along the same normal: the same foot on a line, the
 * same angle about the same centre on an arc, and the corner itself on the arc about a convex corner.
 *
 * Method: every line moved outwards, every arc about its centre and an arc about every convex corner hold the
 * boundary. They are cut where they meet, the pieces nearer to the outline than the distance are dropped, and the way
 * round the outside is followed. A large distance is approached in stages: what is hidden once stays hidden.
 *
 * Throws a RangeError for a distance that is negative or not finite, and an Error where a loop that is not simple has
 * no such boundary; ask the outline's checks first.
 */
export function offsetOutwards(outer: Loop, distanceMm: number): OffsetLoop {
  if (!(distanceMm >= 0 && distanceMm < Infinity)) {
    throw new RangeError(`an offset needs a distance from 0 up, not ${distanceMm}`);
  }
  if (distanceMm === 0) {
    return { loop: outer, sources: outer.segments.map((_, index) => ({ kind: "segment", index })) };
  }
  const strands = strandsOf(outer);
  const work: Work = {
    outer,
    strandCount: strands.length,
    isClear: clearanceOf(outer),
    tolerances: offsetTolerances(outer, distanceMm),
  };
  let stretches: readonly Stretch[] = strands.map((strand) => ({ strand, start: 0, end: 1 }));
  let boundary: readonly Piece[] = [];
  for (const stage of stagesTo(distanceMm, shortLength(outer))) {
    boundary = boundaryAt(stretches, stage, work);
    stretches = boundary.map((piece) => withSlack(piece, SLACK_SHARE * work.tolerances.sameMm));
  }
  return {
    loop: { segments: boundary.map(({ segment }) => segment), source: outer.source },
    sources: boundary.map(({ strand }) => strand.source),
  };
}

interface Work {
  readonly outer: Loop;
  readonly strandCount: number;
  readonly isClear: Clearance;
  readonly tolerances: OffsetTolerances;
}

/** What a stage hides is hidden for good but for rounding; so much more of it is kept, in points that count as one. */
const SLACK_SHARE = 10;

/** How much farther each stage goes than the one before. */
const STAGE_FACTOR = 4;

/**
 * The distances on the way, the last one in full. Far beyond the length of a segment each curve would meet many
 * others; the stages keep them few.
 */
function stagesTo(distanceMm: number, lengthMm: number): number[] {
  const stages = [distanceMm];
  for (let stage = distanceMm / STAGE_FACTOR; stage > lengthMm && lengthMm > 0; stage /= STAGE_FACTOR) {
    stages.unshift(stage);
  }
  return stages;
}

/** The length that a quarter of the segments fall short of: gaps are filled from there on. */
function shortLength({ segments }: Loop): number {
  const lengths = segments.map(lengthOf).sort((a, b) => a - b);
  return lengths[Math.floor(lengths.length / 4)] ?? 0;
}

function boundaryAt(stretches: readonly Stretch[], distanceMm: number, work: Work): Piece[] {
  const { strandCount, isClear, tolerances } = work;
  const pieces = piecesAt(stretches, distanceMm, strandCount, tolerances);
  const clear = pieces.filter(({ segment }) =>
    isClear(pointAt(segment, 0.5), distanceMm - tolerances.clearMm),
  );
  const boundary = outerBoundary(clear, signedAreaOf(work.outer) * (1 - 1e-9));
  if (boundary === null) throw new Error(`no closed offset was found at ${distanceMm} mm`);
  return united(boundary, distanceMm);
}

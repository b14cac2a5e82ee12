import type { SpinDirection } from "../language/tree.ts";
import type { Loop } from "../outline/segment.ts";
import { mirroredLoop, reversedLoop } from "../outline/transform.ts";
import { depthSwept } from "./curve.ts";
import { type Piece, piecesOf } from "./piece.ts";
import { teethOf } from "./teeth.ts";

/** All that can be said of an outline's bite without the closing speed. */
export interface BiteProfile {
  /** The loop as given. */
  readonly outer: Loop;
  readonly direction: SpinDirection;
  /** The largest radius, in mm. */
  readonly maxRadiusMm: number;
  /** Once round in offering order, from a point of the largest radius to itself; θ grows by a full turn. */
  readonly pieces: readonly Piece[];
  /** ∫(depth) dθ over each piece, in mm·rad. */
  readonly depthSwept: readonly number[];
  /** Tips at the largest radius with a face that can strike square. */
  teeth(squareStrikeRad: number): number;
}

/** θ must grow by a full turn to within rounding of many segments. */
const TURN_TOLERANCE_RAD = 1e-6;

/**
 * Prepare an outline for questions about its bite.
 * @param outer counter-clockwise and simple, with the spin axis strictly inside
 * @param direction as drawn: "ccw" or "cw"
 * @throws RangeError for a loop that does not go once round the axis: look before you ask
 */
export function biteProfile(outer: Loop, direction: SpinDirection): BiteProfile {
  const pieces = piecesOf(offeredLoop(outer, direction));
  const turned = pieces.at(-1)?.thetaTo ?? 0;
  if (!(Math.abs(turned - 2 * Math.PI) <= TURN_TOLERANCE_RAD)) {
    throw new RangeError("biteProfile needs a loop that goes once round the spin axis");
  }
  const maxRadiusMm = pieces[0]?.radiusFrom ?? 0;
  return {
    outer,
    direction,
    maxRadiusMm,
    pieces,
    depthSwept: pieces.map(({ curve, from, to }) => depthSwept(curve, maxRadiusMm, from, to)),
    teeth: (squareStrikeRad) => teethOf({ pieces, maxRadiusMm }, squareStrikeRad).teeth,
  };
}

/**
 * The loop as a bar that turns counter-clockwise offers it: clockwise. A bar that turns the other way is its
 * mirror image.
 */
function offeredLoop(outer: Loop, direction: SpinDirection): Loop {
  return direction === "ccw" ? reversedLoop(outer) : mirroredLoop(outer, "x");
}

import type { Target } from "../language/design.ts";
import type { SpinDirection } from "../language/tree.ts";
import type { Loop } from "../outline/segment.ts";
import { depthSwept } from "./depth-swept.ts";
import { offeredTo } from "./offered.ts";
import { type Piece, piecesOf } from "./piece.ts";
import { type Teeth, teethOf } from "./teeth.ts";

/** All that can be said of an outline's bite without the closing speed. */
export interface BiteProfile {
  /** The loop as given. */
  readonly outer: Loop;
  readonly direction: SpinDirection;
  readonly target: Target;
  /** How far the target still has to go, until it is abreast of the axis, where it can first be met. Depth counts from here. */
  readonly rimMm: number;
  /** The largest radius of the bar, in mm. */
  readonly maxRadiusMm: number;
  /** Once round in offering order, from a point that is farthest out to itself; ψ grows by a full turn. */
  readonly pieces: readonly Piece[];
  /** ψ of the first piece's start against the bar as drawn: how far it has turned there, in the sense of its spin. */
  readonly startTurnRad: number;
  /** ∫(depth) dψ over each piece, in mm·rad. */
  readonly depthSwept: readonly number[];
  /** The teeth at a square-strike angle. */
  teeth(squareStrikeRad: number): Teeth;
}

/** An edge that comes straight at the spin axis. */
export const PLAIN_EDGE: Target = { kind: "edge", radiusMm: 0, offsetMm: 0 };

/** Whether a target is one: what is said of reliefs and lengths in mm of radius holds for it alone. */
export function isPlainEdge({ kind, offsetMm }: Target): boolean {
  return kind === "edge" && offsetMm === 0;
}

/** How far from the axis a target's line of approach may pass for a bar of a radius to meet it. */
export function meetingReachMm({ kind, radiusMm }: Target, maxRadiusMm: number): number {
  if (kind === "face") return Number.POSITIVE_INFINITY;
  return maxRadiusMm + (kind === "round" ? radiusMm : 0);
}

/** ψ must grow by a full turn to within rounding of many segments. */
const TURN_TOLERANCE_RAD = 1e-6;

/**
 * Prepare an outline for questions about its bite.
 * @param outer counter-clockwise and simple, with the spin axis strictly inside
 * @param direction as drawn: "ccw" or "cw"
 * @throws RangeError for a loop that does not go once round the axis, and for a target whose line passes the bar by:
 *   look before you ask
 */
export function biteProfile(outer: Loop, direction: SpinDirection, target: Target = PLAIN_EDGE): BiteProfile {
  const pieces = piecesOf(offeredTo(target, outer, direction));
  const turned = pieces.at(-1)?.turnTo ?? 0;
  if (!(Math.abs(turned - 2 * Math.PI) <= TURN_TOLERANCE_RAD)) {
    throw new RangeError(
      "biteProfile needs a loop that goes once round the spin axis, and a target that meets it",
    );
  }
  const rimMm = pieces[0]?.alongFrom ?? 0;
  const plain = isPlainEdge(target) ? null : biteProfile(outer, direction);
  const known = new Map<number, Teeth>();
  return {
    outer,
    direction,
    target,
    rimMm,
    maxRadiusMm: plain?.maxRadiusMm ?? rimMm,
    pieces,
    startTurnRad: pieces[0] ? pieces[0].thetaFrom + Math.atan2(pieces[0].curve.aside, rimMm) : 0,
    depthSwept: pieces.map(({ curve, from, to }) => depthSwept(curve, rimMm, from, to)),
    teeth: (squareStrikeRad) => {
      const found =
        known.get(squareStrikeRad) ??
        teethOf({ pieces, rimMm }, squareStrikeRad, plain?.teeth(squareStrikeRad) ?? null);
      known.set(squareStrikeRad, found);
      return found;
    },
  };
}

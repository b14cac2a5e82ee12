/**
 * What a bar offers to its target: the path of the target's reference point along which it would touch the bar, in
 * the order and the frame in which a bar that turns counter-clockwise meets it.
 */
import type { Target } from "../language/design.ts";
import type { SpinDirection } from "../language/tree.ts";
import { offsetOutwards } from "../outline/offset/offset.ts";
import type { Loop, Segment } from "../outline/segment.ts";
import { mirroredLoop, reversedLoop, reversedSegment } from "../outline/transform.ts";
import { angleOf, norm } from "../outline/vector.ts";
import { atRound } from "./at-round.ts";
import { withAxisDisc } from "./axis-disc.ts";
import { alongOf, type Curve, curveOf } from "./curve.ts";
import { supportOf } from "./support.ts";

/** A segment of the loop as it was given, or the corner between a segment and the next one. */
export interface Place {
  readonly kind: "segment" | "corner";
  readonly index: number;
}

/** What of the bar is touched along a part of the path; its curve has the same `s` as the path. */
export interface Touch {
  /** Null where nothing is touched: the target has come abreast of the axis. */
  readonly place: Place | null;
  readonly curve: Curve;
  /** The range of `s` of the whole segment. */
  readonly from: number;
  readonly to: number;
  /** Whether `s` runs from the segment's `to` to its `from`. */
  readonly backwards: boolean;
}

/** A part of the path. */
export interface Offered {
  readonly curve: Curve;
  readonly touch: Touch;
  readonly from: number;
  readonly to: number;
  /** What the target still has to go until it is abreast of the axis, at both ends; neighbours agree to the last digit. */
  readonly alongFrom: number;
  readonly alongTo: number;
  /** θ of the reference point at the start, or of the face's normal: against the bar as drawn, mirrored for one that turns clockwise. */
  readonly thetaFrom: number;
}

/**
 * The path, once round; empty where the target's line misses the bar.
 * @param outer counter-clockwise and simple, with the spin axis strictly inside
 */
export function offeredTo(
  { kind, radiusMm, offsetMm }: Target,
  outer: Loop,
  direction: SpinDirection,
): Offered[] {
  // A bar that turns clockwise is the mirror image of one that turns counter-clockwise.
  const offered = direction === "ccw" ? reversedLoop(outer) : mirroredLoop(outer, "x");
  const { segments } = offered;
  const count = segments.length;
  const backwards = direction === "ccw";
  const touches = segments.map((segment, i): Touch => {
    const { curve, from, to } = curveOf(segment);
    return { place: { kind: "segment", index: backwards ? count - 1 - i : i }, curve, from, to, backwards };
  });
  /** The corner at the end of an offered segment. */
  const cornerAfter = (i: number): Touch => {
    const corner = atRound(segments, i).to;
    const curve: Curve = { kind: "arc", reach: norm(corner), radius: 0, side: -1, aside: 0 };
    const index = backwards ? (2 * count - 2 - i) % count : (i + count) % count;
    return { place: { kind: "corner", index }, curve, from: 0, to: 1, backwards };
  };
  if (kind === "face") return supportOf(segments, touches, cornerAfter);
  const path =
    kind === "edge" || radiusMm === 0
      ? segments.map((segment, i) => ({ segment, touch: atRound(touches, i) }))
      : roundPath(offered, touches, cornerAfter, radiusMm);
  return withAxisDisc(
    path.map((part) => offeredAlong(part, offsetMm)),
    path.map(({ segment }) => segment),
    offsetMm,
  );
}

interface PathPart {
  readonly segment: Segment;
  readonly touch: Touch;
}

/** The path of the centre of a rounded edge: the outline set off by its radius. */
function roundPath(
  offered: Loop,
  touches: readonly Touch[],
  cornerAfter: (i: number) => Touch,
  radiusMm: number,
): PathPart[] {
  const count = offered.segments.length;
  const { loop, sources } = offsetOutwards(reversedLoop(offered), radiusMm);
  const parts = loop.segments.map((segment, i): PathPart => {
    const { kind, index } = atRound(sources, i);
    // The offset goes round the other way: its corner after a segment is the offered one before it.
    const touch = kind === "segment" ? atRound(touches, count - 1 - index) : cornerAfter(count - 2 - index);
    return { segment, touch };
  });
  return parts.reverse().map(({ segment, touch }) => ({ segment: reversedSegment(segment), touch }));
}

function offeredAlong({ segment, touch }: PathPart, aside: number): Offered {
  const { curve, from, to } = curveOf(segment, aside);
  return {
    curve,
    touch,
    from,
    to,
    alongFrom: alongOf(norm(segment.from), aside),
    alongTo: alongOf(norm(segment.to), aside),
    thetaFrom: -angleOf(segment.from),
  };
}

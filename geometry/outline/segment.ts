import type { Point } from "../language/design.ts";
import type { TextRange } from "../language/text.ts";

/** A straight piece of a loop. */
export interface LineSegment {
  readonly kind: "line";
  readonly from: Point;
  readonly to: Point;
  /** The step or corner treatment that made it. */
  readonly source: TextRange;
}

/**
 * A circular piece of a loop. `startRad` is the direction from the centre to `from`; `sweepRad` is signed, positive
 * counter-clockwise, and at most a full turn (a round hole is one arc of −2π with `from` = `to`).
 */
export interface ArcSegment {
  readonly kind: "arc";
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radiusMm: number;
  readonly startRad: number;
  readonly sweepRad: number;
  readonly source: TextRange;
}

export type Segment = LineSegment | ArcSegment;

/** Segments end to end, the last one ending where the first begins. */
export interface Loop {
  readonly segments: readonly Segment[];
  readonly source: TextRange;
}

export interface InnerLoop extends Loop {
  readonly kind: "bore" | "hole" | "slot" | "cutout";
}

/** A bar's exact shape: the outer loop counter-clockwise, the inner loops clockwise. */
export interface Outline {
  readonly outer: Loop;
  readonly inner: readonly InnerLoop[];
}

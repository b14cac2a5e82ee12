/**
 * A design: the file evaluated for one variant. Lengths are in mm, angles in rad, the rest as the names say. What
 * could not be evaluated is `null`; its problem has been reported.
 */
import type { Material } from "../materials/material.ts";
import type { Quantity } from "./quantity.ts";
import type { TextRange } from "./text.ts";
import type { SpinDirection, Turning } from "./tree.ts";

/** x to the right, y up, in mm; the spin axis is (0, 0). */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A value with the place it was written at, for problems and fixes. */
export interface Located<T> {
  readonly value: T;
  readonly range: TextRange;
  /** The unit written there (`mm`, `in`), so that a fix speaks the builder's unit; null when it is a computed value. */
  readonly unit: string | null;
}

export interface CornerDesign {
  readonly kind: "round" | "bevel";
  readonly sizeMm: Located<number>;
  readonly range: TextRange;
}

export type StepDesign =
  | {
      readonly kind: "from";
      readonly to: Point;
      readonly corner: CornerDesign | null;
      readonly range: TextRange;
    }
  | {
      readonly kind: "line";
      readonly to: Point;
      readonly corner: CornerDesign | null;
      readonly range: TextRange;
    }
  | {
      readonly kind: "arc";
      readonly to: Point;
      readonly shape: ArcDesign;
      readonly corner: CornerDesign | null;
      readonly range: TextRange;
    }
  | {
      readonly kind: "spiral";
      readonly to: Point;
      readonly turning: Turning;
      readonly corner: CornerDesign | null;
      readonly range: TextRange;
    }
  | { readonly kind: "close"; readonly corner: CornerDesign | null; readonly range: TextRange };

export type ArcDesign =
  | {
      readonly by: "radius";
      readonly radiusMm: Located<number>;
      readonly turning: Turning;
      readonly long: boolean;
    }
  | { readonly by: "through"; readonly through: Point }
  | {
      readonly by: "about";
      readonly centre: Point;
      readonly centreRange: TextRange;
      readonly turning: Turning;
    };

/** The steps of one loop, every point absolute. */
export interface PathDesign {
  readonly steps: readonly StepDesign[];
  readonly range: TextRange;
}

export type SymmetryDesign =
  | { readonly kind: "repeat"; readonly count: number; readonly range: TextRange }
  | { readonly kind: "mirror"; readonly axis: "x" | "y"; readonly range: TextRange };

export interface OutlineDesign {
  readonly symmetry: SymmetryDesign | null;
  readonly path: PathDesign;
  readonly range: TextRange;
}

export type HoleDesign =
  | { readonly kind: "bore"; readonly diameterMm: Located<number>; readonly range: TextRange }
  | {
      readonly kind: "hole";
      readonly centre: Point;
      readonly diameterMm: Located<number>;
      readonly range: TextRange;
    }
  | {
      readonly kind: "slot";
      readonly from: Point;
      readonly to: Point;
      readonly widthMm: Located<number>;
      readonly range: TextRange;
    }
  | { readonly kind: "cutout"; readonly path: PathDesign; readonly range: TextRange };

export interface Spin {
  /** Magnitude, always positive. */
  readonly radPerS: number;
  readonly rpm: number;
  readonly direction: SpinDirection;
}

export interface Approach {
  readonly fromMPerS: number;
  readonly toMPerS: number;
}

export type Target = {
  readonly kind: "edge" | "face" | "round";
  /** Radius of the rounded edge; 0 for the others. */
  readonly radiusMm: number;
  /** Offset of the line of approach from the spin axis. */
  readonly offsetMm: number;
};

/** A checked `require`: `limit` is in the unit of the figure's JSON key (see the figure catalogue). */
export interface Requirement {
  /** The word in the file, such as `tip_speed`. */
  readonly figure: string;
  readonly relation: "<=" | ">=";
  readonly limit: Quantity;
  /** The closing speed of `bite at …`. */
  readonly atMPerS: number | null;
  readonly limitRange: TextRange;
  readonly range: TextRange;
  /** Whether an event states it, whose rules and inspectors decide. */
  readonly isOfEvent?: true;
}

export interface LetValue {
  readonly name: string;
  readonly value: Quantity | null;
  readonly bounds: { readonly from: Quantity; readonly to: Quantity } | null;
  readonly nameRange: TextRange;
}

/** The lets that may be moved to balance the bar. */
export interface BalanceDesign {
  /** One or two names of lets. */
  readonly names: readonly string[];
  readonly range: TextRange;
}

/** What is to be the most or the least. */
export interface Goal {
  readonly sense: "most" | "least";
  /** The word in the file, such as `inertia`. */
  readonly figure: string;
  /** The closing speed of `bite at …`. */
  readonly atMPerS: number | null;
  readonly range: TextRange;
}

/** What the bar is to become, within which limits, and the lets that may be moved for it. */
export interface AimDesign {
  /** One goal, or two to be traded off against each other. */
  readonly goals: readonly Goal[];
  /** Limits beside the requirements of the file. */
  readonly keeping: readonly Requirement[];
  /** Names of lets, each once. */
  readonly names: readonly string[];
  readonly range: TextRange;
}

/** Something that the robot is made of. */
export interface BudgetPart {
  readonly name: string;
  /** Of one of them. */
  readonly massKg: number;
  readonly count: number;
  /** Whether the robot can do without it. */
  readonly isSpare: boolean;
  readonly range: TextRange;
}

/** What the robot may weigh, and what is in it beside the bar. */
export interface BudgetDesign {
  readonly limitKg: Located<number> | null;
  readonly scaleKg: Located<number> | null;
  readonly parts: readonly BudgetPart[];
  /** False where a part is wrong and was left out: then nothing adds up. */
  readonly isWhole: boolean;
  readonly keyword: TextRange;
  readonly range: TextRange;
}

/** The limits that an event states. */
export interface EventDesign {
  readonly limits: readonly Requirement[];
  /** From full spin to standstill, timed. */
  readonly measuredSpinDownS: number | null;
  readonly range: TextRange;
}

/** The robot that carries the bar upright; null for what is not said, or wrong. Lengths from its centre of mass are level. */
export interface RobotDesign {
  /** The bar included. */
  readonly massKg: Located<number> | null;
  readonly trackMm: Located<number> | null;
  readonly centreHeightMm: Located<number> | null;
  readonly invertedCentreHeightMm: Located<number> | null;
  readonly axleAheadMm: Located<number> | null;
  readonly axleHeightMm: Located<number> | null;
  readonly lengthMm: Located<number> | null;
  readonly heightMm: Located<number> | null;
  /** Without the bar. */
  readonly pitchInertiaKgM2: Located<number> | null;
  readonly rearWheelsMm: Located<number> | null;
  readonly frontWheelsMm: Located<number> | null;
  /** Which way the bar's front edge moves. */
  readonly edge: "up" | "down" | null;
  readonly groundMPerS: Located<number> | null;
  readonly spinUpS: Located<number> | null;
  readonly bolts: Located<number> | null;
  /** Settings that figures need and that are not there. */
  readonly unsaid: readonly string[];
  readonly keyword: TextRange;
  readonly range: TextRange;
}

/** What the bar strikes; null for what is not said, or wrong. */
export interface OpponentDesign {
  readonly massKg: Located<number> | null;
  readonly restitution: Located<number> | null;
  /** False where nothing is said. */
  readonly isBraced: boolean | null;
  /** 0 where nothing is said. */
  readonly closingMPerS: number | null;
  readonly struckAtMm: Located<number> | null;
  /** Whether no height is said: level with the axle. */
  readonly isStruckLevel: boolean;
  readonly contactTimeMs: Located<number> | null;
  /** Settings that figures need and that are not there. */
  readonly unsaid: readonly string[];
  readonly keyword: TextRange;
  readonly range: TextRange;
}

/** The blocks of a file; null for those that it has not. */
export interface BlockDesigns {
  readonly robot: RobotDesign | null;
  readonly opponent: OpponentDesign | null;
  readonly budget: BudgetDesign | null;
  readonly event: EventDesign | null;
}

export interface Design extends BlockDesigns {
  readonly name: string | null;
  readonly variant: string | null;
  readonly thicknessMm: Located<number> | null;
  readonly material: Material | null;
  /** From the material, or overridden. */
  readonly densityKgPerM3: number | null;
  readonly yieldMPa: number | null;
  readonly outline: OutlineDesign | null;
  /** Bore first, rings spelled out as single holes; those that could not be evaluated are left out. */
  readonly holes: readonly HoleDesign[];
  readonly spin: Spin | null;
  readonly approach: Approach | null;
  readonly target: Target;
  readonly requirements: readonly Requirement[];
  readonly balance: BalanceDesign | null;
  readonly aim: AimDesign | null;
  readonly lets: readonly LetValue[];
}

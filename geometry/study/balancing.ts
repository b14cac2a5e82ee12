/** What is asked for, tried and answered when a bar is balanced by its lets. */
import type { Analysis } from "../analysis/analyse.ts";
import type { Source } from "../analysis/source.ts";
import { figureValue } from "../figures/catalogue.ts";
import { number } from "../figures/present.ts";
import type { Settings } from "../figures/settings.ts";
import type { TextEdit } from "../language/text.ts";
import type { MovableLet, NotMovable } from "./movable-let.ts";
import type { NeededBalance } from "./needed-balance.ts";

export interface BalanceRequest {
  /** One or two lets that may be moved. */
  readonly names: readonly string[];
  /** The variant to balance; `null` for the bar as it stands. What it overrides is changed in it alone. */
  readonly variant?: string | null;
  readonly settings?: Partial<Settings>;
}

/** How well a bar is balanced; unknown is `null`. */
export interface BalanceState {
  readonly eccentricityMm: number;
  readonly imbalanceGMm: number | null;
  /** e·ω in mm/s. */
  readonly balanceGrade: number | null;
}

/** A let with the value it gets, both as they are written. */
export interface LetMove {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** `null` where it stays as it is. */
  readonly edit: TextEdit | null;
}

/** A change of the file and what it comes to. */
export interface Balancing {
  /** In text order; none where the bar is balanced already. */
  readonly edits: readonly TextEdit[];
  /** One for each name asked for, moved or not. */
  readonly moves: readonly LetMove[];
  readonly after: BalanceState;
  /** The file with the edits made, worked out for the variant. */
  readonly analysis: Analysis;
}

export type WhyNot =
  | NotMovable["reason"]
  | "wrong-count"
  | "file-has-errors"
  | "no-effect"
  | "out-of-reach"
  | "new-problems";

export type BalanceBy =
  | ({ readonly solved: true; readonly before: BalanceState } & Balancing)
  | {
      readonly solved: false;
      readonly reason: WhyNot;
      /** A sentence or two for people. */
      readonly message: string;
      /** `null` where the file was not looked at that far. */
      readonly before: BalanceState | null;
      /** The nearest that was reached, not to be written into the file unseen; `null` where nothing was. */
      readonly nearest: Balancing | null;
    };

/** A request looked up: what the search needs to know. */
export interface Task {
  readonly source: Source;
  readonly variant: string | null;
  readonly settings: Partial<Settings>;
  /** The file as it is, each variant. */
  readonly all: readonly Analysis[];
  readonly start: Analysis;
  readonly before: BalanceState;
  readonly lets: readonly MovableLet[];
  readonly needed: NeededBalance;
}

export function stateOf({ assessment }: Analysis): BalanceState | null {
  const { section, mass } = assessment;
  if (!section?.centroidMm) return null;
  const grade = figureValue("balanceGrade", assessment);
  return {
    eccentricityMm: Math.hypot(section.centroidMm.x, section.centroidMm.y),
    imbalanceGMm: mass?.imbalanceGMm ?? null,
    balanceGrade: typeof grade === "number" ? grade : null,
  };
}

/** How well balanced, as a builder would say it. */
export function told({ balanceGrade, eccentricityMm }: BalanceState): string {
  return balanceGrade === null
    ? `${number(eccentricityMm, 3)} mm off the axis`
    : `G${number(balanceGrade, 3)}`;
}

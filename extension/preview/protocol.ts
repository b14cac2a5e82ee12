/**
 * What the host of the editor and the preview page say to each other: plain data, one union a direction. Both sides
 * import this file and check what they receive with `messages.ts`; neither trusts the other's bytes.
 */
import type { UnitSystem } from "../../geometry/figures/present.ts";
import type { ReportSummary } from "../../geometry/files/report.ts";
import type { Target } from "../../geometry/language/design.ts";
import type { Severity } from "../../geometry/language/problem.ts";
import type { TextRange } from "../../geometry/language/text.ts";
import type { SpinDirection } from "../../geometry/language/tree.ts";

export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/** One line or arc to draw, in mm, y up; `source` is what made it, for clicks and highlights. */
export type DrawnSegment =
  | { readonly kind: "line"; readonly from: PlanePoint; readonly to: PlanePoint; readonly source: TextRange }
  | {
      readonly kind: "arc";
      readonly from: PlanePoint;
      readonly to: PlanePoint;
      readonly centre: PlanePoint;
      readonly radiusMm: number;
      readonly startRad: number;
      readonly sweepRad: number;
      readonly source: TextRange;
    };

export interface DrawnLoop {
  readonly kind: "outer" | "bore" | "hole" | "slot" | "cutout";
  readonly segments: readonly DrawnSegment[];
}

/** A point of the text that may be dragged: its place and the step that names it. */
export interface Handle {
  readonly id: number;
  readonly at: PlanePoint;
  /** The point as written; moving the cursor there highlights the handle. */
  readonly source: TextRange;
  /** False where x or y cannot be changed by dragging (an expression, not a number or a plain let). */
  readonly movesX: boolean;
  readonly movesY: boolean;
}

export interface Drawing {
  readonly loops: readonly DrawnLoop[];
  readonly boundsMm: readonly [number, number, number, number];
  readonly maxRadiusMm: number;
  readonly centroid: PlanePoint | null;
  /** Direction of the heavy side; null for a balanced bar. */
  readonly imbalanceDeg: number | null;
  /** Whether the bar is within its balance grade, so that the heavy-side arrow can be calm; null if not known. */
  readonly balanced: boolean | null;
  /** Whether it is balanced so well that balancing it by lets would change nothing: there is no heavy side to show. */
  readonly finelyBalanced: boolean;
  /** Imbalance against what the grade permits: 1 is just at the limit; null if not known. */
  readonly imbalanceShare: number | null;
  /** The points at the largest radius, where the bar meets its tip circle; at most a few. */
  readonly tips: readonly PlanePoint[];
  readonly direction: "ccw" | "cw" | null;
  readonly handles: readonly Handle[];
}

/** A drawing without its points: they are for dragging, which needs the whole view of a text. */
export type AheadDrawing = Omit<Drawing, "handles">;

/** Another variant, drawn behind. */
export interface Ghost {
  readonly variant: string | null;
  readonly loops: readonly DrawnLoop[];
}

/** The bite at one closing speed, over all starting phases. */
export interface BitePoint {
  readonly closingMPerS: number;
  readonly maxMm: number;
  readonly meanMm: number;
  /** Eight strikes in ten go from this deep … */
  readonly tenthMm: number;
  /** … to this deep. */
  readonly ninetiethMm: number;
  readonly squareShare: number;
  readonly toothShare: number;
  /** Share of phases in which the target passes and meets nothing. */
  readonly passedShare: number;
  readonly idealMm: number | null;
}

/**
 * The bite of the drawn bar. What strikes, and each single approach, the page works out itself from the outline that is
 * drawn: the same core, the same numbers, and no thousand strikes on the way.
 */
export interface ShownBite {
  readonly target: Target;
  readonly direction: SpinDirection;
  readonly radPerS: number;
  /** Strikes up to this angle are square. */
  readonly squareStrikeRad: number;
  readonly curve: readonly BitePoint[];
  /** Up to here only square faces of teeth strike: 0 for at no speed, null for at any. */
  readonly cleanMPerS: number | null;
  /** Up to here only teeth strike, square or not; told as the clean speed is. */
  readonly teethOnlyMPerS: number | null;
}

export interface ShownProblem {
  readonly severity: Severity;
  readonly code: string;
  readonly message: string;
  readonly line: number;
  readonly source: TextRange;
  /** Where on the drawing it is, if it is anywhere. */
  readonly at: PlanePoint | null;
}

/** Everything one state of the text shows. */
export interface View {
  /**
   * Version of the document this was made from; a page drops older ones. It never falls while a page lives: where the
   * editor starts counting anew (a document closed and opened again), the host adds what was reached before.
   */
  readonly version: number;
  /** Address of the document, which the page keeps in its state so that the panel can be brought back. */
  readonly documentUri: string;
  readonly fileName: string;
  readonly variant: string | null;
  readonly variants: readonly string[];
  /** True while the text is broken and the drawing is the last good one. */
  readonly stale: boolean;
  readonly drawing: Drawing | null;
  /** The drawing in words, for those who do not see it, in both systems of units; null where nothing is drawn. */
  readonly description: Readonly<Record<UnitSystem, string>> | null;
  readonly ghosts: readonly Ghost[];
  /** The same report in both systems of units, so that switching needs no round trip. */
  readonly reports: Readonly<Record<UnitSystem, ReportSummary>>;
  readonly bite: ShownBite | null;
  readonly problems: readonly ShownProblem[];
  readonly cautions: readonly string[];
}

/** What the page keeps of itself between reloads; the host reads `documentUri` to bring a panel back. */
export interface SavedState {
  readonly documentUri: string | null;
  readonly variant: string | null;
  readonly units: UnitSystem | null;
  /** The units that the host asked for last, to tell a changed setting from the reader's own choice. */
  readonly hostUnits: UnitSystem | null;
  /** What the drawing shows: its middle in mm and its scale; null before the first drawing. */
  readonly viewport: {
    readonly centre: PlanePoint;
    readonly pxPerMm: number;
    readonly fitted: boolean;
  } | null;
  readonly toggles: Readonly<Record<ToggleName, boolean>>;
  /** Names of the sections that stand open. */
  readonly openSections: readonly string[];
}

export type ToggleName = "dimensions" | "variants" | "points" | "strikes" | "explanations";

/** From the host to the page. */
export type HostMessage =
  | { readonly type: "view"; readonly view: View; readonly units: UnitSystem }
  /** The drawing of a view that is on its way: figures and bite take longer to work out, and the eye is on the drawing. */
  | ({ readonly type: "drawing"; readonly drawing: AheadDrawing } & Pick<
      View,
      "version" | "documentUri" | "variant"
    >)
  /** The cursor stands in this part of the text (or nowhere). */
  | { readonly type: "highlight"; readonly source: TextRange | null }
  /** A request could not be done; the page puts back what it showed. */
  | { readonly type: "failed"; readonly request: number; readonly message: string };

/** From the page to the host. */
export type PageMessage =
  /** The page is there (again) and wants the view. */
  | { readonly type: "ready" }
  /** Show this part of the text. */
  | { readonly type: "reveal"; readonly source: TextRange }
  | { readonly type: "chooseVariant"; readonly variant: string | null }
  | { readonly type: "chooseUnits"; readonly units: UnitSystem }
  /** A handle was dropped at a place; `version` is the view's that was dragged. */
  | {
      readonly type: "movePoint";
      readonly request: number;
      readonly version: number;
      readonly handle: number;
      readonly to: PlanePoint;
    }
  | { readonly type: "exportCutFile" }
  | { readonly type: "showCautions" };

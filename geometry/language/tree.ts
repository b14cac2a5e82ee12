/**
 * The syntax tree: what the text says, before anything is computed. Every node carries its exact range. A part that
 * the text lacks is `null` (its problem has been reported); nothing here throws or evaluates.
 */
import type { TextRange } from "./text.ts";
import type { BlockWord } from "./vocabulary.ts";

interface Node {
  readonly range: TextRange;
}

/** A word used as a name: of a let, a material, a figure. */
export interface Identifier extends Node {
  readonly name: string;
}

// Expressions ------------------------------------------------------------------------------------------------------

/** A unit as written, such as `kg/m^3`: factors multiplied, each with its whole exponent. */
export interface UnitExpression extends Node {
  readonly text: string;
  readonly factors: readonly UnitFactor[];
}
export interface UnitFactor extends Node {
  readonly name: string;
  readonly exponent: number;
}

export type Expression =
  | NumberLiteral
  | NameReference
  | UnaryExpression
  | BinaryExpression
  | CallExpression
  | GroupExpression;
export interface NumberLiteral extends Node {
  readonly kind: "number";
  readonly value: number;
  readonly unit: UnitExpression | null;
}
export interface NameReference extends Node {
  readonly kind: "name";
  readonly name: string;
}
export interface UnaryExpression extends Node {
  readonly kind: "unary";
  readonly operator: "+" | "-";
  readonly operand: Expression;
}
export interface BinaryExpression extends Node {
  readonly kind: "binary";
  readonly operator: "+" | "-" | "*" | "/" | "^";
  readonly left: Expression;
  readonly right: Expression;
}
export interface CallExpression extends Node {
  readonly kind: "call";
  readonly callee: Identifier;
  readonly args: readonly Expression[];
}
/** Parentheses, optionally with a unit behind them: `(1/4) in`. */
export interface GroupExpression extends Node {
  readonly kind: "group";
  readonly inner: Expression;
  readonly unit: UnitExpression | null;
}

// Points and steps -------------------------------------------------------------------------------------------------

/** `(x, y)`, `(r @ angle)` or `by (dx, dy)`. */
export interface PointExpression extends Node {
  readonly kind: "cartesian" | "polar" | "relative";
  /** x, radius or dx. */
  readonly first: Expression | null;
  /** y, angle or dy. */
  readonly second: Expression | null;
}

export type Turning = "left" | "right";

/** `round r` or `bevel d` behind a step: treats the corner at the step's end. */
export interface CornerTreatment extends Node {
  readonly kind: "round" | "bevel";
  readonly size: Expression | null;
}

export type Step = FromStep | LineStep | ArcStep | SpiralStep | CloseStep;
interface StepNode extends Node {
  readonly keyword: TextRange;
  readonly corner: CornerTreatment | null;
}
export interface FromStep extends StepNode {
  readonly kind: "from";
  readonly to: PointExpression | null;
}
export interface LineStep extends StepNode {
  readonly kind: "line";
  readonly to: PointExpression | null;
}
export interface ArcStep extends StepNode {
  readonly kind: "arc";
  readonly to: PointExpression | null;
  readonly shape: ArcShape | null;
}
export type ArcShape =
  | {
      readonly by: "radius";
      readonly radius: Expression | null;
      readonly turning: Turning | null;
      readonly long: boolean;
    }
  | { readonly by: "through"; readonly through: PointExpression | null }
  | { readonly by: "about"; readonly centre: PointExpression | null; readonly turning: Turning | null };
export interface SpiralStep extends StepNode {
  readonly kind: "spiral";
  readonly to: PointExpression | null;
  readonly turning: Turning | null;
}
export interface CloseStep extends StepNode {
  readonly kind: "close";
}

/** `{ from … line … close }`. `body` is the range between the braces, braces included. */
export interface Path extends Node {
  readonly steps: readonly Step[];
}

// Statements -------------------------------------------------------------------------------------------------------

export type Statement =
  | BarStatement
  | QuantityStatement
  | MaterialStatement
  | LetStatement
  | OutlineStatement
  | HoleStatement
  | HoleRingStatement
  | SlotStatement
  | CutoutStatement
  | SpinStatement
  | ApproachStatement
  | TargetStatement
  | RequireStatement
  | BalanceStatement
  | AimStatement
  | BlockStatement
  | VariantStatement
  | OverrideStatement;
export type StatementKind = Statement["kind"];

interface StatementNode extends Node {
  readonly keyword: TextRange;
}
export interface BarStatement extends StatementNode {
  readonly kind: "bar";
  readonly name: string | null;
  readonly nameRange: TextRange;
}
/** `thickness`, `density`, `yield` and `bore` take one value. */
export interface QuantityStatement extends StatementNode {
  readonly kind: "thickness" | "density" | "yield" | "bore";
  readonly value: Expression | null;
}
export interface MaterialStatement extends StatementNode {
  readonly kind: "material";
  readonly name: Identifier | null;
}
export interface LetStatement extends StatementNode {
  readonly kind: "let";
  readonly name: Identifier | null;
  readonly value: Expression | null;
  readonly bounds: { readonly from: Expression; readonly to: Expression } | null;
}
export type Symmetry =
  | { readonly kind: "repeat"; readonly count: Expression | null; readonly range: TextRange }
  | { readonly kind: "mirror"; readonly axis: "x" | "y" | null; readonly range: TextRange };
export interface OutlineStatement extends StatementNode {
  readonly kind: "outline";
  readonly symmetry: Symmetry | null;
  readonly path: Path | null;
}
/** `hole P diameter D`. */
export interface HoleStatement extends StatementNode {
  readonly kind: "hole";
  readonly at: PointExpression | null;
  readonly diameter: Expression | null;
}
/** `hole ring N at radius R diameter D [from ANGLE]`. */
export interface HoleRingStatement extends StatementNode {
  readonly kind: "hole-ring";
  readonly count: Expression | null;
  readonly radius: Expression | null;
  readonly diameter: Expression | null;
  readonly startAngle: Expression | null;
}
/** `slot P to Q width W`: the axis runs from P to Q, the ends are round. */
export interface SlotStatement extends StatementNode {
  readonly kind: "slot";
  readonly from: PointExpression | null;
  readonly to: PointExpression | null;
  readonly width: Expression | null;
}
export interface CutoutStatement extends StatementNode {
  readonly kind: "cutout";
  readonly path: Path | null;
}
export type SpinDirection = "ccw" | "cw";
export interface SpinStatement extends StatementNode {
  readonly kind: "spin";
  readonly speed: Expression | null;
  readonly direction: SpinDirection | null;
}
export interface ApproachStatement extends StatementNode {
  readonly kind: "approach";
  readonly from: Expression | null;
  readonly to: Expression | null;
}
export interface TargetStatement extends StatementNode {
  readonly kind: "target";
  readonly shape: "edge" | "face" | "round" | null;
  readonly radius: Expression | null;
  readonly offset: Expression | null;
}
/** `FIGURE <=|>= VALUE`; `at` is the closing speed of `bite at 3 m/s`. */
export interface FigureLimit extends Node {
  readonly figure: Identifier | null;
  readonly at: Expression | null;
  readonly relation: "<=" | ">=" | null;
  readonly limit: Expression | GradeLiteral | null;
}
/** `require FIGURE <=|>= VALUE`. */
export interface RequireStatement extends StatementNode, FigureLimit {
  readonly kind: "require";
}
/** `G40`, `G6.3`: a balance grade, in mm/s. */
export interface GradeLiteral extends Node {
  readonly kind: "grade";
  readonly value: number;
}
/** `balance by NAME[, NAME]`: the lets that may be moved to balance the bar. */
export interface BalanceStatement extends StatementNode {
  readonly kind: "balance";
  readonly names: readonly NameReference[];
}
/** `aim GOAL [and GOAL] [keeping LIMIT, …] by NAME, …`: what the bar is to become, and the lets that may be moved for it. */
export interface AimStatement extends StatementNode {
  readonly kind: "aim";
  readonly goals: readonly AimGoal[];
  readonly limits: readonly FigureLimit[];
  readonly names: readonly NameReference[];
}
/** `most FIGURE` or `least FIGURE`; `at` is the closing speed of `most bite at 4 m/s`. */
export interface AimGoal extends Node {
  readonly sense: "most" | "least";
  readonly figure: Identifier | null;
  readonly at: Expression | null;
}
/** `budget { limit 6 kg … }`: settings about what is around the bar, by the table of the block. */
export interface BlockStatement extends StatementNode {
  readonly kind: BlockWord;
  readonly body: readonly BlockItem[];
}
export type BlockItem = SettingItem | LimitItem;
/** A setting of a block, such as `part "wheel" 120 g count 4`. */
export interface SettingItem extends Node {
  readonly kind: "setting";
  readonly keyword: TextRange;
  readonly word: string;
  /** What stands there of its fields. */
  readonly parts: readonly SettingPart[];
}
export interface SettingPart extends Node {
  /** The name of its field in the table. */
  readonly name: string;
  /** The word before it, such as `count`. */
  readonly lead: TextRange | null;
  readonly value: Expression | null;
  /** A name in quotation marks, or the chosen one of several words. */
  readonly text: Identifier | null;
}
/** `mass <= 1.5 kg` in a block. */
export interface LimitItem extends FigureLimit {
  readonly kind: "limit";
}
export interface VariantStatement extends StatementNode {
  readonly kind: "variant";
  readonly name: string | null;
  readonly nameRange: TextRange;
  readonly body: readonly Statement[];
}
/** `tail = 110 mm` inside a variant. */
export interface OverrideStatement extends StatementNode {
  readonly kind: "override";
  readonly name: Identifier;
  readonly value: Expression | null;
}

/** A whole file. */
export interface SyntaxTree {
  readonly text: string;
  readonly statements: readonly Statement[];
}

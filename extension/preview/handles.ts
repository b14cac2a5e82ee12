/**
 * The points of a text that may be dragged: where each one lies, and which numbers of the text a drag would rewrite.
 */
import type { Analysis } from "../../geometry/analysis/analyse.ts";
import type { PathDesign, Point, StepDesign } from "../../geometry/language/design.ts";
import type { TextRange } from "../../geometry/language/text.ts";
import type {
  Expression,
  NumberLiteral,
  Path,
  PointExpression,
  Statement,
  Step,
  SyntaxTree,
} from "../../geometry/language/tree.ts";
import type { Handle } from "./protocol.ts";

/** A number of the text that stands alone behind a coordinate, by itself or as the value of a plain let. */
export interface MovableNumber {
  readonly literal: NumberLiteral;
  /** −1 where the coordinate is the number's negative. */
  readonly sign: 1 | -1;
}

export interface DraggablePoint {
  readonly handle: Handle;
  readonly point: PointExpression;
  /** What a relative point is counted from: the end of the step before. */
  readonly base: Point | null;
  /** Behind x, dx or the radius; behind y, dy or the angle. `null` for an expression that is computed. */
  readonly first: MovableNumber | null;
  readonly second: MovableNumber | null;
}

/** The draggable points of an analysis, in text order; a point that could not be evaluated is left out. */
export function draggablePoints(analysis: Analysis): DraggablePoint[] {
  const { design, source, variant } = analysis;
  return source.tree.statements
    .flatMap((statement) => placesOf(statement, design.holes, design.outline?.path ?? null))
    .filter(({ at }) => Number.isFinite(at.x) && Number.isFinite(at.y))
    .map((place, id) => draggable(place, id, source.tree, variant));
}

/** A point of the text with its place in the plane. */
interface Place {
  readonly point: PointExpression;
  readonly at: Point;
  readonly base: Point | null;
}

function draggable(
  { point, at, base }: Place,
  id: number,
  tree: SyntaxTree,
  variant: string | null,
): DraggablePoint {
  const first = point.first && numberBehind(point.first, tree, variant);
  const behindSecond = point.second && numberBehind(point.second, tree, variant);
  // One number cannot follow two coordinates: `(half, half)` moves along x, and y goes with it.
  const second = behindSecond?.literal === first?.literal ? null : behindSecond;
  const both = first !== null && second !== null;
  const moves = point.kind === "polar" ? [both, both] : [first !== null, second !== null];
  const [movesX = false, movesY = false] = moves;
  const handle = { id, at: { x: at.x, y: at.y }, source: point.range, movesX, movesY };
  return { handle, point, base, first, second };
}

// Where the points lie ---------------------------------------------------------------------------------------------

function placesOf(
  statement: Statement,
  holes: Analysis["design"]["holes"],
  outline: PathDesign | null,
): Place[] {
  if (statement.kind === "outline") return pathPlaces(statement.path, outline);
  const hole = holes.find(({ range }) => sameRange(range, statement.range));
  if (!hole) return [];
  if (statement.kind === "hole" && hole.kind === "hole") return placed(statement.at, hole.centre, null);
  if (statement.kind === "slot" && hole.kind === "slot")
    return [...placed(statement.from, hole.from, null), ...placed(statement.to, hole.to, hole.from)];
  if (statement.kind === "cutout" && hole.kind === "cutout") return pathPlaces(statement.path, hole.path);
  return [];
}

function pathPlaces(path: Path | null, design: PathDesign | null): Place[] {
  if (!path || !design) return [];
  let last: Point | null = null;
  return design.steps.flatMap((stepDesign) => {
    const step = path.steps.find(({ range }) => sameRange(range, stepDesign.range));
    const places: Place[] = step ? stepPlaces(step, stepDesign, last) : [];
    if (stepDesign.kind !== "close") last = stepDesign.to;
    return places;
  });
}

function stepPlaces(step: Step, design: StepDesign, base: Point | null): Place[] {
  if (step.kind === "close" || design.kind === "close") return [];
  const end = placed(step.to, design.to, base);
  if (step.kind !== "arc" || design.kind !== "arc") return end;
  if (step.shape?.by === "through" && design.shape.by === "through")
    return [...end, ...placed(step.shape.through, design.shape.through, base)];
  if (step.shape?.by === "about" && design.shape.by === "about")
    return [...end, ...placed(step.shape.centre, design.shape.centre, base)];
  return end;
}

function placed(point: PointExpression | null, at: Point, base: Point | null): Place[] {
  return point ? [{ point, at, base: point.kind === "relative" ? base : null }] : [];
}

function sameRange(a: TextRange, b: TextRange): boolean {
  return a.start === b.start && a.end === b.end;
}

// Which numbers they hang on ---------------------------------------------------------------------------------------

/** The number behind an expression: a literal, a let that is one, or the negative of either. */
function numberBehind(
  expression: Expression,
  tree: SyntaxTree,
  variant: string | null,
): MovableNumber | null {
  if (expression.kind !== "name") return literalOf(expression, (inner) => numberBehind(inner, tree, variant));
  const value = letValue(expression.name, tree, variant);
  return value && literalOf(value, (inner) => literalOf(inner, () => null));
}

/** A number by itself or with a sign; what stands behind the sign is asked of `inside`. */
function literalOf(
  expression: Expression,
  inside: (operand: Expression) => MovableNumber | null,
): MovableNumber | null {
  if (expression.kind === "number") return { literal: expression, sign: 1 };
  if (expression.kind !== "unary") return null;
  const behind = inside(expression.operand);
  return behind && { ...behind, sign: expression.operator === "-" ? flipped(behind.sign) : behind.sign };
}

function flipped(sign: 1 | -1): 1 | -1 {
  return sign === 1 ? -1 : 1;
}

/** The expression a name stands for in a variant: the variant's override, else the let. */
function letValue(name: string, tree: SyntaxTree, variant: string | null): Expression | null {
  const overrides = tree.statements.flatMap((statement) =>
    statement.kind === "variant" && statement.name === variant && variant !== null ? statement.body : [],
  );
  for (const statement of [...overrides, ...tree.statements]) {
    if (statement.kind !== "override" && statement.kind !== "let") continue;
    if (statement.name?.name === name) return statement.value;
  }
  return null;
}

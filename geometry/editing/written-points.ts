/** The points that a text names, with where they lie. */
import type { Analysis } from "../analysis/analyse.ts";
import type { HoleDesign, PathDesign, Point, StepDesign } from "../language/design.ts";
import type { Path, PointExpression, Statement, Step } from "../language/tree.ts";

export interface WrittenPoint {
  readonly point: PointExpression;
  /** Where it lies, in mm. */
  readonly at: Point;
  /** The point that `by` counts from; null where there is none. */
  readonly before: WrittenPoint | null;
}

/** Every point of an analysis that could be evaluated, in text order. */
export function writtenPoints({ source, design }: Analysis): readonly WrittenPoint[] {
  return source.tree.statements.flatMap((statement) => pointsOf(statement, design));
}

function pointsOf(statement: Statement, { outline, holes }: Analysis["design"]): readonly WrittenPoint[] {
  switch (statement.kind) {
    case "outline":
      return isOf(outline, statement) ? pathPoints(statement.path, outline.path) : [];
    case "cutout": {
      const hole = holes.find((candidate) => isOf(candidate, statement));
      return hole?.kind === "cutout" ? pathPoints(statement.path, hole.path) : [];
    }
    case "hole": {
      const hole = holes.find((candidate) => isOf(candidate, statement));
      return hole?.kind === "hole" ? written(statement.at, hole.centre, null) : [];
    }
    case "slot":
      return slotPoints(
        statement,
        holes.find((candidate) => isOf(candidate, statement)),
      );
    default:
      return [];
  }
}

/** A second outline is not evaluated; ranges tell which statement a design was made of. */
function isOf<T extends { readonly range: Statement["range"] }>(
  design: T | null,
  { range }: Statement,
): design is T {
  return design !== null && design.range.start === range.start && design.range.end === range.end;
}

function slotPoints(
  statement: Extract<Statement, { kind: "slot" }>,
  hole: HoleDesign | undefined,
): readonly WrittenPoint[] {
  if (hole?.kind !== "slot") return [];
  const from = written(statement.from, hole.from, null);
  return [...from, ...written(statement.to, hole.to, from[0] ?? null)];
}

/** A path is evaluated whole or not at all, so its steps and those of its design pair up. */
function pathPoints(path: Path | null, { steps }: PathDesign): readonly WrittenPoint[] {
  const points: WrittenPoint[] = [];
  let first: WrittenPoint | null = null;
  let last: WrittenPoint | null = null;
  for (const [index, step] of (path?.steps ?? []).entries()) {
    const design = steps[index];
    if (design === undefined) break;
    const own = stepPoints(step, design, last);
    points.push(...own);
    first ??= own[0] ?? null;
    last = step.kind === "close" ? first : (own[0] ?? null);
  }
  return points;
}

/** The point that a step ends at comes first, the one that shapes an arc behind it. */
function stepPoints(step: Step, design: StepDesign, before: WrittenPoint | null): readonly WrittenPoint[] {
  if (step.kind === "close" || design.kind === "close") return [];
  const end = written(step.to, design.to, before);
  if (step.kind !== "arc" || design.kind !== "arc") return end;
  const { shape } = step;
  if (shape?.by === "through" && design.shape.by === "through") {
    return [...end, ...written(shape.through, design.shape.through, before)];
  }
  if (shape?.by === "about" && design.shape.by === "about") {
    return [...end, ...written(shape.centre, design.shape.centre, before)];
  }
  return end;
}

function written(
  point: PointExpression | null,
  at: Point,
  before: WrittenPoint | null,
): readonly WrittenPoint[] {
  const isThere = point !== null && Number.isFinite(at.x) && Number.isFinite(at.y);
  return isThere ? [{ point, at, before: point.kind === "relative" ? before : null }] : [];
}

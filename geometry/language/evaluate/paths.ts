/** Loops: every step with its points made absolute. */
import type {
  ArcDesign,
  CornerDesign,
  OutlineDesign,
  PathDesign,
  Point,
  StepDesign,
  SymmetryDesign,
} from "../design.ts";
import type { ArcShape, CornerTreatment, OutlineStatement, Path, Step, Symmetry } from "../tree.ts";
import { evaluatePoint, type LastPoint } from "./points.ts";
import { type Scope, size, wholeNumber } from "./values.ts";

/** More copies than this are no bar; it is also the most holes of a ring. */
export const MOST_COPIES = 360;

/** The outline, or null where any part of it has a problem: half a loop would only bring more problems. */
export function evaluateOutline(scope: Scope, statement: OutlineStatement): OutlineDesign | null {
  const symmetry = evaluateSymmetry(scope, statement.symmetry);
  const path = evaluatePath(scope, statement.path);
  if (path === null || symmetry === undefined) return null;
  return { symmetry, path, range: statement.range };
}

/** `undefined` where the symmetry has a problem, null where there is none. */
function evaluateSymmetry(scope: Scope, symmetry: Symmetry | null): SymmetryDesign | null | undefined {
  if (symmetry === null) return null;
  const { range } = symmetry;
  if (symmetry.kind === "mirror") {
    return symmetry.axis === null ? undefined : { kind: "mirror", axis: symmetry.axis, range };
  }
  const count = wholeNumber(scope, symmetry.count, "The number of repeats", 2, MOST_COPIES);
  return count === null ? undefined : { kind: "repeat", count, range };
}

/** A loop, or null where a step has a problem. All steps are evaluated, so that every mistake is told. */
export function evaluatePath(scope: Scope, path: Path | null): PathDesign | null {
  if (path === null) return null;
  const steps: StepDesign[] = [];
  let first: LastPoint;
  let last: LastPoint;
  for (const step of path.steps) {
    const design = evaluateStep(scope, step, last);
    if (design !== null) steps.push(design);
    last = step.kind === "close" ? (first ?? null) : endOf(design);
    if (first === undefined) first = last;
  }
  return steps.length === path.steps.length ? { steps, range: path.range } : null;
}

function endOf(step: StepDesign | null): Point | null {
  return step === null || step.kind === "close" ? null : step.to;
}

function evaluateStep(scope: Scope, step: Step, last: LastPoint): StepDesign | null {
  const to = step.kind === "close" ? null : evaluatePoint(scope, step.to, last);
  const shape = step.kind === "arc" ? evaluateArc(scope, step.shape, last) : null;
  const corner = evaluateCorner(scope, step.corner);
  if (corner === undefined) return null;
  const { range } = step;
  if (step.kind === "close") return { kind: "close", corner, range };
  if (to === null) return null;
  switch (step.kind) {
    case "from":
      return { kind: "from", to, corner, range };
    case "line":
      return { kind: "line", to, corner, range };
    case "arc":
      return shape === null ? null : { kind: "arc", to, shape, corner, range };
    case "spiral":
      return step.turning === null ? null : { kind: "spiral", to, turning: step.turning, corner, range };
  }
}

function evaluateArc(scope: Scope, shape: ArcShape | null, last: LastPoint): ArcDesign | null {
  switch (shape?.by) {
    case undefined:
      return null;
    case "radius": {
      const { turning, long } = shape;
      const radiusMm = size(scope, shape.radius, "The radius");
      return radiusMm === null || turning === null ? null : { by: "radius", radiusMm, turning, long };
    }
    case "through": {
      const through = evaluatePoint(scope, shape.through, last);
      return through === null ? null : { by: "through", through };
    }
    case "about": {
      const centre = evaluatePoint(scope, shape.centre, last);
      const { turning } = shape;
      if (centre === null || shape.centre === null || turning === null) return null;
      return { by: "about", centre, centreRange: shape.centre.range, turning };
    }
  }
}

/** `undefined` where the treatment has a problem, null where there is none. */
function evaluateCorner(scope: Scope, corner: CornerTreatment | null): CornerDesign | null | undefined {
  if (corner === null) return null;
  const what = corner.kind === "round" ? "The radius of the corner" : "The size of the bevel";
  const sizeMm = size(scope, corner.size, what);
  return sizeMm === null ? undefined : { kind: corner.kind, sizeMm, range: corner.range };
}

import type { HoleDesign } from "../design.ts";
import type {
  CutoutStatement,
  HoleRingStatement,
  HoleStatement,
  QuantityStatement,
  SlotStatement,
  Statement,
} from "../tree.ts";
import { evaluatePath, MOST_COPIES } from "./paths.ts";
import { evaluatePoint, polarPoint } from "./points.ts";
import { angle, type Scope, size, wholeNumber } from "./values.ts";

type OtherHoleStatement = HoleStatement | HoleRingStatement | SlotStatement | CutoutStatement;

/** The holes apart from the bore, in text order; those with a problem are left out. */
export function evaluateHoles(scope: Scope, statements: readonly Statement[]): readonly HoleDesign[] {
  return statements.filter(isHole).flatMap((hole) => evaluateHole(scope, hole));
}

function isHole(statement: Statement): statement is OtherHoleStatement {
  return ["hole", "hole-ring", "slot", "cutout"].includes(statement.kind);
}

export function evaluateBore(scope: Scope, bore: QuantityStatement): HoleDesign | null {
  const diameterMm = size(scope, bore.value, "The bore");
  return diameterMm === null ? null : { kind: "bore", diameterMm, range: bore.range };
}

function evaluateHole(scope: Scope, hole: OtherHoleStatement): readonly HoleDesign[] {
  switch (hole.kind) {
    case "hole":
      return evaluateSingle(scope, hole);
    case "hole-ring":
      return evaluateRing(scope, hole);
    case "slot":
      return evaluateSlot(scope, hole);
    case "cutout": {
      const path = evaluatePath(scope, hole.path);
      return path === null ? [] : [{ kind: "cutout", path, range: hole.range }];
    }
  }
}

function evaluateSingle(scope: Scope, { at, diameter, range }: HoleStatement): readonly HoleDesign[] {
  const centre = evaluatePoint(scope, at, undefined);
  const diameterMm = size(scope, diameter, "The diameter");
  return centre === null || diameterMm === null ? [] : [{ kind: "hole", centre, diameterMm, range }];
}

/** Holes spread evenly about the spin axis, the first at the start angle, or on +x where none is given. */
function evaluateRing(scope: Scope, ring: HoleRingStatement): readonly HoleDesign[] {
  const count = wholeNumber(scope, ring.count, "The number of holes", 1, MOST_COPIES);
  const radius = size(scope, ring.radius, "The radius of the ring");
  const diameterMm = size(scope, ring.diameter, "The diameter");
  const start = ring.startAngle === null ? 0 : angle(scope, ring.startAngle, "The angle of the first hole");
  if (count === null || radius === null || diameterMm === null || start === null) return [];
  return Array.from({ length: count }, (_, index) => ({
    kind: "hole",
    centre: polarPoint(radius.value, start + (index / count) * 2 * Math.PI),
    diameterMm,
    range: ring.range,
  }));
}

function evaluateSlot(scope: Scope, slot: SlotStatement): readonly HoleDesign[] {
  const from = evaluatePoint(scope, slot.from, undefined);
  const to = evaluatePoint(scope, slot.to, from);
  const widthMm = size(scope, slot.width, "The width");
  return from === null || to === null || widthMm === null
    ? []
    : [{ kind: "slot", from, to, widthMm, range: slot.range }];
}

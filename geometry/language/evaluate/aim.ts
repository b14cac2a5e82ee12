import type { AimDesign, Goal } from "../design.ts";
import type { Problem } from "../problem.ts";
import type { ProblemCode } from "../problem-codes.ts";
import type { Quantity } from "../quantity.ts";
import type { RequirableFigure } from "../requirable.ts";
import type { AimGoal, AimStatement, LetStatement, NameReference, UnitExpression } from "../tree.ts";
import { numberOfUnit, unitFactor } from "../units.ts";
import { writtenUnit } from "./expression-shape.ts";
import type { LetStatements } from "./file-lets.ts";
import { movableNames } from "./movable-names.ts";
import { failure, fix } from "./problems.ts";
import { evaluateFigure, evaluateFigureLimit } from "./requirements.ts";
import type { Scope } from "./values.ts";

/** Two goals are traded off along a line; what is best of three would be a surface that nobody reads. */
const MOST_GOALS = 2;
/** The room to search grows with every let; with more of them nobody overlooks what was searched. */
const MOST_NAMES = 8;

/** What `aim` asks for; null where a part of it is wrong: a search for half of it would mislead. */
export function evaluateAim(
  scope: Scope,
  statement: AimStatement,
  lets: LetStatements,
  figures: readonly RequirableFigure[],
): AimDesign | null {
  const { goals, limits, names, range } = statement;
  const goodGoals = evaluateGoals(scope, goals, figures);
  const keeping = limits.flatMap((limit) => evaluateFigureLimit(scope, limit, figures) ?? []);
  const goodNames = movableNames(scope, names, lets, {
    most: MOST_NAMES,
    tooMany: `An aim moves ${MOST_NAMES} lets at most; the first ${MOST_NAMES} count.`,
    refuse: (let_, reference) => refuseBoundless(scope, let_, reference),
  });
  const isWhole =
    goodGoals.length > 0 &&
    goodGoals.length === goals.length &&
    keeping.length === limits.length &&
    goodNames.length > 0 &&
    goodNames.length === names.length;
  return isWhole ? { goals: goodGoals, keeping, names: goodNames, range } : null;
}

function evaluateGoals(
  scope: Scope,
  goals: readonly AimGoal[],
  figures: readonly RequirableFigure[],
): readonly Goal[] {
  const good: Goal[] = [];
  for (const [index, { sense, range, ...stated }] of goals.entries()) {
    const found = evaluateFigure(scope, stated, figures, "aimed at");
    if (found === null || found.atMPerS === undefined) continue;
    const goal: Goal = { sense, figure: found.figure.name, atMPerS: found.atMPerS, range };
    const why = whyNot(goal, index, good);
    if (why === null) good.push(goal);
    else {
      const start = goals[index - 1]?.range.end ?? range.start;
      const remove = fix("Remove this goal", [{ start, end: range.end, newText: "" }]);
      scope.report(failure(why.code, range, why.message, [remove]));
    }
  }
  return good;
}

function whyNot(
  { figure, atMPerS }: Goal,
  index: number,
  before: readonly Goal[],
): { readonly code: ProblemCode; readonly message: string } | null {
  if (before.some((other) => other.figure === figure && other.atMPerS === atMPerS))
    return { code: "duplicate-name", message: `'${figure}' is a goal already.` };
  return index < MOST_GOALS
    ? null
    : { code: "out-of-range", message: "An aim has one goal or two; the first two count." };
}

/** Where no bounds stand, the fix proposes from half to twice the value; which are right only the builder knows. */
const PROPOSED = [1 / 2, 2] as const;
const PROPOSED_DIGITS = 3;

function refuseBoundless(
  scope: Scope,
  { name: letName, value, bounds }: LetStatement,
  { name, range }: NameReference,
): Problem | null {
  if (bounds !== null || value === null || letName === null) return null;
  const worth = scope.expressions.value(value);
  // Without a value it has a problem of its own.
  if (worth === null) return null;
  const text = `from ${proposal(worth, writtenUnit(value)).join(" to ")}`;
  const fixes =
    worth.value === 0
      ? []
      : [fix(`Insert '${text}'`, [{ start: value.range.end, end: value.range.end, newText: ` ${text}` }])];
  const message = `'${name}' has no bounds; say in its let how far it may go, as in let tail = 96 mm from 80 mm to 120 mm.`;
  return failure("no-bounds", range, message, fixes);
}

/** Round numbers of the unit that the value is written in. */
function proposal(worth: Quantity, unit: UnitExpression | null): readonly string[] {
  const scale = unit && unitFactor(unit);
  const value = scale === null ? worth.value : numberOfUnit(worth, scale);
  return PROPOSED.map((factor) => Number((value * factor).toPrecision(PROPOSED_DIGITS)))
    .sort((a, b) => a - b)
    .map((bound) => (unit === null ? `${bound}` : `${bound} ${unit.text}`));
}

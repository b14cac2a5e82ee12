/** Lets: in which order they depend on each other, and what they are worth. */
import type { Problem } from "../problem.ts";
import type { Dimension, Quantity } from "../quantity.ts";
import type { TextRange } from "../text.ts";
import type { Expression, LetStatement } from "../tree.ts";
import { unitFactor } from "../units.ts";
import { isBareArithmetic, visitParts, writtenUnit } from "./expression-shape.ts";
import { createExpressions, type Expressions } from "./expressions.ts";
import { failure } from "./problems.ts";
import { stronglyConnected } from "./strongly-connected.ts";
import type { Workings } from "./workings.ts";

/** What defines a name: its let, or the override of the chosen variant. */
export interface Definition {
  readonly name: string;
  readonly nameRange: TextRange;
  readonly value: Expression | null;
  /** The kind that the value has to be of, where something says so. */
  readonly expected: Dimension | null;
  /** True where the variant defines the name anew. */
  readonly isOverride: boolean;
}

export type Definitions = ReadonlyMap<string, Definition>;

/** An evaluator together with the values of the lets that it knows. */
export interface LetValues {
  readonly expressions: Expressions;
  /** The same without reports, for questions that come later. */
  readonly quietly: Expressions;
  readonly values: ReadonlyMap<string, Quantity | null>;
}

/** The definition that a let makes. */
export function definitionOf(name: string, statement: LetStatement, nameRange: TextRange): Definition {
  return { name, nameRange, value: statement.value, expected: kindOfBounds(statement), isOverride: false };
}

/** A number without its unit gets its kind from the let's bounds: `let tail = 96 from 80 mm to 120 mm`. */
function kindOfBounds({ value, bounds }: LetStatement): Dimension | null {
  if (bounds === null || value === null || !isBareArithmetic(value)) return null;
  const unit = writtenUnit(bounds.from) ?? writtenUnit(bounds.to);
  return unit === null ? null : (unitFactor(unit)?.dimension ?? null);
}

/** So many names are compared with a misspelt one; more would only cost time in generated files. */
const MOST_COMPARED = 500;

/** Works out every let, whatever their order; each circle is one problem and its members have no value. */
export function evaluateLets(
  definitions: Definitions,
  surroundings: Omit<Workings, "lookUp" | "names">,
): LetValues {
  const values = new Map<string, Quantity | null>();
  const workings: Workings = {
    ...surroundings,
    names: [...definitions.keys()].slice(0, MOST_COMPARED),
    lookUp: (name) => values.get(name),
  };
  const expressions = createExpressions(workings);
  for (const group of dependencyOrder(definitions)) {
    const circle = isCircle(group, definitions);
    if (circle) surroundings.report(cycle(group));
    for (const definition of group)
      values.set(definition.name, circle ? null : worth(expressions, definition));
  }
  return { expressions, quietly: createExpressions({ ...workings, report: () => {} }), values };
}

function worth(expressions: Expressions, { name, value, expected }: Definition): Quantity | null {
  if (value === null) return null;
  return expected === null ? expressions.value(value) : expressions.expect(value, expected, `'${name}' is`);
}

/** Definitions in an order in which each follows what it depends on; those of a circle stand together. */
function dependencyOrder(definitions: Definitions): readonly (readonly Definition[])[] {
  return stronglyConnected([...definitions.values()], (definition) =>
    dependenciesOf(definition, definitions),
  );
}

function dependenciesOf({ value }: Definition, definitions: Definitions): readonly Definition[] {
  const dependencies: Definition[] = [];
  if (value === null) return dependencies;
  visitNames(value, (name) => {
    const definition = definitions.get(name);
    if (definition !== undefined) dependencies.push(definition);
  });
  return dependencies;
}

/** The names that an expression uses, in text order, repeats included. */
export function visitNames(expression: Expression, visit: (name: string) => void): void {
  visitParts(expression, (part) => {
    if (part.kind === "name") visit(part.name);
  });
}

function isCircle(group: readonly Definition[], definitions: Definitions): boolean {
  const [first] = group;
  return group.length > 1 || (first !== undefined && dependenciesOf(first, definitions).includes(first));
}

/** One problem for the whole circle: at the override that closes it, or at the member that stands first in the text. */
function cycle(group: readonly Definition[]): Problem {
  const members = [...group].sort((a, b) => a.nameRange.start - b.nameRange.start);
  const blamed = members.find(({ isOverride }) => isOverride) ?? members[0];
  const names = members.map(({ name }) => `'${name}'`);
  const message =
    names.length === 1
      ? `${names[0]} is defined by itself; give it a value that does not use it.`
      : `${names.slice(0, -1).join(", ")} and ${names.at(-1)} depend on each other in a circle; ` +
        "give one of them a value that does not use the others.";
  return failure("cycle", blamed?.nameRange ?? { start: 0, end: 0 }, message);
}

/** The lets of a file, as the chosen variant has them. */
import type { LetValue } from "../design.ts";
import { isNumber } from "../dimension.ts";
import { formatQuantity } from "../format-quantity.ts";
import type { Quantity } from "../quantity.ts";
import type { Expression, LetStatement, OverrideStatement, SyntaxTree, VariantStatement } from "../tree.ts";
import { textOf, writtenUnit } from "./expression-shape.ts";
import { type Definition, type Definitions, definitionOf, evaluateLets, type LetValues } from "./lets.ts";
import { doubt, rewrite } from "./problems.ts";
import { refuseOrder } from "./settings.ts";
import type { Scope } from "./values.ts";
import type { Workings } from "./workings.ts";

/** Lets by name; the first of a name counts. */
export type LetStatements = ReadonlyMap<string, LetStatement>;

export function letStatements(tree: SyntaxTree): LetStatements {
  const lets = new Map<string, LetStatement>();
  for (const statement of tree.statements) {
    if (statement.kind !== "let" || statement.name === null || lets.has(statement.name.name)) continue;
    lets.set(statement.name.name, statement);
  }
  return lets;
}

/** The overrides of a variant by name; the first of a name counts. */
function overridesOf(variant: VariantStatement | null): ReadonlyMap<string, OverrideStatement> {
  const overrides = new Map<string, OverrideStatement>();
  for (const statement of variant?.body ?? []) {
    if (statement.kind === "override" && !overrides.has(statement.name.name)) {
      overrides.set(statement.name.name, statement);
    }
  }
  return overrides;
}

/**
 * Works out the lets: first as the file has them, so that their own mistakes are told for every variant alike, then
 * with the overrides of the variant, each of which has to be of the kind of the let that it overrides.
 */
export function evaluateFileLets(
  lets: LetStatements,
  variant: VariantStatement | null,
  surroundings: Omit<Workings, "lookUp" | "names">,
): LetValues & { readonly definitions: Definitions } {
  const own = new Map<string, Definition>();
  for (const [name, statement] of lets) {
    own.set(name, definitionOf(name, statement, statement.name?.range ?? statement.range));
  }
  const base = evaluateLets(own, surroundings);
  const overrides = overridesOf(variant);
  if (overrides.size === 0) return { ...base, definitions: own };
  const definitions = new Map(own);
  for (const [name, { value, name: identifier }] of overrides) {
    if (!own.has(name)) continue;
    const expected = base.values.get(name)?.dimension ?? null;
    definitions.set(name, { name, value, nameRange: identifier.range, expected, isOverride: true });
  }
  return { ...evaluateLets(definitions, surroundings), definitions };
}

/** The lets in file order, with their bounds; a value outside its bounds is doubted. */
export function letValues(
  scope: Scope,
  lets: LetStatements,
  { values, definitions }: Pick<LetValues, "values"> & { readonly definitions: Definitions },
): readonly LetValue[] {
  return [...lets].map(([name, statement]) => {
    const value = values.get(name) ?? null;
    const bounds = evaluateBounds(scope, name, statement, value);
    const written = definitions.get(name)?.value ?? null;
    if (bounds !== null && value !== null && written !== null && statement.bounds !== null) {
      doubtOutside(scope, name, { value, written }, bounds, statement.bounds);
    }
    return { name, value, bounds, nameRange: statement.name?.range ?? statement.range };
  });
}

type Bounds = NonNullable<LetValue["bounds"]>;

function evaluateBounds(
  scope: Scope,
  name: string,
  { bounds }: LetStatement,
  value: Quantity | null,
): Bounds | null {
  if (bounds === null) return null;
  const { expressions } = scope;
  const bound = (expression: Expression, which: string): Quantity | null =>
    value === null
      ? expressions.value(expression)
      : expressions.expect(expression, value.dimension, `The ${which} bound of '${name}' is`);
  const from = bound(bounds.from, "lower");
  const to = bound(bounds.to, "upper");
  if (from === null || to === null || value === null) return null;
  if (from.value < to.value) return { from, to };
  refuseOrder(scope, bounds.from, bounds.to, `The bounds of '${name}' run`);
  return null;
}

/** Bounds are exact, but a value may be computed: one that misses by rounding alone is not outside. */
const BOUND_TOLERANCE = 1e-12;

function doubtOutside(
  { text, report }: Scope,
  name: string,
  { value, written }: { readonly value: Quantity; readonly written: Expression },
  { from, to }: Bounds,
  bounds: NonNullable<LetStatement["bounds"]>,
): void {
  const slack = BOUND_TOLERANCE * Math.max(Math.abs(from.value), Math.abs(to.value));
  const below = value.value < from.value - slack;
  if (!below && value.value <= to.value + slack) return;
  const bound = below ? bounds.from : bounds.to;
  const unit = writtenUnit(written) ?? writtenUnit(bound);
  const shownIn = unit === null || isNumber(value.dimension) ? null : unit.text;
  const message =
    `'${name}' is ${formatQuantity(value, shownIn)}, outside its bounds of ` +
    `${formatQuantity(from, shownIn)} to ${formatQuantity(to, shownIn)}.`;
  const newText = textOf(text, bound.range);
  const fixes = [rewrite(`Set '${name}' to '${newText}'`, written.range, newText)];
  report(doubt("outside-bounds", written.range, message, fixes));
}

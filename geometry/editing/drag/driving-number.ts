/** The number of the text that a coordinate follows: a number in it, or the value of a let. */
import { isBareArithmetic } from "../../language/evaluate/expression-shape.ts";
import { visitNames } from "../../language/evaluate/lets.ts";
import type { TextRange } from "../../language/text.ts";
import type {
  Expression,
  GroupExpression,
  NumberLiteral,
  SyntaxTree,
  UnitExpression,
} from "../../language/tree.ts";

/** A number with its unit: `12 mm`, or a quotient such as `(1/4) in`. */
export type WrittenNumber = (NumberLiteral | GroupExpression) & { readonly unit: UnitExpression };

/** Where the sign before a number stands, so that it can be turned round. */
export type SignPlace =
  /** No sign: one can be written before the number. */
  | { readonly kind: "none" }
  /** A sign that belongs to the number alone; `end` is where the number starts. */
  | { readonly kind: "own"; readonly sign: "+" | "-"; readonly range: TextRange }
  /** The sign of a sum, somewhere in this range. */
  | { readonly kind: "sum"; readonly sign: "+" | "-"; readonly range: TextRange };

/** A coordinate is `sign × number + rest`, where the rest does not change with the number. */
export interface DrivingNumber {
  readonly number: WrittenNumber;
  readonly sign: 1 | -1;
  readonly place: SignPlace;
  /** The let whose value is `sign × number`; null where the number stands in the point itself. */
  readonly drivenLet: { readonly name: string; readonly sign: 1 | -1 } | null;
}

/** One term of a sum, with the sign it has in the whole. */
interface Term {
  readonly expression: Expression;
  readonly sign: 1 | -1;
  readonly place: SignPlace;
}

/**
 * The number that a coordinate follows: the last one that stands in it as a term of its own, or else the value of the
 * let that is all it says. Null for what is computed in another way.
 */
export function drivingNumber(
  expression: Expression,
  tree: SyntaxTree,
  variant: string | null,
): DrivingNumber | null {
  const terms = termsOf(expression, 1, { kind: "none" });
  const own = terms.filter((term) => isWrittenNumber(term.expression)).at(-1);
  if (own !== undefined) return numberOf(own, own.sign, null);
  const [only] = terms;
  if (terms.length !== 1 || only?.expression.kind !== "name") return null;
  const { name } = only.expression;
  const value = valueOfLet(name, tree, variant);
  const [behind, ...others] = value === null ? [] : termsOf(value, 1, { kind: "none" });
  if (behind === undefined || others.length > 0) return null;
  return numberOf(behind, behind.sign === only.sign ? 1 : -1, { name, sign: behind.sign });
}

function numberOf(
  { expression, place }: Term,
  sign: 1 | -1,
  drivenLet: DrivingNumber["drivenLet"],
): DrivingNumber | null {
  return isWrittenNumber(expression) ? { number: expression, sign, place, drivenLet } : null;
}

function isWrittenNumber(expression: Expression): expression is WrittenNumber {
  if (expression.kind !== "number" && expression.kind !== "group") return false;
  return expression.unit !== null && (expression.kind === "number" || isBareArithmetic(expression.inner));
}

/** The terms of a sum, signs and plain parentheses followed. */
function termsOf(expression: Expression, sign: 1 | -1, place: SignPlace): readonly Term[] {
  if (expression.kind === "unary") {
    const { operator, operand, range } = expression;
    const own: SignPlace = {
      kind: "own",
      sign: operator,
      range: { start: range.start, end: operand.range.start },
    };
    return termsOf(operand, operator === "-" ? turned(sign) : sign, own);
  }
  if (expression.kind === "group" && expression.unit === null) {
    return termsOf(expression.inner, sign, { kind: "none" });
  }
  if (expression.kind !== "binary" || (expression.operator !== "+" && expression.operator !== "-")) {
    return [{ expression, sign, place }];
  }
  const { left, operator, right } = expression;
  const between: SignPlace = {
    kind: "sum",
    sign: operator,
    range: { start: left.range.end, end: right.range.start },
  };
  return [...termsOf(left, sign, place), ...termsOf(right, operator === "-" ? turned(sign) : sign, between)];
}

function turned(sign: 1 | -1): 1 | -1 {
  return sign === 1 ? -1 : 1;
}

/** What a name stands for in a variant: the variant's override, else the let; of several the first. */
function valueOfLet(name: string, tree: SyntaxTree, variant: string | null): Expression | null {
  const bodies = tree.statements.flatMap((statement) =>
    statement.kind === "variant" && statement.name === variant && variant !== null ? [statement.body] : [],
  );
  for (const statement of [...(bodies[0] ?? []), ...tree.statements]) {
    const isNamed = statement.kind === "override" || statement.kind === "let";
    if (isNamed && statement.name?.name === name) return statement.value;
  }
  return null;
}

/** Whether an expression changes with a let, be it through other lets. */
export function dependsOn(
  expression: Expression,
  letName: string,
  tree: SyntaxTree,
  variant: string | null,
): boolean {
  const names: string[] = [];
  visitNames(expression, (name) => names.push(name));
  const seen = new Set(names);
  // A set is walked in the order of insertion, what is added on the way included.
  for (const name of seen) {
    const value = name === letName ? null : valueOfLet(name, tree, variant);
    if (value !== null) visitNames(value, (further) => seen.add(further));
  }
  return seen.has(letName);
}

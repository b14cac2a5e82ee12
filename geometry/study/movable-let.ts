/** The lets that may be moved to reach something: where their values are written, in which unit, between which bounds. */
import type { Design } from "../language/design.ts";
import { NUMBER } from "../language/dimension.ts";
import { literalOf, textOf, unitWithGap, writtenUnit } from "../language/evaluate/expression-shape.ts";
import { letStatements } from "../language/evaluate/file-lets.ts";
import { findVariant } from "../language/evaluate/variants.ts";
import { nearestWord } from "../language/nearest-word.ts";
import type { TextEdit, TextRange } from "../language/text.ts";
import type {
  Expression,
  LetStatement,
  NumberLiteral,
  OverrideStatement,
  Statement,
  SyntaxTree,
  UnitExpression,
  VariantStatement,
} from "../language/tree.ts";
import { numberOfUnit, type UnitScale, unitFactor } from "../language/units.ts";

/** A let whose value is written as one number; all values are numbers of its own unit. */
export interface MovableLet {
  readonly name: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** False where the let states no bounds and half to twice its value is taken. */
  readonly isBounded: boolean;
  /** The value as it is written. */
  readonly text: string;
  readonly unit: string | null;
  readonly scale: UnitScale;
  readonly literal: NumberLiteral;
  readonly place: Place;
}

/** Where a new value goes: into the let, into the variant's override, or into the variant as a new override. */
type Place =
  | {
      readonly kind: "written";
      readonly statement: LetStatement | OverrideStatement;
      readonly digits: TextRange;
    }
  | { readonly kind: "added"; readonly variant: VariantStatement };

export type NotMovable = {
  readonly reason: "no-such-let" | "not-a-literal" | "no-range";
  readonly message: string;
};

/** A let by its name as a variant has it, or why it cannot be moved. */
export function movableLet(tree: SyntaxTree, design: Design, name: string): MovableLet | NotMovable {
  const lets = letStatements(tree);
  const statement = lets.get(name);
  if (statement === undefined) return noSuchLet(name, [...lets.keys()]);
  const variant = findVariant(tree, design.variant);
  const override = overrideOf(variant, name);
  const written = (override ?? statement).value;
  const literal = written && literalOf(written);
  const unit = written && writtenUnit(written);
  const found = design.lets.find((candidate) => candidate.name === name);
  const scale = unit ? unitFactor(unit) : { factor: 1, dimension: NUMBER };
  if (!written || !literal || !found?.value || !scale) return notALiteral(tree.text, name, written);
  const value = numberOfUnit(found.value, scale);
  const bounds = found.bounds && {
    least: numberOfUnit(found.bounds.from, scale),
    most: numberOfUnit(found.bounds.to, scale),
  };
  if (!bounds && value === 0) return noRange(name);
  return {
    name,
    value,
    ...(bounds ?? rangeAround(value)),
    isBounded: bounds !== null,
    text: textOf(tree.text, written.range),
    unit: unit?.text ?? null,
    scale,
    literal,
    place:
      variant && !override
        ? { kind: "added", variant }
        : { kind: "written", statement: override ?? statement, digits: digitsOf(tree.text, written, unit) },
  };
}

function overrideOf(variant: VariantStatement | null, name: string): OverrideStatement | null {
  const found = variant?.body.find(
    (statement) => statement.kind === "override" && statement.name.name === name,
  );
  return found?.kind === "override" ? found : null;
}

/** From the sign to the last digit: the unit and the blanks before it stay as they are typed. */
function digitsOf(text: string, written: Expression, unit: UnitExpression | null): TextRange {
  return { start: written.range.start, end: unit ? unitWithGap(text, unit).start : written.range.end };
}

function rangeAround(value: number): Pick<MovableLet, "least" | "most"> {
  return { least: Math.min(value / 2, value * 2), most: Math.max(value / 2, value * 2) };
}

function noSuchLet(name: string, names: readonly string[]): NotMovable {
  const near = nearestWord(name, names);
  const hint = near === null ? "" : `; did you mean ${near}?`;
  return { reason: "no-such-let", message: `There is no let '${name}'${hint || "."}` };
}

function notALiteral(text: string, name: string, written: Expression | null): NotMovable {
  const shown = written ? ` '${textOf(text, written.range)}'` : " nothing that can be worked out";
  return {
    reason: "not-a-literal",
    message: `'${name}' is${shown}; only a let that is one value, such as 96 mm, can be moved.`,
  };
}

function noRange(name: string): NotMovable {
  return {
    reason: "no-range",
    message: `'${name}' is 0 and has no bounds: say how far it may go, as in 'from -10 mm to 10 mm'.`,
  };
}

/** The tree with other values in these lets: what the text with {@link editFor} would be read as. */
export function withValues(
  tree: SyntaxTree,
  lets: readonly MovableLet[],
  values: readonly number[],
): SyntaxTree {
  const changes = new Map<Statement, Statement>();
  const added = new Map<VariantStatement, Statement[]>();
  lets.forEach(({ name, place, literal }, index) => {
    const value: NumberLiteral = { ...literal, value: values[index] ?? literal.value };
    if (place.kind === "written") changes.set(place.statement, { ...place.statement, value });
    else {
      const { range, keyword } = place.variant;
      const override: OverrideStatement = { kind: "override", name: { name, range }, keyword, range, value };
      added.set(place.variant, [...(added.get(place.variant) ?? []), override]);
    }
  });
  const changed = (statement: Statement): Statement => {
    if (statement.kind !== "variant") return changes.get(statement) ?? statement;
    const body = statement.body.map((inner) => changes.get(inner) ?? inner);
    return { ...statement, body: [...body, ...(added.get(statement) ?? [])] };
  };
  return { ...tree, statements: tree.statements.map(changed) };
}

/** What writes a let's new number into the text; everything else stays as it is typed. */
export function editFor(text: string, { name, place, unit }: MovableLet, digits: string): TextEdit {
  if (place.kind === "written") return { ...place.digits, newText: digits };
  return insertion(text, place.variant, `${name} = ${digits}${unit === null ? "" : ` ${unit}`}`);
}

/** Before the first statement of the variant's block, laid out as that is; into an empty block behind its brace. */
function insertion(text: string, { nameRange, body }: VariantStatement, override: string): TextEdit {
  const brace = text.indexOf("{", nameRange.end) + 1;
  const [first] = body;
  if (!first) return { start: brace, end: brace, newText: ` ${override} ` };
  const { start } = first.range;
  const gap = text.slice(brace, start);
  const lineBreak = gap.lastIndexOf("\n");
  return { start, end: start, newText: override + (lineBreak < 0 ? " " : `\n${gap.slice(lineBreak + 1)}`) };
}

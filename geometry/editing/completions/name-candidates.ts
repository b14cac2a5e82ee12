/** What may begin a value: lets, functions and pi. */
import type { Analysis } from "../../analysis/analyse.ts";
import type { Source } from "../../analysis/source.ts";
import type { LetValue } from "../../language/design.ts";
import { NUMBER, sameDimension } from "../../language/dimension.ts";
import { visitNames } from "../../language/evaluate/lets.ts";
import { formatQuantity } from "../../language/format-quantity.ts";
import type { Dimension } from "../../language/quantity.ts";
import type { SyntaxTree } from "../../language/tree.ts";
import { FUNCTION_NAMES } from "../../language/vocabulary.ts";
import type { Candidate } from "../completion.ts";
import { FUNCTION_HELP, type FunctionHelp, PI_HELP } from "../function-help.ts";
import { commentBehind } from "../let-comment.ts";
import { codeBlock, plainText } from "../markdown.ts";
import { insertionOf } from "../template.ts";
import { valueText } from "../value-text.ts";

export interface OperandPlace {
  /** The kind that the place needs; null where any will do. */
  readonly expected: Dimension | null;
  /** The let whose value this is to be; what depends on it is left out. */
  readonly defined: string | null;
  /** True where parentheses follow already: a function is then its name alone. */
  readonly isCalled: boolean;
}

/** Everything that may begin a value, what is of the expected kind first. */
export function operandCandidates(
  { design, source }: Analysis,
  { expected, defined, isCalled }: OperandPlace,
): readonly Candidate[] {
  const circular = defined === null ? new Set() : dependentsOf(source.tree, defined);
  const lets = design.lets.filter(({ name }) => !circular.has(name));
  return [
    ...lets.map((known) => letCandidate(source, known, expected)),
    piCandidate(expected),
    ...FUNCTION_NAMES.map((name) => functionCandidate(name, FUNCTION_HELP[name], isCalled)),
  ];
}

/** The names of lets alone; those that stand in the item already are left out. */
export function letNameCandidates(
  { design, source }: Analysis,
  item: readonly { readonly text: string }[],
): readonly Candidate[] {
  return design.lets
    .filter(({ name }) => item.every(({ text }) => text !== name))
    .map((known) => letCandidate(source, known, null));
}

/** What the comment behind a let says. */
export function letComment({ text, tree }: Source, { name }: LetValue): string {
  const statement = tree.statements.find(
    (candidate) => candidate.kind === "let" && candidate.name?.name === name,
  );
  return statement === undefined ? "" : commentBehind(text, statement.range);
}

function letCandidate(source: Source, known: LetValue, expected: Dimension | null): Candidate {
  const { name, value } = known;
  const fits = expected === null || (value !== null && sameDimension(value.dimension, expected));
  const comment = letComment(source, known);
  return {
    label: name,
    kind: "name",
    detail: value === null ? "a let without a value" : `= ${formatQuantity(value)}`,
    documentation: [plainText(comment), value === null ? "" : valueText(value)].filter(Boolean).join("\n\n"),
    insertText: name,
    isSnippet: false,
    rank: fits ? 0 : 3,
  };
}

function piCandidate(expected: Dimension | null): Candidate {
  const documentation = `${PI_HELP.summary}\n\n${codeBlock(PI_HELP.example)}`;
  const rank = expected !== null && sameDimension(expected, NUMBER) ? 1 : 2;
  return {
    label: "pi",
    kind: "constant",
    detail: "= 3.14159",
    documentation,
    insertText: "pi",
    isSnippet: false,
    rank,
  };
}

function functionCandidate(name: string, help: FunctionHelp, isCalled: boolean): Candidate {
  const { summary, example, parameters, takesMore } = help;
  const names = parameters.map((parameter) => parameter.name);
  return {
    label: name,
    kind: "function",
    detail: `${name}(${[...names, ...(takesMore ? ["…"] : [])].join(", ")})`,
    documentation: `${summary}\n\n${codeBlock(example)}`,
    ...insertionOf(isCalled ? name : `${name}(${names.map((parameter) => `‹${parameter}›`).join(", ")})`),
    rank: 2,
  };
}

/** The let itself and every let whose value hangs on it. */
function dependentsOf({ statements }: SyntaxTree, name: string): ReadonlySet<string> {
  const users = new Map<string, string[]>();
  for (const statement of statements) {
    if (statement.kind !== "let" || statement.name === null || statement.value === null) continue;
    const user = statement.name.name;
    visitNames(statement.value, (used) => users.set(used, [...(users.get(used) ?? []), user]));
  }
  const found = new Set([name]);
  for (const next of found) for (const user of users.get(next) ?? []) found.add(user);
  return found;
}

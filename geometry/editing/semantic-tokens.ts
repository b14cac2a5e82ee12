import type { Source } from "../analysis/source.ts";
import { CONSTANTS, FUNCTIONS, KEYWORDS, UNITS } from "../language/parse/word-sets.ts";
import type { TextRange } from "../language/text.ts";
import type { Token } from "../language/token.ts";
import { tokenize } from "../language/tokenize.ts";
import type { BlockItem, FigureLimit } from "../language/tree.ts";
import { type TreeNode, visitTree } from "../language/tree-walk.ts";

/** Standard token types of editors, in the order of the legend. */
export const SEMANTIC_TOKEN_TYPES = [
  "keyword",
  "variable",
  "property",
  "enumMember",
  "function",
  "number",
  "string",
  "comment",
  "operator",
] as const;
export type SemanticTokenType = (typeof SEMANTIC_TOKEN_TYPES)[number];

export const SEMANTIC_TOKEN_MODIFIERS = ["declaration", "readonly", "defaultLibrary"] as const;
export type SemanticTokenModifier = (typeof SEMANTIC_TOKEN_MODIFIERS)[number];

interface TokenClass {
  readonly type: SemanticTokenType;
  readonly modifiers: readonly SemanticTokenModifier[];
}

/** A stretch of one line and what it is. */
export interface SemanticToken extends TokenClass {
  readonly range: TextRange;
}

const NO_MODIFIERS: readonly SemanticTokenModifier[] = [];
const KEYWORD = plain("keyword");
const OPERATOR = plain("operator");
const UNIT = plain("enumMember");
const FIGURE = plain("property");
const LET: TokenClass = { type: "variable", modifiers: ["readonly"] };
const LET_DECLARATION: TokenClass = { type: "variable", modifiers: ["declaration", "readonly"] };
const UNKNOWN_NAME = plain("variable");
const CONSTANT: TokenClass = { type: "variable", modifiers: ["readonly", "defaultLibrary"] };
const FUNCTION: TokenClass = { type: "function", modifiers: ["defaultLibrary"] };
const MATERIAL: TokenClass = { type: "enumMember", modifiers: ["defaultLibrary"] };

function plain(type: SemanticTokenType): TokenClass {
  return { type, modifiers: NO_MODIFIERS };
}

/** What every word, number, sign and comment of a text is, in text order; no token spans lines. */
export function semanticTokens({ tree }: Source): readonly SemanticToken[] {
  const names = namesOf(tree);
  const found: SemanticToken[] = [];
  const tokens = tokenize(tree.text);
  for (let index = 0; index < tokens.length; index += 1) {
    const token = tokens[index];
    if (token === undefined) break;
    if (token.text === "/" && tokens[index + 1]?.text === "/") {
      // Two slashes are reported and read as a comment.
      const end = endOfLine(tokens, index);
      found.push({
        range: { start: token.start, end: tokens[end - 1]?.end ?? token.end },
        ...plain("comment"),
      });
      index = end - 1;
      continue;
    }
    const known = classOf(token, names);
    if (known !== null) found.push({ range: { start: token.start, end: token.end }, ...known });
  }
  return found;
}

function endOfLine(tokens: readonly Token[], index: number): number {
  let end = index;
  while (end < tokens.length && tokens[end]?.kind !== "newline") end += 1;
  return end;
}

function classOf(token: Token, names: ReadonlyMap<number, TokenClass>): TokenClass | null {
  switch (token.kind) {
    case "comment":
    case "string":
    case "number":
      return plain(token.kind);
    case "grade":
      return plain("number");
    case "symbol":
      return /^[=+\-*/^<>@]/.test(token.text) ? OPERATOR : null;
    case "word":
      return names.get(token.start) ?? wordClass(token.text);
    case "space":
    case "newline":
    case "unknown":
      return null;
  }
}

/** A word that the tree has no node for: of a statement or step, an option, or in a line that could not be read. */
function wordClass(word: string): TokenClass {
  if (KEYWORDS.has(word)) return KEYWORD;
  if (UNITS.has(word)) return UNIT;
  if (FUNCTIONS.has(word)) return FUNCTION;
  return CONSTANTS.has(word) ? CONSTANT : UNKNOWN_NAME;
}

/** What the words are that the tree knows, by where they start. */
function namesOf(tree: Source["tree"]): ReadonlyMap<number, TokenClass> {
  const names = new Map<number, TokenClass>();
  const lets = new Set(
    tree.statements.flatMap((statement) => (statement.kind === "let" ? [statement.name?.name] : [])),
  );
  visitTree(tree, (node) => {
    for (const [range, found] of classesOf(node, lets)) names.set(range.start, found);
  });
  return names;
}

function classesOf(
  node: TreeNode,
  lets: ReadonlySet<string | undefined>,
): readonly (readonly [TextRange, TokenClass])[] {
  switch (node.type) {
    case "unit-factor":
      return [[node.node.range, UNIT]];
    case "statement":
      return statementClasses(node.node);
    case "step":
      return [[node.node.keyword, KEYWORD]];
    case "block-item":
      return blockItemClasses(node.node);
    case "expression":
      if (node.node.kind === "call") return [[node.node.callee.range, FUNCTION]];
      if (node.node.kind !== "name") return [];
      return [[node.node.range, nameClass(node.node.name, lets)]];
    default:
      return [];
  }
}

function statementClasses(
  statement: Extract<TreeNode, { type: "statement" }>["node"],
): readonly (readonly [TextRange, TokenClass])[] {
  const word = [statement.keyword, KEYWORD] as const;
  switch (statement.kind) {
    case "let":
      return statement.name === null ? [word] : [word, [statement.name.range, LET_DECLARATION]];
    case "override":
      return [[statement.name.range, LET]];
    case "material":
      return statement.name === null ? [word] : [word, [statement.name.range, MATERIAL]];
    case "require":
      return [word, ...figureClasses(statement)];
    case "aim":
      return [word, ...[...statement.goals, ...statement.limits].flatMap(figureClasses)];
    default:
      return [word];
  }
}

function blockItemClasses(item: BlockItem): readonly (readonly [TextRange, TokenClass])[] {
  if (item.kind === "limit") return figureClasses(item);
  const words = item.parts.flatMap(({ lead, text }) => [lead, text?.range ?? null]);
  return [item.keyword, ...words].flatMap((range) => (range === null ? [] : [[range, KEYWORD] as const]));
}

function figureClasses({
  figure,
}: Pick<FigureLimit, "figure">): readonly (readonly [TextRange, TokenClass])[] {
  return figure === null ? [] : [[figure.range, FIGURE]];
}

function nameClass(name: string, lets: ReadonlySet<string | undefined>): TokenClass {
  if (CONSTANTS.has(name)) return CONSTANT;
  return lets.has(name) ? LET : UNKNOWN_NAME;
}

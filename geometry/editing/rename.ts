/** Renaming lets. */
import { readSource, type Source } from "../analysis/source.ts";
import { applyEdits } from "../language/apply-edits.ts";
import { CONSTANTS, FUNCTIONS, UNITS } from "../language/parse/word-sets.ts";
import type { TextEdit, TextRange } from "../language/text.ts";
import { tokenize } from "../language/tokenize.ts";
import type { Statement } from "../language/tree.ts";
import { nodeAt, type TreeNode, visitTree } from "../language/tree-walk.ts";
import { plainWord } from "../language/typography.ts";
import { isQuiet } from "./cursor-place.ts";
import { type LetUse, letUseAt, letUses } from "./let-uses.ts";

export type RenameTarget =
  | { readonly range: TextRange; readonly name: string }
  | { readonly refused: string };

export type RenameResult = { readonly edits: readonly TextEdit[] } | { readonly refused: string };

/** The let at an offset that can be renamed, or why there is none. */
export function renameTarget(source: Source, offset: number): RenameTarget {
  const use = letUseAt(letUses(source), offset);
  return use === null ? { refused: whyNot(source, offset) } : { range: use.range, name: use.name };
}

/** The edits that give the let at an offset another name everywhere, variants included, or why they cannot be made. */
export function renameEdits(source: Source, offset: number, newName: string): RenameResult {
  const uses = letUses(source);
  const use = letUseAt(uses, offset);
  if (use === null) return { refused: whyNot(source, offset) };
  if (use.name === newName) return { edits: [] };
  const refused = nameRefusal(newName, uses);
  if (refused !== null) return { refused };
  const edits = uses
    .filter(({ name }) => name === use.name)
    .map(({ range: { start, end } }) => ({ start, end, newText: newName }));
  return keepsMeaning(source, edits)
    ? { edits }
    : {
        refused: `'${newName}' would be read as a word of the language in some of the places where '${use.name}' stands.`,
      };
}

function whyNot({ text, tree }: Source, offset: number): string {
  if (isQuiet(text, offset)) return QUIET;
  const innermost = nodeAt(tree, offset).at(-1);
  if (innermost?.type === "expression" && innermost.node.kind === "name")
    return nameReason(innermost.node.name);
  if (innermost?.type === "name") return nameReason(innermost.node.name, nodeAt(tree, offset).at(-2));
  return ONLY_LETS;
}

const ONLY_LETS = "Only the names of lets can be renamed.";
const QUIET =
  "Only the names of lets can be renamed; a name in quotation marks, as of a bar or a variant, is plain text: change it where it stands.";

function nameReason(name: string, around?: TreeNode): string {
  if (around?.type === "statement" && around.node.kind === "material")
    return "Materials come from the table of the tool and keep their names.";
  if (around?.type === "statement" && isOfFigures(around.node))
    return "Figures are computed by the tool and keep their names.";
  const what = reservedAs(name);
  if (what !== null) return `'${name}' is ${what} of the language and keeps its name.`;
  return `No let of this file defines '${name}'.`;
}

/** The names in a requirement and in an aim that are no values. */
function isOfFigures({ kind }: Statement): boolean {
  return kind === "require" || kind === "aim";
}

function reservedAs(word: string): string | null {
  if (UNITS.has(word)) return "a unit";
  if (FUNCTIONS.has(word)) return "a function";
  return CONSTANTS.has(word) ? "a constant" : null;
}

function nameRefusal(newName: string, uses: readonly LetUse[]): string | null {
  const [token, ...rest] = tokenize(newName);
  if (token?.kind === "grade") return `'${newName}' is a balance grade and cannot name a let.`;
  if (token?.kind !== "word" || rest.length > 0 || plainWord(newName) !== null)
    return `'${newName}' is not a name; a name starts with a letter and has letters, digits and _ only.`;
  const what = reservedAs(newName);
  if (what !== null) return `'${newName}' is ${what} and cannot name a let.`;
  return uses.some(({ name }) => name === newName) ? `There is a let '${newName}' already.` : null;
}

/**
 * Whether the text says the same with the edits made. A let may be named like a word of the language, and there are
 * places, such as the start of a continued line, where it would then be read as that word.
 */
function keepsMeaning(source: Source, edits: readonly TextEdit[]): boolean {
  const renamed = readSource(applyEdits(source.text, edits));
  if (renamed.problems.length !== source.problems.length) return false;
  const [before, after] = [shapeOf(source), shapeOf(renamed)];
  return before.length === after.length && before.every((kind, i) => kind === after[i]);
}

/** What the nodes of a tree are, names apart. */
function shapeOf({ tree }: Source): readonly string[] {
  const shape: string[] = [];
  visitTree(tree, (node) => shape.push("kind" in node.node ? `${node.type} ${node.node.kind}` : node.type));
  return shape;
}

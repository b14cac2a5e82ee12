import { rowOf } from "../blocks/block-table.ts";
import { BLOCKS, isBlock } from "../blocks/blocks.ts";
import type { Problem } from "../problem.ts";
import type { ProblemCode } from "../problem-codes.ts";
import type { TextRange } from "../text.ts";
import type { BlockItem, Statement, StatementKind, SyntaxTree } from "../tree.ts";
import { type BlockWord, ONCE_WORDS } from "../vocabulary.ts";
import { deleteLines } from "./lines.ts";
import { failure, fix } from "./problems.ts";

const ONCE: ReadonlySet<StatementKind> = new Set(ONCE_WORDS);

/** What makes a statement the same as another one, and how to speak of it. */
interface Identity {
  readonly key: string;
  readonly code: ProblemCode;
  readonly range: TextRange;
  readonly message: string;
}

/** Statements and names that stand a second time: the first counts, so the others would be passed over in silence. */
export function duplicates({ text, statements }: SyntaxTree): readonly Problem[] {
  const blocks = statements.filter(isBlock);
  const bodies = statements.flatMap((statement) => (statement.kind === "variant" ? [statement.body] : []));
  return [
    ...[statements, ...bodies].flatMap((block) => duplicatesIn(text, block, identityOf)),
    ...blocks.flatMap(({ kind, body }) => duplicatesIn(text, body, (item) => settingIdentity(kind, item))),
  ];
}

function duplicatesIn<T extends { readonly range: TextRange }>(
  text: string,
  items: readonly T[],
  identityOfItem: (item: T) => Identity | null,
): readonly Problem[] {
  const met = new Set<string>();
  const problems: Problem[] = [];
  for (const item of items) {
    const identity = identityOfItem(item);
    if (identity === null) continue;
    const { key, code, range, message } = identity;
    const remove = fix("Delete this one", [deleteLines(text, item.range)]);
    if (met.has(key))
      problems.push(failure(code, range, `${message} already; the first one counts.`, [remove]));
    met.add(key);
  }
  return problems;
}

function settingIdentity(block: BlockWord, item: BlockItem): Identity | null {
  if (item.kind !== "setting" || rowOf(BLOCKS[block], item.word)?.isRepeated) return null;
  const message = `There is a line '${item.word}' in this ${block}`;
  return { key: item.word, code: "duplicate-statement", range: item.keyword, message };
}

/** Null for what may stand more than once, and for what has no name to be told by. */
function identityOf(statement: Statement): Identity | null {
  const { kind, keyword } = statement;
  if (ONCE.has(kind)) {
    return { key: kind, code: "duplicate-statement", range: keyword, message: `There is a line '${kind}'` };
  }
  if (kind === "let" && statement.name !== null) {
    const { name, range } = statement.name;
    return { key: `let ${name}`, code: "duplicate-name", range, message: `There is a let '${name}'` };
  }
  if (kind === "override") {
    const { name, range } = statement.name;
    return { key: `let ${name}`, code: "duplicate-name", range, message: `This variant overrides '${name}'` };
  }
  if (kind === "variant" && statement.name !== null) {
    const { name, nameRange } = statement;
    return {
      key: `"${name}"`,
      code: "duplicate-name",
      range: nameRange,
      message: `There is a variant "${name}"`,
    };
  }
  return null;
}

/** What may begin an item: statements in a file, steps in a path, overrides and settings in a variant. */
import type { Analysis } from "../../analysis/analyse.ts";
import { BLOCKS } from "../../language/blocks/blocks.ts";
import { formatQuantity } from "../../language/format-quantity.ts";
import { SETTING_WORDS } from "../../language/parse/parse-setting.ts";
import type { StatementWord } from "../../language/parse/parse-statement.ts";
import { type BlockWord, ONCE_WORDS, STATEMENT_WORDS, STEP_WORDS } from "../../language/vocabulary.ts";
import { settingSnippet } from "../block-help.ts";
import type { Candidate, CompletionKind } from "../completion.ts";
import type { CursorPlace } from "../cursor-place.ts";
import { codeBlock, plainText } from "../markdown.ts";
import { STATEMENT_HELP, STEP_HELP, type StatementHelp } from "../statement-help.ts";
import { insertionOf } from "../template.ts";
import { letComment } from "./name-candidates.ts";
import { limitedFigureCandidates } from "./part-candidates.ts";

const SINGLE: ReadonlySet<string> = new Set<StatementWord>(ONCE_WORDS);

export function itemCandidates(analysis: Analysis, place: CursorPlace): readonly Candidate[] {
  switch (place.block) {
    case "file":
      return statementCandidates(analysis, place);
    case "path":
      return stepCandidates(place);
    case "variant":
      return [...overrideCandidates(analysis, place), ...settingCandidates(place)];
    case "unknown":
      return [];
    default:
      return blockCandidates(place, place.block);
  }
}

function statementCandidates({ source }: Analysis, place: CursorPlace): readonly Candidate[] {
  const { start, end } = place.typed;
  const taken = source.tree.statements
    // The statement whose word is being typed does not stand in its own way.
    .filter(({ keyword }) => keyword.end < start || keyword.start > end)
    .map(({ kind }) => kind);
  const words = STATEMENT_WORDS.filter((word) => !(SINGLE.has(word) && taken.includes(word as never)));
  return words.flatMap((word) => itemSnippets("statement", word, STATEMENT_HELP[word], 0, place.isFree));
}

/** The steps of a path; it starts with `from` and nothing else. */
export function stepCandidates(place: CursorPlace): readonly Candidate[] {
  const isFirst = place.item.length === 0 && place.wordsBefore.length === 0;
  return STEP_WORDS.filter((word) => (word === "from") === isFirst).flatMap((word) =>
    itemSnippets("step", word, STEP_HELP[word], word === "close" ? 2 : 1, place.isFree),
  );
}

/** Lets with another value; those that the variant has already are left out. */
export function overrideCandidates({ design, source }: Analysis, place: CursorPlace): readonly Candidate[] {
  const free = design.lets.filter(({ name }) => !place.wordsBefore.includes(name));
  return free.map((known) => {
    const value = known.value === null ? "12 mm" : formatQuantity(known.value);
    return {
      label: known.name,
      kind: "variant",
      detail: `= ${value}`,
      documentation: plainText(letComment(source, known)),
      ...insertionOf(place.isFree ? `${known.name} = ‹${value}›` : known.name),
      rank: 0,
    };
  });
}

/** The settings of a block, those left out that may stand but once and do, and the figures that it may limit. */
export function blockCandidates(
  { wordsBefore, isFree }: CursorPlace,
  block: BlockWord,
): readonly Candidate[] {
  const { settings, limitExample } = BLOCKS[block];
  const open = settings.filter(({ word, isRepeated }) => isRepeated || !wordsBefore.includes(word));
  const rows = open.flatMap((row) =>
    itemSnippets("option", row.word, { ...row, snippets: [settingSnippet(row)] }, 0, isFree),
  );
  return limitExample === null ? rows : [...rows, ...limitedFigureCandidates(isFree)];
}

export function settingCandidates({ wordsBefore, isFree }: CursorPlace): readonly Candidate[] {
  const words = SETTING_WORDS.filter((word) => !wordsBefore.includes(word));
  return words.flatMap((word) => itemSnippets("statement", word, STATEMENT_HELP[word], 1, isFree));
}

/** The snippets of a word; where something stands behind it already, the word alone. */
function itemSnippets(
  kind: CompletionKind,
  word: string,
  { summary, example, snippets }: StatementHelp,
  rank: number,
  isFree: boolean,
): readonly Candidate[] {
  const documentation = `${summary}\n\n${codeBlock(example)}`;
  const common = { kind, detail: summary, documentation, rank };
  if (!isFree) return [{ ...common, label: word, insertText: word, isSnippet: false }];
  return snippets.map(({ label, template }) => ({ ...common, label, ...insertionOf(template) }));
}

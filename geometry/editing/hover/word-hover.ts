import { wordUnitsAt } from "../../language/characters.ts";
import type { TextRange } from "../../language/text.ts";
import { tokenEnd } from "../../language/tokenize.ts";
import type { Hover } from "../hover.ts";
import { codeBlock } from "../markdown.ts";
import { optionHelp } from "../option-help.ts";
import type { WordHelp } from "../statement-help.ts";

export interface Word {
  readonly text: string;
  readonly range: TextRange;
}

/** The word that an offset stands in or right behind. */
export function wordAt(text: string, offset: number): Word | null {
  let start = offset;
  while (start > 0 && wordUnitsAt(text, start - 1) > 0) start -= 1;
  const end = tokenEnd(text, start, "word");
  return end > start && end >= offset ? { text: text.slice(start, end), range: { start, end } } : null;
}

/** Help for a word that stands inside a statement or step. */
export function wordHover(word: string, range: TextRange): Hover | null {
  const help = optionHelp(word);
  return help && { range, lines: helpLines(word, help) };
}

/** One line of help and an example. */
export function helpLines(word: string, { summary, example }: WordHelp): readonly string[] {
  return [`**${word}**: ${summary}`, codeBlock(example)];
}

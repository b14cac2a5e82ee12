import { variantNames } from "../language/evaluate.ts";
import { createLineIndex, type LineIndex } from "../language/line-index.ts";
import { parse } from "../language/parse.ts";
import type { Problem } from "../language/problem.ts";
import type { SyntaxTree } from "../language/tree.ts";

/** A text, read once: what every later question about it starts from. */
export interface Source {
  readonly text: string;
  readonly tree: SyntaxTree;
  /** What was wrong with the text itself. */
  readonly problems: readonly Problem[];
  readonly lines: LineIndex;
  /** Names of the variants, in file order. */
  readonly variants: readonly string[];
}

/** Room for a bar of ten thousand segments. What is longer is no outline file, and would only cost time. */
export const MOST_CHARACTERS = 600_000;

/** Read a text. Any text gives a source; what is wrong with it stands in `problems`. */
export function readSource(text: string): Source {
  const { tree, problems } = parse(text.slice(0, MOST_CHARACTERS));
  return {
    text,
    tree,
    problems: text.length > MOST_CHARACTERS ? [tooLong(text), ...problems] : problems,
    lines: createLineIndex(text),
    variants: variantNames(tree),
  };
}

function tooLong({ length }: string): Problem {
  return {
    severity: "error",
    code: "too-long",
    message:
      `The text has ${length} characters; only the first ${MOST_CHARACTERS} are read. ` +
      "An outline file is far shorter: is this one?",
    range: { start: MOST_CHARACTERS, end: length },
    fixes: [],
  };
}

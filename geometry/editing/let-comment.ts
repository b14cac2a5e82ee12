import type { TextRange } from "../language/text.ts";

/** What the comment behind a statement on its line says; empty where there is none. */
export function commentBehind(text: string, { end }: TextRange): string {
  const [, comment = ""] =
    /^[^\S\r\n]*#+[^\S\r\n]*([^\r\n]*)/.exec(text.slice(end, end + LONGEST_LOOK)) ?? [];
  return comment.trim();
}

/** Farther behind a statement than this no comment is looked for, so that no line is too long to be quick. */
const LONGEST_LOOK = 1000;

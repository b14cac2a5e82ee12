import { readSource } from "../../analysis/source.ts";
import { REQUIRABLE_FIGURES } from "../../figures/catalogue.ts";
import type { Design } from "../../language/design.ts";
import { evaluate } from "../../language/evaluate.ts";

type LineRead =
  | { readonly design: Design; readonly mistake: null }
  | { readonly design: null; readonly mistake: string };

/**
 * What a line says on its own, so that what a person asks for beside a file is written as in the file: its units, its
 * sums, and the same words on what is wrong.
 */
export function readLine(line: string): LineRead {
  // A comment or a second line would take what follows it out of sight.
  if (/[\r\n#]/.test(line)) return { design: null, mistake: "A single line without a comment is wanted." };
  const source = readSource(line);
  const { design, problems } = evaluate(source.tree, { variant: null, figures: REQUIRABLE_FIGURES });
  // What a whole file would need and a line has not stands at no place of the text.
  const mistake = [...source.problems, ...problems].find(
    ({ severity, range }) => severity === "error" && range.end > range.start,
  );
  return mistake ? { design: null, mistake: mistake.message } : { design, mistake: null };
}

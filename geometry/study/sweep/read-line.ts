import { readSource } from "../../analysis/source.ts";
import { REQUIRABLE_FIGURES } from "../../figures/catalogue.ts";
import type { Design } from "../../language/design.ts";
import { evaluate } from "../../language/evaluate.ts";

/**
 * What a line says on its own, so that what a person asks for beside a file is written as in the file: its units, its
 * sums, and the same words on what is wrong.
 */
export function readLine(line: string): { readonly design: Design; readonly mistake: string | null } {
  const source = readSource(line);
  const { design, problems } = evaluate(source.tree, { variant: null, figures: REQUIRABLE_FIGURES });
  // What a whole file would need and a line has not stands at no place of the text.
  const mistake = [...source.problems, ...problems].find(
    ({ severity, range }) => severity === "error" && range.end > range.start,
  );
  return { design, mistake: mistake?.message ?? null };
}

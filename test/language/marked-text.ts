/** Texts of files in which ⟦ and ⟧ mark the ranges that are to be blamed, in the order in which they start. */
import { evaluate } from "../../geometry/language/evaluate.ts";
import { parse } from "../../geometry/language/parse.ts";
import type { Problem } from "../../geometry/language/problem.ts";
import type { RequirableFigure } from "../../geometry/language/requirable.ts";

/** Figures as the catalogue has them, so that these tests do not move with it. */
const NONE = { length: 0, mass: 0, time: 0, current: 0, angle: 0 };
export const FIGURES: readonly RequirableFigure[] = [
  { name: "mass", dimension: { ...NONE, mass: 1 }, example: "1.6 kg", takesGrade: false, takesSpeed: false },
  {
    name: "balance",
    dimension: { ...NONE, length: 1, time: -1 },
    example: "G40",
    takesGrade: true,
    takesSpeed: false,
  },
  { name: "bite", dimension: { ...NONE, length: 1 }, example: "6 mm", takesGrade: false, takesSpeed: true },
];

/** A file that lacks nothing; a statement of the fragment takes the place of the one of its kind. */
export function completed(fragment: string): string {
  const standard: readonly (readonly [starts: RegExp, text: string])[] = [
    [/^\s*⟦?bar\b/m, 'bar "test"'],
    [/^\s*⟦?thickness\b/m, "thickness 12 mm"],
    [/^\s*⟦?(material|density)\b/m, "material wear_steel_450"],
    [/^\s*⟦?outline\b/m, "outline { from (60 mm, -20 mm) line (60 mm, 20 mm) line (-60 mm, 0 mm) close }"],
    [/^\s*⟦?bore\b/m, "bore 20 mm"],
  ];
  const added = standard.filter(([starts]) => !starts.test(fragment)).map(([, text]) => text);
  return [...added, fragment, ""].join("\n");
}

/** Everything that is wrong with a text and its values, in text order. */
export function problemsOf(text: string, variant: string | null = null): readonly Problem[] {
  const { tree, problems } = parse(text);
  return [...problems, ...evaluate(tree, { variant, figures: FIGURES }).problems];
}

export function designOf(text: string, variant: string | null = null) {
  return evaluate(parse(text).tree, { variant, figures: FIGURES }).design;
}

import type { Problem } from "../problem.ts";
import type { TextRange } from "../text.ts";
import type { Statement, StatementKind, SyntaxTree, VariantStatement } from "../tree.ts";
import { insertLineBelow } from "./lines.ts";
import { doubt, failure, fix } from "./problems.ts";

const BORE = "bore 20 mm";

/** What a bar needs and neither the file nor the chosen variant says. */
export function missingStatements(tree: SyntaxTree, variant: VariantStatement | null): readonly Problem[] {
  const all = [...tree.statements, ...(variant?.body ?? [])];
  const has = (...kinds: readonly StatementKind[]) => all.some(({ kind }) => kinds.includes(kind));
  const outline = all.find(({ kind }) => kind === "outline");
  const problems: Problem[] = [];
  const place = headOf(tree);
  if (outline === undefined) problems.push(noOutline(place));
  if (!has("thickness")) problems.push(noThickness(place));
  if (!has("material", "density")) problems.push(noMaterial(place));
  if (outline !== undefined && !has("bore")) problems.push(noBore(tree, outline));
  return problems;
}

/** Where a file says what it is about: its `bar` line, or its start. */
function headOf(tree: SyntaxTree): TextRange {
  return tree.statements.find(({ kind }) => kind === "bar")?.range ?? { start: 0, end: 0 };
}

function noOutline(place: TextRange): Problem {
  const message = "The bar has no outline; write outline { from (60 mm, 0 mm) … close }.";
  return failure("missing-outline", place, message);
}

function noThickness(place: TextRange): Problem {
  return failure(
    "missing-thickness",
    place,
    "The plate has no thickness; write a line such as thickness 12 mm.",
  );
}

function noMaterial(place: TextRange): Problem {
  const message =
    "Without a material the mass is unknown; write a line such as material wear_steel_450 or density 7850 kg/m^3.";
  return doubt("missing-material", place, message);
}

function noBore({ text }: SyntaxTree, outline: Statement): Problem {
  const message = `The bar has no bore for its axle; write a line such as ${BORE}.`;
  const insert = fix(`Insert '${BORE}'`, [insertLineBelow(text, outline.range, BORE)]);
  return doubt("bore-missing", outline.keyword, message, [insert]);
}

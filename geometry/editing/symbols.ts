import type { Source } from "../analysis/source.ts";
import { isBlock } from "../language/blocks/blocks.ts";
import type { TextRange } from "../language/text.ts";
import type { BlockItem, OverrideStatement, Path, Statement, Step } from "../language/tree.ts";
import { oneLine } from "./markdown.ts";

export type SymbolKind =
  | "bar"
  | "setting"
  | "let"
  | "outline"
  | "step"
  | "hole"
  | "requirement"
  | "variant"
  | "block"
  | "override";

/** One entry of the file's outline view. `selectionRange` lies in `range`, and the children's ranges too. */
export interface DocumentSymbol {
  /** Never empty. */
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly range: TextRange;
  readonly selectionRange: TextRange;
  readonly children: readonly DocumentSymbol[];
}

/** What stands in a file, in text order: statements, with the steps of paths and the overrides of variants inside. */
export function symbols({ text, tree }: Source): readonly DocumentSymbol[] {
  return tree.statements.map((statement) => symbolOf(text, statement));
}

function symbolOf(text: string, statement: Statement): DocumentSymbol {
  const behind = textBehind(text, statement);
  const common = { range: statement.range, selectionRange: statement.keyword, children: [] };
  if (isBlock(statement)) {
    const children = statement.body.map((item) => itemSymbol(text, item));
    return { ...common, name: statement.kind, detail: "", kind: "block", children };
  }
  switch (statement.kind) {
    case "bar":
      return {
        ...common,
        name: statement.name?.trim() || "bar",
        detail: "",
        kind: "bar",
        selectionRange: statement.nameRange,
      };
    case "let":
    case "override":
      return letSymbol(text, statement);
    case "outline": {
      const { symmetry, path } = statement;
      const detail = symmetry === null ? "" : oneLine(text.slice(symmetry.range.start, symmetry.range.end));
      return { ...common, name: "outline", detail, kind: "outline", children: stepSymbols(text, path) };
    }
    case "cutout":
      return {
        ...common,
        name: "cutout",
        detail: "",
        kind: "hole",
        children: stepSymbols(text, statement.path),
      };
    case "bore":
    case "hole":
    case "slot":
      return { ...common, name: statement.kind, detail: behind, kind: "hole" };
    case "hole-ring":
      return { ...common, name: "hole ring", detail: behind.replace(/^ring /, ""), kind: "hole" };
    case "require":
      return { ...common, name: "require", detail: behind, kind: "requirement" };
    case "variant":
      return variantSymbol(text, statement);
    default:
      return { ...common, name: statement.kind, detail: behind, kind: "setting" };
  }
}

function letSymbol(
  text: string,
  statement: Extract<Statement, { kind: "let" }> | OverrideStatement,
): DocumentSymbol {
  const { name, value, range, keyword, kind } = statement;
  return {
    name: name?.name ?? "let",
    detail: value === null ? "" : oneLine(text.slice(value.range.start, value.range.end)),
    kind,
    range,
    selectionRange: name?.range ?? keyword,
    children: [],
  };
}

function variantSymbol(
  text: string,
  { name, nameRange, range, body }: Extract<Statement, { kind: "variant" }>,
): DocumentSymbol {
  return {
    name: name?.trim() || "variant",
    detail: "variant",
    kind: "variant",
    range,
    selectionRange: nameRange,
    children: body.map((statement) => symbolOf(text, statement)),
  };
}

function itemSymbol(text: string, item: BlockItem): DocumentSymbol {
  const { range } = item;
  const word = item.kind === "setting" ? item.keyword : (item.figure?.range ?? range);
  return {
    name: oneLine(text.slice(word.start, word.end)) || item.kind,
    detail: oneLine(text.slice(word.end, range.end)),
    kind: item.kind === "setting" ? "setting" : "requirement",
    range,
    selectionRange: word,
    children: [],
  };
}

function stepSymbols(text: string, path: Path | null): readonly DocumentSymbol[] {
  return (path?.steps ?? []).map((step) => ({
    name: step.kind,
    detail: textBehind(text, step),
    kind: "step",
    range: step.range,
    selectionRange: step.keyword,
    children: [],
  }));
}

function textBehind(text: string, { keyword, range }: Statement | Step): string {
  return oneLine(text.slice(keyword.end, range.end));
}

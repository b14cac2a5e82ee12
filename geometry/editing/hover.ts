import type { Analysis } from "../analysis/analyse.ts";
import type { TextRange } from "../language/text.ts";
import type { Statement } from "../language/tree.ts";
import { nodeAt, type TreeNode } from "../language/tree-walk.ts";
import { isQuiet } from "./cursor-place.ts";
import { blockWordHover } from "./hover/block-hover.ts";
import { materialHover } from "./hover/material-hover.ts";
import { figureHover } from "./hover/require-hover.ts";
import { statementHover } from "./hover/statement-hover.ts";
import { cornerHover, stepHover } from "./hover/step-hover.ts";
import { expressionHover, functionHover, letHover, pointHover } from "./hover/value-hover.ts";
import { wordAt, wordHover } from "./hover/word-hover.ts";
import { createPlaceValues, type PlaceValues } from "./place-values.ts";
import { innermostCorner, innermostStep } from "./tree-path.ts";

/** What is told about a place of the text. */
export interface Hover {
  readonly range: TextRange;
  /** Paragraphs of markdown. */
  readonly lines: readonly string[];
}

/** What hovers are made from: the nodes around the offset, outer ones first, and the values that hold there. */
export interface HoverPlace {
  readonly analysis: Analysis;
  readonly offset: number;
  readonly path: readonly TreeNode[];
  readonly statement: Statement;
  readonly values: PlaceValues;
}

/** What there is to say about the text at an offset; null where there is nothing: in comments and between lines. */
export function hoverAt(analysis: Analysis, offset: number): Hover | null {
  const { text, tree } = analysis.source;
  if (isQuiet(text, offset)) return null;
  const path = nodeAt(tree, offset);
  const statements = path.flatMap((node) => (node.type === "statement" ? [node.node] : []));
  const statement = statements.at(-1);
  const [outer] = statements;
  if (statement === undefined || outer === undefined) return null;
  const place = { analysis, offset, path, statement, values: createPlaceValues(analysis)(outer) };
  return hoverOfPlace(place);
}

function hoverOfPlace(place: HoverPlace): Hover | null {
  const last = place.path.at(-1);
  switch (last?.type) {
    case "name":
      return nameHover(place, last.node);
    case "expression":
    case "unit":
    case "unit-factor":
      return expressionHover(place);
    case "grade":
      return figureHover(place, last.node.range);
    case "point":
      return pointHover(place, last.node) ?? wordOrNothing(place);
    default:
      return wordOrNothing(place);
  }
}

/** A name that is no value: of a let, a function, a material, a figure. */
function nameHover(place: HoverPlace, { name, range }: { readonly name: string; readonly range: TextRange }) {
  const around = place.path.at(-2);
  if (around?.type === "expression") return functionHover(place, name, range);
  switch (place.statement.kind) {
    case "let":
    case "override":
      return letHover(place, name, range);
    case "material":
      return materialHover(place, name, range);
    case "require":
    case "aim":
      return figureHover(place, range);
    default:
      // The figure of a limit in a block.
      return around?.type === "block-item" ? figureHover(place, range) : null;
  }
}

/** A word of the language: of the statement, of a step, or an option in one. */
function wordOrNothing(place: HoverPlace): Hover | null {
  const word = wordAt(place.analysis.source.text, place.offset);
  if (word === null) return null;
  const step = innermostStep(place.path);
  if (step && holds(step.keyword, word.range)) return stepHover(place, step);
  const corner = innermostCorner(place.path);
  if (corner) return cornerHover(place, corner, word.range);
  if (!step && holds(place.statement.keyword, word.range)) return statementHover(place);
  return blockWordHover(place, word) ?? wordHover(word.text, word.range);
}

function holds(outer: TextRange, inner: TextRange): boolean {
  return outer.start <= inner.start && inner.end <= outer.end;
}

/** Values: of expressions, lets, calls and points. */

import type { TextRange } from "../../language/text.ts";
import type {
  Expression,
  LetStatement,
  OverrideStatement,
  PointExpression,
  SyntaxTree,
} from "../../language/tree.ts";
import { angleOf, norm } from "../../outline/vector.ts";
import { functionHelp, PI_HELP } from "../function-help.ts";
import type { Hover, HoverPlace } from "../hover.ts";
import { commentBehind } from "../let-comment.ts";
import { codeBlock, codeText, oneLine, plainText } from "../markdown.ts";
import { innermostExpression } from "../tree-path.ts";
import { angleText, lengthText, placeText, valueText, valueTexts } from "../value-text.ts";
import { writtenPoints } from "../written-points.ts";
import { helpLines } from "./word-hover.ts";

/** The innermost expression at the place: a name with its let, anything else with its value. */
export function expressionHover(place: HoverPlace): Hover | null {
  const expression = innermostExpression(place.path);
  if (expression === null) return null;
  if (expression.kind === "name") return nameHover(place, expression.name, expression.range);
  const quantity = place.values.quantityOf(expression);
  if (quantity === null) return null;
  const written = oneLine(textOf(place, expression.range));
  // A number in its own unit would only be told again.
  const shown = valueTexts(quantity).filter((text) => text !== written);
  if (shown.length === 0) return null;
  return { range: expression.range, lines: [[codeText(written), ...shown].join(" = ")] };
}

function nameHover(place: HoverPlace, name: string, range: TextRange): Hover | null {
  return name === "pi" ? { range, lines: helpLines("pi", PI_HELP) } : letHover(place, name, range);
}

/** A let: its value, where it comes from, its bounds, what the comment behind it says. */
export function letHover({ analysis, values }: HoverPlace, name: string, range: TextRange): Hover | null {
  const { text, tree } = analysis.source;
  const known = values.design.lets.find((candidate) => candidate.name === name);
  const statement = tree.statements.find((candidate) => isLet(candidate, name));
  if (known === undefined || statement?.kind !== "let") return null;
  const { value, bounds } = known;
  const override = overrideOf(tree, values.design.variant, name);
  const lines = [
    value === null ? `${codeText(name)} has no value` : `${codeText(name)} = ${valueText(value)}`,
    codeBlock(oneLine(text.slice(statement.range.start, statement.range.end))),
    override === null
      ? ""
      : `Variant ${codeText(values.design.variant ?? "")}: ${codeText(oneLine(text.slice(override.range.start, override.range.end)))}`,
    bounds === null ? "" : `Bounds: ${valueText(bounds.from)} to ${valueText(bounds.to)}`,
    plainText(commentBehind(text, statement.range)),
  ];
  return { range, lines: lines.filter((line) => line !== "") };
}

function isLet(statement: SyntaxTree["statements"][number], name: string): statement is LetStatement {
  return statement.kind === "let" && statement.name?.name === name;
}

function overrideOf(tree: SyntaxTree, variant: string | null, name: string): OverrideStatement | null {
  const body = tree.statements.find(
    (statement) => statement.kind === "variant" && statement.name === variant,
  );
  if (variant === null || body?.kind !== "variant") return null;
  const found = body.body.find((statement) => statement.kind === "override" && statement.name.name === name);
  return found?.kind === "override" ? found : null;
}

/** A called function: what it gives, and what this call gives. */
export function functionHover(place: HoverPlace, name: string, range: TextRange): Hover | null {
  const help = functionHelp(name);
  const call = innermostExpression(place.path);
  if (help === null || call === null) return null;
  return { range, lines: [...valueLines(place, call), ...helpLines(name, help)] };
}

function valueLines(place: HoverPlace, expression: Expression): readonly string[] {
  const quantity = place.values.quantityOf(expression);
  return quantity === null
    ? []
    : [`${codeText(oneLine(textOf(place, expression.range)))} = ${valueText(quantity)}`];
}

/** A point: where it lies, and how far and in which direction from the spin axis. */
export function pointHover({ analysis }: HoverPlace, point: PointExpression): Hover | null {
  const written = writtenPoints(analysis).find((candidate) => candidate.point === point);
  if (written === undefined) return null;
  const { at } = written;
  const direction = norm(at) === 0 ? "" : ` at ${angleText(angleOf(at))}`;
  return {
    range: point.range,
    lines: [placeText(at), `${lengthText(norm(at))} from the spin axis${direction}`],
  };
}

function textOf({ analysis }: HoverPlace, { start, end }: TextRange): string {
  return analysis.source.text.slice(start, end);
}

import { isBlock } from "../../language/blocks/blocks.ts";
import type { HoleDesign } from "../../language/design.ts";
import type { StatementWord } from "../../language/parse/parse-statement.ts";
import type { Statement } from "../../language/tree.ts";
import type { Outline } from "../../outline/segment.ts";
import { perimeterOf } from "../../outline/segment-geometry.ts";
import { angleOf, distance, norm, ORIGIN } from "../../outline/vector.ts";
import { balanceOffer } from "../balance-offer.ts";
import type { Hover, HoverPlace } from "../hover.ts";
import { plainText } from "../markdown.ts";
import { STATEMENT_HELP } from "../statement-help.ts";
import { angleText, lengthText, placeText } from "../value-text.ts";
import { blockLines } from "./block-hover.ts";
import { standingLines } from "./require-hover.ts";
import { helpLines } from "./word-hover.ts";

/** Help for the word of a statement, and what the statement makes of the bar. */
export function statementHover(place: HoverPlace): Hover | null {
  const { statement } = place;
  if (statement.kind === "override") return null;
  const word: StatementWord = statement.kind === "hole-ring" ? "hole" : statement.kind;
  const lines = [...madeLines(place, statement), ...helpLines(word, STATEMENT_HELP[word])];
  return { range: statement.keyword, lines };
}

function madeLines(place: HoverPlace, statement: Statement): readonly string[] {
  const { design, outline } = place.analysis;
  if (isBlock(statement)) return blockLines(place, statement.kind);
  switch (statement.kind) {
    case "bore":
    case "hole":
    case "hole-ring":
    case "slot":
      return holeLines(
        design.holes.filter(({ range }) => range === statement.range || isSame(range, statement.range)),
      );
    case "cutout":
    case "outline":
      return loopLines(outline, statement);
    case "balance":
      return offerLines(place);
    case "require":
      return standingLines(place, statement);
    case "aim":
      return statement.goals.flatMap((goal) => standingLines(place, goal));
    default:
      return [];
  }
}

/** What could be written, worked out for whoever looks. */
function offerLines({ analysis }: HoverPlace): readonly string[] {
  const offer = balanceOffer(analysis, { settings: analysis.assessment.settings });
  return offer === null ? [] : [offer.title, ...(offer.detail === null ? [] : [offer.detail])].map(plainText);
}

function isSame(a: Statement["range"], b: Statement["range"]): boolean {
  return a.start === b.start && a.end === b.end;
}

function holeLines(holes: readonly HoleDesign[]): readonly string[] {
  const [hole] = holes;
  if (hole === undefined || hole.kind === "cutout") return [];
  switch (hole.kind) {
    case "bore":
      return [`Diameter ${lengthText(hole.diameterMm.value)}, on the spin axis`];
    case "hole": {
      const size = lengthText(hole.diameterMm.value);
      const radius = `${lengthText(norm(hole.centre))} from the spin axis`;
      if (holes.length > 1) return [`${holes.length} holes: diameter ${size}, ${radius}`];
      const at = norm(hole.centre) === 0 ? "" : ` at ${angleText(angleOf(hole.centre))}`;
      return [`Diameter ${size}, at ${placeText(hole.centre)}`, `${radius}${at}`];
    }
    case "slot":
      return [
        `Width ${lengthText(hole.widthMm.value)}, length ${lengthText(distance(hole.from, hole.to) + hole.widthMm.value)} over its ends`,
        `${lengthText(slotReach(hole))} from the spin axis to its far end's middle`,
      ];
  }
}

function slotReach({ from, to }: Extract<HoleDesign, { kind: "slot" }>): number {
  return Math.max(distance(from, ORIGIN), distance(to, ORIGIN));
}

function loopLines(outline: Outline | null, { kind, range }: Statement): readonly string[] {
  if (outline === null) return [];
  const loops =
    kind === "outline"
      ? [outline.outer]
      : outline.inner.filter((loop) => loop.kind === "cutout" && isSame(loop.source, range));
  return loops.map((loop) => {
    const arcs = loop.segments.filter((segment) => segment.kind === "arc").length;
    return `${loop.segments.length - arcs} lines and ${arcs} arcs, ${lengthText(perimeterOf(loop))} around`;
  });
}

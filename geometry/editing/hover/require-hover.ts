/** How a requirement stands: the figure, its value, the limit and the margin. */
import type { Standing } from "../../analysis/judge.ts";
import { standingOf } from "../../analysis/judge.ts";
import { FIGURES } from "../../figures/catalogue.ts";
import { type Presented, presentMeasure } from "../../figures/present.ts";
import type { Requirement } from "../../language/design.ts";
import type { TextRange } from "../../language/text.ts";
import type { RequireStatement } from "../../language/tree.ts";
import type { Hover, HoverPlace } from "../hover.ts";

/** The figure that a requirement is about, and how it stands. */
export function figureHover(place: HoverPlace, range: TextRange): Hover | null {
  const { statement } = place;
  if (statement.kind !== "require") return null;
  const figure = FIGURES.find(({ requirable }) => requirable?.name === statement.figure?.name);
  if (figure === undefined) return null;
  return { range, lines: [`**${figure.label}**: ${figure.meaning}`, ...standingLines(place, statement)] };
}

/** One line on how a requirement stands in the analysed variant; none where that says nothing of it. */
export function standingLines({ analysis }: HoverPlace, { range }: RequireStatement): readonly string[] {
  const requirement = analysis.design.requirements.find(
    (candidate) => candidate.range.start === range.start && candidate.range.end === range.end,
  );
  if (requirement === undefined) return [];
  const standing = standingOf(requirement, analysis.assessment);
  return standing === null ? [] : [standingLine(requirement, standing)];
}

function standingLine(requirement: Requirement, { figure, value, limit, holds, margin }: Standing): string {
  const measure = requirement.atMPerS === null ? (figure.measure ?? "count") : "length";
  const show = (amount: number) => joined(presentMeasure(measure, amount, "mm"));
  const side = requirement.relation === "<=" ? "at most" : "at least";
  if (value === null || margin === null) return `Not known yet; required: ${side} ${show(limit)}.`;
  const amiss = `${show(Math.abs(margin))} ${holds ? "to spare" : "amiss"}`;
  return `${holds ? "Holds" : "**Fails**"}: ${show(value)}, required ${side} ${show(limit)}, ${amiss}.`;
}

function joined({ text, unit }: Presented): string {
  return unit === "" ? text : `${text} ${unit}`;
}

/** How a requirement stands: the figure, its value, the limit and the margin. */
import type { Standing } from "../../analysis/judge.ts";
import { requiredValue, standingOf } from "../../analysis/judge.ts";
import { FIGURES } from "../../figures/catalogue.ts";
import { type Presented, presentMeasure } from "../../figures/present.ts";
import type { Goal, Requirement } from "../../language/design.ts";
import type { TextRange } from "../../language/text.ts";
import type { AimGoal, FigureLimit } from "../../language/tree.ts";
import type { Hover, HoverPlace } from "../hover.ts";

/** The figure that a requirement, or a goal or limit of an aim, is about, and how it stands. */
export function figureHover(place: HoverPlace, range: TextRange): Hover | null {
  const stated = statedAt(place);
  const figure = FIGURES.find(({ requirable }) => requirable?.name === stated?.figure?.name);
  if (figure === undefined || stated === null) return null;
  return { range, lines: [`**${figure.label}**: ${figure.meaning}`, ...standingLines(place, stated)] };
}

/** What is said of a figure at the place of the hover. */
function statedAt({ statement, offset, path }: HoverPlace): FigureLimit | AimGoal | null {
  if (statement.kind === "require") return statement;
  const item = path.find((node) => node.type === "block-item")?.node;
  if (item?.kind === "limit") return item;
  if (statement.kind !== "aim") return null;
  const all = [...statement.goals, ...statement.limits];
  return all.find(({ range }) => range.start <= offset && offset <= range.end) ?? null;
}

/** One line on how a requirement, limit or goal stands in the analysed variant; none where that says nothing of it. */
export function standingLines(
  { analysis }: HoverPlace,
  { range }: Pick<FigureLimit, "range">,
): readonly string[] {
  const { requirements, aim, event } = analysis.design;
  const isIt = (other: { readonly range: TextRange }) =>
    other.range.start === range.start && other.range.end === range.end;
  const requirement = [...requirements, ...(event?.limits ?? []), ...(aim?.keeping ?? [])].find(isIt);
  const standing = requirement && standingOf(requirement, analysis.assessment);
  if (requirement && standing) return [standingLine(requirement, standing)];
  const goal = aim?.goals.find(isIt);
  return goal === undefined ? [] : [goalLine(goal, analysis)];
}

function goalLine({ figure: name, atMPerS }: Goal, { assessment }: HoverPlace["analysis"]): string {
  const figure = FIGURES.find(({ requirable }) => requirable?.name === name);
  const value = figure === undefined ? null : requiredValue(figure, atMPerS, assessment);
  const measure = atMPerS === null ? (figure?.measure ?? "count") : "length";
  return value === null ? "Not known yet." : `Now ${joined(presentMeasure(measure, value, "mm"))}.`;
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

import type { Analysis } from "../../geometry/analysis/analyse.ts";
import { presentMeasure, type UnitSystem } from "../../geometry/figures/present.ts";
import { join, type ReportSummary, summaryOf } from "../../geometry/files/report.ts";
import type { InnerLoop, Outline } from "../../geometry/outline/segment.ts";

/**
 * A bar in words, for those who do not see the drawing: name, plate, size, shape, mass, balance with its heavy side,
 * speed and bite. What is not known is left out.
 */
export function describe(
  analysis: Analysis,
  system: UnitSystem,
  report: ReportSummary = summaryOf(analysis, system),
): string {
  const sentences = [
    titleSentence(report),
    sizeSentence(report),
    analysis.outline ? shapeSentence(analysis.outline) : null,
    holesSentence(analysis.outline, system),
    massSentence(report),
    balanceSentence(analysis, report),
    speedSentence(report),
    biteSentence(analysis, report, system),
  ];
  return sentences.filter((sentence) => sentence !== null).join(" ");
}

function titleSentence({ title, variant, subtitle }: ReportSummary): string {
  const name = variant === null ? title : `${title}, variant ${variant}`;
  return subtitle === "" ? `${name}.` : `${name}: ${subtitle}.`;
}

function sizeSentence(report: ReportSummary): string | null {
  const extent = figureText(report, "boundsMm");
  const reach = figureText(report, "maxRadiusMm");
  if (extent === null) return null;
  return reach === null
    ? `It measures ${extent}.`
    : `It measures ${extent} and reaches ${reach} from the spin axis.`;
}

function shapeSentence({ outer }: Outline): string {
  const arcs = outer.segments.filter(({ kind }) => kind === "arc").length;
  const lines = outer.segments.length - arcs;
  return `Its outline has ${counted(lines, "line", "lines")} and ${counted(arcs, "arc", "arcs")}.`;
}

function holesSentence(outline: Outline | null, system: UnitSystem): string | null {
  if (!outline || outline.inner.length === 0) return null;
  const bore = outline.inner.find(({ kind }) => kind === "bore");
  const others = (["hole", "slot", "cutout"] as const)
    .map((kind) => [kind, outline.inner.filter((loop) => loop.kind === kind).length] as const)
    .filter(([, count]) => count > 0)
    .map(([kind, count]) => counted(count, kind, `${kind}s`));
  const parts = [bore ? boreText(bore, system) : "no bore", ...others];
  return `It has ${listed(parts)}.`;
}

function boreText({ segments }: InnerLoop, system: UnitSystem): string {
  const circle = segments[0];
  if (circle?.kind !== "arc") return "a bore";
  return `a bore of ${join(presentMeasure("length", 2 * circle.radiusMm, system))}`;
}

function massSentence(report: ReportSummary): string | null {
  const mass = figureText(report, "massKg");
  return mass === null ? null : `Mass ${mass}.`;
}

function balanceSentence({ assessment }: Analysis, report: ReportSummary): string | null {
  const { mass } = assessment;
  if (!mass) return null;
  if (mass.imbalanceDeg === null) return "It is balanced.";
  const grade = figureText(report, "balanceGrade");
  const imbalance = figureText(report, "imbalanceGMm");
  const side = figureText(report, "imbalanceDeg");
  return `${grade === null ? "" : `Balance ${grade}: `}imbalance ${imbalance ?? "not known"}, heavy side at ${side ?? "no side"}.`;
}

function speedSentence(report: ReportSummary): string | null {
  const speed = figureText(report, "tipSpeedMPerS");
  const energy = figureText(report, "energyJ");
  if (speed === null) return null;
  return energy === null ? `Tip speed ${speed}.` : `Tip speed ${speed}, energy ${energy}.`;
}

function biteSentence({ assessment }: Analysis, report: ReportSummary, system: UnitSystem): string | null {
  const { bite } = assessment;
  const last = bite?.curve.at(-1);
  if (!bite || !last) return null;
  const clean = figureText(report, "cleanBiteMPerS");
  const speed = join(presentMeasure("speed", last.closingMPerS, system));
  const depth = join(presentMeasure("length", Math.round(last.maxMm * 100) / 100, system));
  const deepest = `Deepest bite ${depth} at ${speed}.`;
  return clean === null ? deepest : `Clean bite up to ${clean}. ${deepest}`;
}

/** A figure of the report as text, with a hyphen-free degree sign; `null` where it is not known. */
function figureText({ sections }: ReportSummary, key: string): string | null {
  const row = sections.flatMap(({ rows }) => rows).find((candidate) => candidate.key === key);
  return row === undefined || row.value.text === "–" ? null : join(row.value);
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

function listed(parts: readonly string[]): string {
  const last = parts.at(-1) ?? "";
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(", ")} and ${last}`;
}

import type { Analysis } from "../analysis/analyse.ts";
import { isObstacle } from "../analysis/judgements.ts";
import type { UnitSystem } from "../figures/present.ts";
import type { Outline } from "../outline/segment.ts";
import { toBiteCsv } from "./bite-csv.ts";
import { toDxf } from "./dxf.ts";
import { analysisJson } from "./json.ts";
import { toMarkdown } from "./markdown.ts";
import { toSvg } from "./svg.ts";
import { verifyCut } from "./verify-cut.ts";

export const CUT_FORMATS = ["dxf", "svg", "csv", "json", "md"] as const;
export type CutFormat = (typeof CUT_FORMATS)[number];

export interface ExportOptions {
  readonly release: "2000" | "r12";
  readonly units: UnitSystem;
}

export type ExportResult =
  | { readonly ok: true; readonly content: string; readonly summary: string }
  | { readonly ok: false; readonly reason: string };

/**
 * The content of a file in one of the formats. A cut file is refused while the text, its values or its outline have
 * errors; a requirement that fails is the builder's decision and does not stop it.
 */
export function exportFile(analysis: Analysis, format: CutFormat, options: ExportOptions): ExportResult {
  switch (format) {
    case "json":
      return {
        ok: true,
        content: `${JSON.stringify(analysisJson(analysis), null, 2)}\n`,
        summary: "every number",
      };
    case "md":
      return { ok: true, content: toMarkdown(analysis, options.units), summary: "a report to print" };
    case "csv":
      return biteCsv(analysis);
    default:
      return cutFile(analysis, format, options);
  }
}

function biteCsv({ assessment }: Analysis): ExportResult {
  const curve = assessment.bite?.curve;
  if (!curve) return { ok: false, reason: "the bite could not be computed." };
  return { ok: true, content: toBiteCsv(curve), summary: `the bite at ${curve.length} closing speeds` };
}

function cutFile(analysis: Analysis, format: "dxf" | "svg", options: ExportOptions): ExportResult {
  const { outline } = analysis;
  const reason = whyNotCut(analysis);
  if (reason !== null || !outline) return { ok: false, reason: reason ?? "there is no outline." };
  const name = partName(analysis);
  const size = sizeOf(analysis, options.units);
  if (format === "svg")
    return { ok: true, content: toSvg(outline, { units: options.units, name }), summary: size };
  return dxfFile(outline, name, size, options);
}

function dxfFile(outline: Outline, name: string, size: string, options: ExportOptions): ExportResult {
  const content = toDxf(outline, { ...options, name });
  const faults = verifyCut(outline, content, options.units);
  if (faults.length > 0)
    return { ok: false, reason: `the file did not pass its own check: ${faults.join("; ")}.` };
  return { ok: true, content, summary: `${size}, checked: closed, area as drawn` };
}

function whyNotCut({ problems, source }: Analysis): string | null {
  const error = problems.find(isObstacle);
  return error ? `line ${source.lines.position(error.range.start).line}: ${error.message}` : null;
}

function partName({ design, variant }: Analysis): string {
  const name = design.name ?? "bar";
  return variant === null ? name : `${name} - ${variant}`;
}

function sizeOf({ assessment, outline }: Analysis, units: UnitSystem): string {
  const [x0, y0, x1, y1] = assessment.section?.boundsMm ?? [0, 0, 0, 0];
  const perUnit = units === "mm" ? 1 : 25.4;
  const side = (mm: number) => (mm / perUnit).toFixed(units === "mm" ? 1 : 3);
  const loops = 1 + (outline?.inner.length ?? 0);
  return `${side(x1 - x0)} × ${side(y1 - y0)} ${units}, ${loops} ${loops === 1 ? "loop" : "loops"}`;
}

/** Views of real texts, the way the host makes them. */
import { readdirSync, readFileSync } from "node:fs";
import { type LastGood, type ViewOutput, viewOf } from "../../extension/preview/model.ts";
import { type Analysis, analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";

export function sampleNames(): string[] {
  return readdirSync(new URL("../../samples", import.meta.url))
    .filter((name) => name.endsWith(".bar"))
    .map((name) => name.slice(0, -4));
}

export function sampleText(name: string): string {
  return readFileSync(new URL(`../../samples/${name}.bar`, import.meta.url), "utf8");
}

/** A short curve: what is asked of the view does not hang on how long it is. */
const FEW_SPEEDS = { biteSpeeds: 8 };

export interface ShownText {
  readonly chosen: Analysis;
  readonly output: ViewOutput;
}

export function showText(
  text: string,
  {
    variant = null,
    lastGood = null,
    version = 1,
  }: {
    variant?: string | null;
    lastGood?: LastGood | null;
    version?: number;
  } = {},
): ShownText {
  const source = readSource(text);
  const analyses = [null, ...source.variants].map((name) =>
    analyse(source, { variant: name, settings: FEW_SPEEDS }),
  );
  const chosen =
    analyses.find((analysis) => analysis.variant === variant) ??
    analyse(source, { variant, settings: FEW_SPEEDS });
  const output = viewOf({
    chosen,
    others: analyses,
    version,
    documentUri: "file:///arena/sample.bar",
    fileName: "sample.bar",
    lastGood,
  });
  return { chosen, output };
}

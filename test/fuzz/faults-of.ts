/** What must hold for any text whatever, from the text to every file and face that is made of it. */
import { isHostMessage } from "../../extension/preview/messages.ts";
import { viewOf } from "../../extension/preview/model.ts";
import { type Analysis, analyse, checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { exportFile } from "../../geometry/files/export.ts";
import { analysisJson } from "../../geometry/files/json.ts";
import { toMarkdown } from "../../geometry/files/markdown.ts";
import { verifyCut } from "../../geometry/files/verify-cut.ts";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { format } from "../../geometry/language/format.ts";
import type { Problem } from "../../geometry/language/problem.ts";

/** A text that takes longer than this holds up whoever types it. */
const MOST_MS = 10_000;

/**
 * Sends a text through all of the tool. No fault, an empty list, is what is expected: nothing throws, every number that
 * is told is finite, every problem stands within the text, every fix can be made, layout settles, and a cut file that is
 * handed out is the outline.
 */
export function faultsOf(text: string): readonly string[] {
  const begun = performance.now();
  const faults: string[] = [];
  const check = (holds: boolean, fault: string) => {
    if (!holds) faults.push(fault);
  };
  const attempt = (name: string, run: () => void) => {
    try {
      run();
    } catch (error) {
      faults.push(`${name} threw ${error instanceof Error ? error.stack : String(error)}`);
    }
  };
  attempt("layout", () => {
    const once = format(text);
    check(format(once) === once, "a second layout changes the first");
  });
  attempt("the checks", () => {
    const source = readSource(text);
    for (const problem of checkSource(source)) checkProblem(problem, text, check);
    for (const variant of [null, ...source.variants.slice(0, 3)])
      checkAnalysis(analyse(source, { variant }), check);
  });
  const elapsed = performance.now() - begun;
  check(elapsed < MOST_MS, `it took ${elapsed.toFixed(0)} ms`);
  return faults;
}

type Check = (holds: boolean, fault: string) => void;

function checkProblem({ code, range, fixes, message }: Problem, text: string, check: Check): void {
  const isWithin = 0 <= range.start && range.start <= range.end && range.end <= text.length;
  check(isWithin, `${code} stands at ${range.start} to ${range.end} of ${text.length}`);
  const slips = ["undefined", "NaN", "Infinity", "[object"].filter((slip) => !text.includes(slip));
  check(message !== "" && !slips.some((slip) => message.includes(slip)), `${code} says: ${message}`);
  for (const { edits } of fixes) applyEdits(text, edits);
}

function checkAnalysis(analysis: Analysis, check: Check): void {
  const json = analysisJson(analysis);
  check(allFinite(json), "the JSON holds a number that is not finite");
  check(JSON.stringify(json) === JSON.stringify(analysisJson(analysis)), "the JSON is not the same twice");
  for (const units of ["mm", "in"] as const)
    for (const slip of ["NaN", "Infinity", "undefined"])
      check(
        analysis.source.text.includes(slip) || !toMarkdown(analysis, units).includes(slip),
        `the report in ${units} says ${slip}`,
      );
  const { view } = viewOf({
    chosen: analysis,
    others: [],
    version: 1,
    documentUri: "file:///any.bar",
    fileName: "any.bar",
    lastGood: null,
  });
  check(isHostMessage({ type: "view", view, units: "mm" }), "the preview would refuse its view");
  const cut = exportFile(analysis, "dxf", { release: "2000", units: "mm" });
  const hasErrors = analysis.problems.some(({ severity, code }) => severity === "error" && !JUDGED.has(code));
  check(!(cut.ok && hasErrors), "a cut file was made of a file with errors");
  if (cut.ok && analysis.outline)
    for (const fault of verifyCut(analysis.outline, cut.content, "mm"))
      check(false, `the cut file: ${fault}`);
}

/** Errors that say that a bar is not good enough, not that it is no bar. */
const JUDGED: ReadonlySet<string> = new Set(["require-failed", "mass-over-class", "imbalance-over-grade"]);

function allFinite(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  return typeof value === "object" && value !== null ? Object.values(value).every(allFinite) : true;
}

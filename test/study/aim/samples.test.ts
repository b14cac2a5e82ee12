/** Aims on the samples, beside a search at random that may measure three times as many bars. */
import { describe, expect, it } from "vitest";
import { analyse, checkSource } from "../../../geometry/analysis/analyse.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import { applyEdits } from "../../../geometry/language/apply-edits.ts";
import { aimAt } from "../../../geometry/study/aim/aim.ts";
import { MOVED_SAMPLES } from "./moved-samples.ts";
import { randomSearch } from "./random-search.ts";

const TIMES = 3;

describe.each(MOVED_SAMPLES)("$file: $aim", ({ text, aim }) => {
  it("is better than what random places give, and right in the changed text", { timeout: 120_000 }, () => {
    const outcome = aimAt(readSource(text), { aim, effort: "quick" });
    if (outcome.status !== "found") throw new Error(`${outcome.status}: ${outcome.message}`);
    const [bar] = outcome.bars;
    const [goal] = bar?.goals ?? [];
    if (bar === undefined || goal?.after == null) throw new Error("no bar");
    const random = randomSearch(text, aim, TIMES * outcome.evaluations);
    if (random.goal !== null) {
      if (goal.sense === "most") expect(goal.after).toBeGreaterThan(random.goal);
      else expect(goal.after).toBeLessThan(random.goal);
    }
    const before = readSource(text);
    const changed = readSource(applyEdits(text, bar.edits));
    const errors = (source: typeof changed) =>
      checkSource(source).filter(({ severity }) => severity === "error");
    expect(errors(changed).length).toBeLessThanOrEqual(errors(before).length);
    expect(analyse(changed).figures).toEqual(bar.analysis.figures);
    expect(bar.limits.every(({ holds }) => holds)).toBe(true);
  });
});

import { describe, expect, it } from "vitest";
import { analyse, checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { newBarTemplates } from "../../geometry/editing/editing.ts";
import { format } from "../../geometry/language/format.ts";
import { sliceOf } from "./cursor-text.ts";

describe.each(newBarTemplates)("the bar to start from with id $id", ({ text, nameRange, title, summary }) => {
  it("has no error and no warning, in no variant", () => {
    const problems = checkSource(readSource(text));
    expect(problems.filter(({ severity }) => severity !== "information")).toEqual([]);
  });

  it("has every figure", () => {
    const { figures } = analyse(readSource(text));
    for (const [group, key] of [
      ["mass", "balanceGrade"],
      ["spin", "tipSpeedMPerS"],
      ["bite", "cleanBiteMPerS"],
    ] as const) {
      expect(figures[group][key], key).toBeTypeOf("number");
    }
  });

  it("is laid out as the formatter would, and says where its name stands", () => {
    expect(format(text)).toBe(text);
    expect(sliceOf(text, nameRange)).toBe("New bar");
    expect(readSource(text).tree.statements[0]).toMatchObject({ kind: "bar", name: "New bar" });
  });

  it("is described", () => {
    expect(title.length * summary.length).toBeGreaterThan(0);
  });
});

it("there are several, each with its own id", () => {
  expect(new Set(newBarTemplates.map(({ id }) => id)).size).toBeGreaterThanOrEqual(3);
});

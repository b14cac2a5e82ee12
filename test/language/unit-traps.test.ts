/** Ways of writing a value that a units library takes for something else, throws at, or reads without a word. */
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { completed, designOf, problemsOf } from "./marked-text.ts";

const targetOf = (value: string) => designOf(completed(`target edge offset ${value}`)).target.offsetMm;
const codesOf = (value: string) =>
  problemsOf(completed(`target edge offset ${value}`)).map(({ code }) => code);

/** The text with the first fix of every problem made, one after the other. */
function mended(text: string): string {
  const fix = problemsOf(text)[0]?.fixes[0];
  return fix === undefined ? text : mended(applyEdits(text, fix.edits));
}

describe("the traps", () => {
  it("5 Mm is no megametre", () => {
    expect(codesOf("5 Mm")).toEqual(["unknown-unit"]);
    expect(mended(completed("target edge offset 5 Mm"))).toContain("offset 5 mm");
  });
  it("sin(30) is not the sine of 30 radians", () => {
    expect(codesOf("1 mm * sin(30)")).toEqual(["wrong-unit"]);
    expect(targetOf("1 mm * sin(30 deg)")).toBeCloseTo(0.5, 15);
    expect(targetOf("1 mm * sin(30 rad)")).toBe(Math.sin(30));
  });
  it("5 is no length", () => {
    expect(codesOf("5")).toEqual(["missing-unit"]);
  });
  it("1/4 in is no quarter of an inch, and the fix makes it one", () => {
    expect(codesOf("1/4 in")).toEqual(["wrong-unit"]);
    expect(designOf(mended(completed("target edge offset 1/4 in"))).target.offsetMm).toBe(6.35);
    expect(targetOf("(1/4) in")).toBe(6.35);
  });
  it("2 min is two minutes, and min(…) the least", () => {
    expect(targetOf("2 min * 1 mm / 1 s")).toBe(120);
    expect(targetOf("min(2 mm, 1 mm)")).toBe(1);
  });
  it.each([
    ["3 mm * cos(60°)", 1.5],
    ["250 µm", 0.25],
    ["1,5 mm", 1.5],
  ])("%s is told to be written plainly, and mended", (value, millimetres) => {
    expect(problemsOf(completed(`target edge offset ${value}`))).toHaveLength(1);
    const text = mended(completed(`target edge offset ${value}`));
    expect(problemsOf(text)).toEqual([]);
    expect(designOf(text).target.offsetMm).toBeCloseTo(millimetres, 15);
  });
  it("thou, mph, rpm and turn are units", () => {
    expect(targetOf("500 thou")).toBe(12.7);
    expect(targetOf("10 mph * 1 s")).toBe(4470.4);
    expect(targetOf("60 rpm * 1 s * 1 mm")).toBeCloseTo(2 * Math.PI, 14);
    expect(targetOf("1 turn * 1 mm")).toBe(2 * Math.PI);
  });
  it("5 mm + 3 gets a builder's message", () => {
    const [problem] = problemsOf(completed("target edge offset 5 mm + 3"));
    expect(problem?.message).toBe(
      "Both sides of '+' have to be of one kind, here a length such as 12 mm, but '3' has no unit.",
    );
  });
  it("½·I·ω² is an energy", () => {
    const text = completed(
      "let I = 0.02 kg*m^2\nlet e = 1/2 * I * (4200 rpm)^2\nrequire mass >= 0 kg * (e / 1 J)",
    );
    expect(problemsOf(text)).toEqual([]);
    const omega = (4200 * 2 * Math.PI) / 60;
    const energy = designOf(text).lets[1]?.value?.value ?? Number.NaN;
    expect(Math.abs(energy / (0.01 * omega ** 2 * 1e6) - 1)).toBeLessThan(1e-14);
  });
  it("a spin is not a number per second", () => {
    expect(problemsOf(completed("spin 70 / (1 s) ccw")).map(({ code }) => code)).toEqual(["wrong-unit"]);
  });
});

describe("fixes that may be made unseen", () => {
  it("are those that cannot be meant otherwise", () => {
    const safe = (value: string) =>
      problemsOf(completed(`target edge offset ${value}`)).flatMap(({ fixes }) =>
        fixes.map((fix) => fix.safe),
      );
    expect(safe("0")).toEqual([true]);
    expect(safe("1/4 in")).toEqual([true]);
    expect(safe("12")).toEqual([false]);
    expect(safe("3 kg")).toEqual([false]);
  });
});

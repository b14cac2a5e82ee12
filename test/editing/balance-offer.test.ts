/** `balance by` in the editor: its names, and what it offers. */
import { describe, expect, it } from "vitest";
import { analyse, checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import {
  balanceFixes,
  balanceOffer,
  balancePlace,
  completionsAt,
  definitionAt,
  hoverAt,
  referencesAt,
  renameEdits,
  semanticTokens,
} from "../../geometry/editing/editing.ts";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { format } from "../../geometry/language/format.ts";
import { SAMPLES } from "../samples/samples.ts";
import { syntheticBar } from "../support/synthetic-bar.ts";

const SAMPLE = SAMPLES.find(({ file }) => file.startsWith("brass-limpet"))?.text ?? "";
const BALANCED = `${SAMPLE.replace(/^balance .*\n/m, "")}balance by tail, lower\n`;
const OFF = BALANCED.replace("let tail = 89.77 mm", "let tail = 70 mm");

function offerOf(text: string) {
  return balanceOffer(analyse(readSource(text)));
}

function fixesOf(text: string) {
  const source = readSource(text);
  const problem = checkSource(source).find(({ code }) => code === "imbalance-over-grade");
  if (!problem) throw new Error("no problem of the balance");
  return balanceFixes(source, problem, (variant) => analyse(source, { variant }));
}

function gradeOf(text: string, variant: string | null = null): number {
  return Number(analyse(readSource(text), { variant }).figures.mass["balanceGrade"]);
}

describe("the offer at balance by", () => {
  it("says what would change, stands at the statement and balances the bar", () => {
    const offer = offerOf(OFF);
    expect(offer?.title).toMatch(/^Balance: tail 70 mm → 89\.\d+ mm, lower .+ \(G\d+ → G[\d.]+\)$/);
    expect(OFF.slice(offer?.range.start, offer?.range.end)).toBe("balance by tail, lower");
    expect(balancePlace(analyse(readSource(OFF)))).toEqual(offer?.range);
    expect(gradeOf(applyEdits(OFF, offer?.edits ?? []))).toBeLessThan(6.3);
  });

  it("says so where there is nothing to do", () => {
    const done = applyEdits(OFF, offerOf(OFF)?.edits ?? []);
    expect(offerOf(done)).toMatchObject({ edits: [], detail: null });
    expect(offerOf(done)?.title).toMatch(/^Balanced by tail, lower: G[\d.]+$/);
  });

  it("says why not", () => {
    const offer = offerOf(
      OFF.replace("balance by tail, lower", "balance by tail").replace("100 mm", "80 mm"),
    );
    expect(offer).toMatchObject({ title: "Not balanced by tail", edits: [] });
    expect(offer?.detail).toContain("'tail' is at its bound of 80 mm");
  });

  it("is none without the statement, and takes no search in a long outline", () => {
    expect(offerOf(SAMPLE.replace(/^balance .*\n/m, ""))).toBeNull();
    const long = `${syntheticBar(1000)}balance by tip\n`;
    expect(offerOf(long)).toMatchObject({ edits: [] });
    expect(offerOf(long)?.title).toContain("barwright balance");
  });
});

describe("the fixes of an imbalance", () => {
  it("are one that balances the bar, told with its values", () => {
    const [fix, ...more] = fixesOf(OFF);
    expect(more).toEqual([]);
    expect(fix?.title).toMatch(/^Balance by tail, lower: tail = [\d.]+ mm, lower = [\d.]+ mm$/);
    expect(fix?.safe).toBe(false);
    const mended = checkSource(readSource(applyEdits(OFF, fix?.edits ?? [])));
    expect(mended.filter(({ code }) => code === "imbalance-over-grade")).toEqual([]);
  });

  it("are of a variant where only that is off balance, and leave the bar alone", () => {
    const text = `${BALANCED}variant "long" { reach = 130 mm }\n`;
    const [fix] = fixesOf(text);
    expect(fix?.title).toMatch(/^Balance "long" by tail, lower: tail = /);
    const mended = applyEdits(text, fix?.edits ?? []);
    expect(gradeOf(mended, "long")).toBeLessThan(6.3);
    expect(gradeOf(mended)).toBe(gradeOf(text));
  });

  it("are none without the statement, and where the lets cannot do it", () => {
    expect(fixesOf(OFF.replace("balance by tail, lower\n", ""))).toEqual([]);
    expect(fixesOf(OFF.replace("balance by tail, lower", "balance by waist"))).toEqual([]);
  });
});

describe("the names of balance by", () => {
  it("have to be lets: the nearest is offered", () => {
    const { problems, design } = analyse(readSource(BALANCED.replace("by tail, lower", "by tial, lower")));
    expect(design.balance).toBeNull();
    const errors = problems.filter(({ severity }) => severity === "error");
    expect(errors.map(({ code, message }) => [code, message])).toEqual([
      ["undefined-name", "No let defines 'tial'; did you mean tail?"],
    ]);
    expect(errors[0]?.fixes[0]?.edits[0]?.newText).toBe("tail");
  });

  it.each([
    ["tail, lower, waist", "out-of-range", "the first two count"],
    ["tail, tail", "duplicate-name", "stands here already"],
  ])("are one or two: not %s", (names, code, words) => {
    const text = BALANCED.replace("by tail, lower", `by ${names}`);
    const [problem] = analyse(readSource(text)).problems.filter((found) => found.code === code);
    expect(problem?.message).toContain(words);
    const mended = applyEdits(text, problem?.fixes[0]?.edits ?? []);
    expect(analyse(readSource(mended)).problems.filter((found) => found.code === code)).toEqual([]);
  });

  it("stand once in a file", () => {
    const { problems } = analyse(readSource(`${BALANCED}balance by upper\n`));
    const errors = problems.filter(({ severity }) => severity === "error");
    expect(errors.map(({ code }) => code)).toEqual(["duplicate-statement"]);
  });

  it("use their lets: followed, found, renamed and coloured as everywhere", () => {
    const source = readSource(BALANCED);
    const at = BALANCED.indexOf("tail, lower");
    const declared = BALANCED.indexOf("tail = ");
    expect(definitionAt(source, at)?.name.start).toBe(declared);
    const uses = referencesAt(source, declared, { includeDeclaration: false });
    expect(uses.some(({ start }) => start === at)).toBe(true);
    const renamed = renameEdits(source, at, "counter");
    if ("refused" in renamed) throw new Error(renamed.refused);
    expect(applyEdits(BALANCED, renamed.edits)).toContain("balance by counter, lower");
    const colours = semanticTokens(source).filter(({ range }) => range.start >= at - "balance by ".length);
    expect(colours.map(({ type }) => type)).toEqual(["keyword", "keyword", "variable", "variable"]);
    const lonely = 'bar "x"\nlet spare = 3 mm\nbalance by spare\n';
    expect(analyse(readSource(lonely)).problems.map(({ code }) => code)).not.toContain("unused-name");
  });

  it("are completed: lets only, each once", () => {
    const labels = (line: string) => {
      const text = BALANCED.replace("balance by tail, lower\n", line);
      return completionsAt(analyse(readSource(text)), text.length).map(({ label }) => label);
    };
    const lets = ["reach", "face", "waist", "tail", "upper", "lower"];
    expect(labels("balance by ")).toEqual(lets);
    expect(labels("balance by tail, ")).toEqual(lets.filter((name) => name !== "tail"));
    expect(labels("bala")).toContain("balance by");
    expect(labels("balance ")).toContain("by");
  });

  it("are told of where one points: what could be written", () => {
    const hover = hoverAt(analyse(readSource(OFF)), OFF.indexOf("balance by") + 2);
    expect(hover?.lines[0]).toMatch(/^Balance: tail 70 mm → 89/);
    expect(hover?.lines.join(" ")).toContain("bring the centroid to the spin axis");
  });

  it("are laid out in one way", () => {
    expect(format("balance   by tail ,lower # two\n")).toBe("balance by tail, lower   # two\n");
    expect(format(format(OFF))).toBe(format(OFF));
  });
});

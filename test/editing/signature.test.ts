import { describe, expect, it } from "vitest";
import { signatureAt } from "../../geometry/editing/editing.ts";
import { analysisAt, LETS, withCrLf } from "./cursor-text.ts";

/** The label with the active part in ⟦ ⟧. */
function shown(marked: string): string | null {
  const { analysis, offset } = analysisAt(marked);
  const signature = signatureAt(analysis, offset);
  if (signature === null) return null;
  const { label, parameters, active } = signature;
  const part = parameters[active];
  return part === undefined
    ? label
    : `${label.slice(0, part.start)}⟦${label.slice(part.start, part.end)}⟧${label.slice(part.end)}`;
}

const inPath = (line: string) => `${LETS}outline {\n  from (0 mm, 0 mm)\n  ${line}\n}\n`;

describe("parameter help follows", () => {
  it.each([
    ["thickness |", "thickness ⟦length⟧"],
    ["thickness 12| mm", "thickness ⟦length⟧"],
    ["spin 4200 |", "spin ⟦speed⟧ ccw|cw"],
    ["spin 4200 rpm |", "spin speed ⟦ccw|cw⟧"],
    ["spin 4200 rpm ccw |", "spin speed ccw|cw"],
    ["hole |", "hole ⟦(x, y)⟧ diameter d"],
    ["hole (0 mm, 1 mm) |", "hole (x, y) ⟦diameter d⟧"],
    ["hole ring 4 |", "hole ring n ⟦at radius r⟧ diameter d [from angle]"],
    ["hole ring 4 at radius 40 mm diameter 6 mm |", "hole ring n at radius r diameter d ⟦[from angle]⟧"],
    ["slot (0 mm, 0 mm) to (1 mm, 0 mm) |", "slot (x, y) to (x, y) ⟦width w⟧"],
    ["outline |", "outline ⟦{ path }⟧"],
    ["outline repeat |", "outline ⟦repeat n⟧ { path }"],
    ["let tail = 96 mm from |", "let name = value ⟦[from least⟧ to most]"],
    ["approach 1 m/s to |", "approach slowest ⟦to fastest⟧"],
    ["target round |", "target ⟦round r⟧ [offset d]"],
    ["require mass |", "require figure ⟦<=|>=⟧ limit"],
    ["require bite at |", "require figure ⟦at speed⟧ <=|>= limit"],
    [
      "aim |",
      "aim ⟦most|least figure⟧ [and most|least figure] [keeping figure <=|>= limit] by name [, name]",
    ],
    [
      "aim most bite |",
      "aim most|least figure ⟦at speed⟧ [and most|least figure] [keeping figure <=|>= limit] by name [, name]",
    ],
    [
      "aim most mass keeping balance |",
      "aim most|least figure keeping figure ⟦<=|>=⟧ limit [, figure <=|>= limit] by name [, name]",
    ],
    [
      "aim most mass keeping balance <= G16, bite at 3 m/s >= |",
      "aim most|least figure keeping figure <=|>= limit keeping figure at speed <=|>= ⟦limit⟧ [, figure <=|>= limit] by name [, name]",
    ],
    ["aim most mass by tail, |", "aim most|least figure by name ⟦, name⟧ [, name]"],
    ['variant "x" { tail = |', "name = ⟦value⟧"],
  ])("statements: %s", (marked, expected) => {
    expect(shown(marked.replaceAll("c|w", "c|w"))).toBe(expected);
  });

  it.each([
    ["line |", "line ⟦(x, y)⟧ [round r | bevel d]"],
    ["line (reach|, 0 mm)", "line ⟦(x, y)⟧ [round r | bevel d]"],
    ["line (reach, |", "line ⟦(x, y)⟧ [round r | bevel d]"],
    ["line (reach, 0 mm) |", "line (x, y) ⟦[round r | bevel d]⟧"],
    ["line (reach, 0 mm) round |", "line (x, y) ⟦[round r | bevel d]⟧"],
    ["arc (reach, 0 mm) |", "arc (x, y) ⟦radius r⟧ turning left|right [long] [round r | bevel d]"],
    [
      "arc (reach, 0 mm) radius 5 mm |",
      "arc (x, y) radius r ⟦turning left|right⟧ [long] [round r | bevel d]",
    ],
    ["arc (reach, 0 mm) through |", "arc (x, y) ⟦through (x, y)⟧ [round r | bevel d]"],
    [
      "arc (reach, 0 mm) about (0 mm, 0 mm) |",
      "arc (x, y) about (x, y) ⟦turning left|right⟧ [round r | bevel d]",
    ],
    ["spiral (reach @ 20 deg) |", "spiral (x, y) ⟦turning left|right⟧ [round r | bevel d]"],
    ["close |", "close ⟦[round r | bevel d]⟧"],
  ])("steps: %s", (marked, expected) => {
    expect(shown(inPath(marked))).toBe(expected);
    expect(shown(withCrLf(inPath(marked)))).toBe(expected);
  });

  it.each([
    ["let a = atan2(|", "atan2(⟦y⟧, x)"],
    ["let a = atan2(1 mm, |", "atan2(y, ⟦x⟧)"],
    ["let a = atan2((1 mm + |), 2 mm)", "atan2(⟦y⟧, x)"],
    ["let a = min(1 mm, 2 mm, 3 mm, |", "min(a, b, ⟦…⟧)"],
    ["let a = 2 * sin(|30 deg)", "sin(⟦angle⟧)"],
    ["let a = sin(30 deg, |", "sin(angle)"],
    ["thickness max(2 mm, sqrt(|", "sqrt(⟦value⟧)"],
    ["thickness max(2 mm, sqrt(1 mm^2) |", "max(a, ⟦b⟧, …)"],
    ["let a = sin(30 deg) + |", "let name = ⟦value⟧ [from least to most]"],
  ])("calls: %s", (marked, expected) => {
    expect(shown(marked)).toBe(expected);
  });

  it("calls inside points", () => {
    expect(shown(inPath("line (hypot(1 mm, |"))).toBe("hypot(x, ⟦y⟧, …)");
  });

  it("what is known of the word and its parts", () => {
    const { analysis, offset } = analysisAt("hole |");
    const signature = signatureAt(analysis, offset);
    expect(signature?.documentation).toContain("round hole");
    expect(signature?.parameters[1]?.documentation).toBe("The size of the hole.");
  });
});

describe("there is no parameter help", () => {
  it.each([
    "|",
    "thick|",
    "# hole |",
    'bar "a |"',
    "nonsense |",
    "thickness 12 mm\n|",
    "outline { | }",
    "hole hole |",
    "12 |",
  ])("at %s", (marked) => {
    expect(shown(marked)).toBeNull();
  });
});

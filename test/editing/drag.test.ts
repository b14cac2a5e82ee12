/** Handles and moving points. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Analysis, analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { handles, movePoint } from "../../geometry/editing/editing.ts";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import type { Point } from "../../geometry/language/design.ts";
import { LETS, sliceOf, withCrLf } from "./cursor-text.ts";
import { SAMPLES } from "./samples.ts";

/** The steps of a path as a file, and the handles of all its points but the first. */
function pathFile(steps: string, lets = LETS): string {
  return `${lets}outline { from (1 mm, 2 mm) ${steps} }\n`;
}

const analysed = (text: string, variant: string | null = null): Analysis =>
  analyse(readSource(text), { variant });

/** Moves the handle of this text (the first that stands so) and gives the changed lines, or why not. */
function moved(text: string, point: string, to: Point, variant: string | null = null): string {
  const analysis = analysed(text, variant);
  const handle = handles(analysis).find(({ source }) => sliceOf(text, source) === point);
  if (handle === undefined) throw new Error(`no handle at '${point}'`);
  const result = movePoint(analysis, handle.id, to);
  if ("refused" in result) return `refused: ${result.refused}`;
  const before = text.split("\n");
  return applyEdits(text, result.edits)
    .split("\n")
    .filter((line, i) => line !== before[i])
    .join("\n");
}

const movedStep = (point: string, x: number, y: number): string => {
  const [, step = ""] = /\) line (.*) }/.exec(moved(pathFile(`line ${point}`), point, { x, y })) ?? [];
  return step;
};

describe("handles", () => {
  it("are the points of the text in order, with their places", () => {
    const text = `${LETS}outline { from (1 mm, 2 mm) line by (3 mm, 4 mm) arc (reach, 0 mm) through (5 mm, 6 mm) arc (1 mm, 2 mm) about (0 mm, 9 mm) turning left }
hole (7 mm, 8 mm) diameter 2 mm
slot (1 in @ 90 deg) to by (1 mm, 0 mm) width 2 mm
cutout { from (-84 mm, -6 mm) close }
`;
    const found = handles(analysed(text));
    expect(found.map(({ source, at }) => [sliceOf(text, source), at.x, at.y])).toEqual([
      ["(1 mm, 2 mm)", 1, 2],
      ["by (3 mm, 4 mm)", 4, 6],
      ["(reach, 0 mm)", 130, 0],
      ["(5 mm, 6 mm)", 5, 6],
      ["(1 mm, 2 mm)", 1, 2],
      ["(0 mm, 9 mm)", 0, 9],
      ["(7 mm, 8 mm)", 7, 8],
      ["(1 in @ 90 deg)", 0, 25.4],
      ["by (1 mm, 0 mm)", 1, 25.4],
      ["(-84 mm, -6 mm)", -84, -6],
    ]);
    expect(found.map(({ id }) => id)).toEqual(found.map((_, index) => index));
    expect(found.every(({ movesX, movesY }) => movesX && movesY)).toBe(true);
  });

  const canMove = (point: string, lets = LETS): string => {
    const found = handles(analysed(pathFile(`line ${point}`, lets)))[1];
    return `${found?.movesX ? "x" : "-"}${found?.movesY ? "y" : "-"}`;
  };

  it.each([
    ["(reach, 3 mm)", "xy"],
    ["(-reach, +3 mm)", "xy"],
    ["(reach - 3 mm, 2 * waist)", "x-"],
    ["(reach - waist, 3 mm)", "-y"],
    ["(tail, waist / 2)", "--"],
    ["((1/4) in, (reach))", "xy"],
    ["(waist, waist)", "x-"],
    ["(waist, 2 * waist + 1 mm)", "x-"],
    ["(waist + 1 mm, waist)", "-y"],
    ["(reach, tail + 1 mm)", "x-"],
    ["(reach @ tilt)", "xy"],
    ["(reach @ 2 * tilt)", "--"],
    ["(tail @ 20 deg)", "--"],
    ["(hypot(3 mm, 4 mm), 2 mm * 3)", "--"],
  ])("of %s can move along %s", (point, expected) => {
    expect(canMove(point)).toBe(expected);
  });

  it("count from a point only what does not move that point too", () => {
    const moves = (steps: string) => handles(analysed(pathFile(steps))).map(({ movesX }) => movesX);
    expect(moves("line (reach, 0 mm) line by (reach, 0 mm)")).toEqual([true, true, false]);
    expect(moves("line (tail, 0 mm) line by (1 mm, 0 mm) line by (reach, 0 mm)")).toEqual([
      true,
      false,
      true,
      false,
    ]);
    expect(moves("line (reach, 0 mm) line by (waist, 0 mm)")).toEqual([true, true, true]);
  });

  it("are left out where a point has no value, and none are there without an outline", () => {
    expect(handles(analysed("outline { from (nothing, 0 mm) close }\n"))).toEqual([]);
    expect(handles(analysed('bar "x"\n'))).toEqual([]);
    expect(
      handles(analysed("hole (nothing, 0 mm) diameter 3 mm\nhole (1 mm, 0 mm) diameter 3 mm\n")).length,
    ).toBe(1);
  });
});

describe("moving a point", () => {
  it.each([
    ["(5 mm, 6 mm)", 7.123_4, -8.999, "(7.12 mm, -9 mm)"],
    ["(-5 mm, -6 mm)", 7, -8, "(7 mm, -8 mm)"],
    ["(+5 mm, - 6 mm)", -7, 8, "(-7 mm, 8 mm)"],
    ["(5 mm, 6 mm)", 0.001, -0.001, "(0 mm, 0 mm)"],
    ["(0.5 in, 1 in)", 25.4, 12.71, "(1 in, 0.5 in)"],
    ["(0.5 in, 500 thou)", 3, 3, "(0.118 in, 118 thou)"],
    ["(1 cm, 0.01 m)", 12.34, 12.34, "(1.234 cm, 0.01234 m)"],
    ["((1/4) in, (-(3/8)) in)", 3, 3, "(0.118 in, 0.118 in)"],
    ["(reach - 6 mm, waist + 6 mm)", 120, 40, "(reach - 10 mm, waist + 16 mm)"],
    ["(reach - 6 mm, waist + 6 mm)", 140, 20, "(reach + 10 mm, waist - 4 mm)"],
    ["(14 mm - reach, -2 mm + waist)", -140, 25, "(-10 mm - reach, 1 mm + waist)"],
    ["(reach - -6 mm, waist - +6 mm)", 120, 30, "(reach - 10 mm, waist - -6 mm)"],
    ["(reach - (6 mm + tail), 2 mm)", 30, 3, "(reach - (10 mm + tail), 3 mm)"],
    ["(reach - waist - 8 mm, 1 mm - 2 mm)", 100, 5, "(reach - waist - 6 mm, 1 mm + 4 mm)"],
    ["(2 * waist + 1 mm, 0 mm)", 50, 1, "(2 * waist + 2 mm, 1 mm)"],
    ["by (5 mm, 5 mm)", 5, 5, "by (4 mm, 3 mm)"],
    ["(100 mm @ 0 deg)", 0, 50, "(50 mm @ 90 deg)"],
    ["(100 mm @ 350 deg)", 99, 17.5, "(100.53 mm @ 370.02 deg)"],
    ["(-100 mm @ 0 deg)", -98, -2, "(-98.02 mm @ 1.17 deg)"],
    ["(100 mm @ 1 rad)", 0, 0, "(0 mm @ 1 rad)"],
    ["(100 mm @ tilt + 10 deg)", 0, 20, "(20 mm @ tilt + 60 deg)"],
  ])("%s to (%d, %d): %s", (point, x, y, expected) => {
    expect(movedStep(point, x, y)).toBe(expected);
  });

  it("changes the value of a plain let, and what hangs on it with it", () => {
    expect(moved(pathFile("line (reach, 3 mm)"), "(reach, 3 mm)", { x: 140.004, y: 3 })).toBe(
      "let reach = 140 mm   # spin axis to the tip",
    );
    expect(moved(pathFile("line (-reach, 3 mm)"), "(-reach, 3 mm)", { x: -150, y: 3 })).toContain(
      "let reach = 150 mm",
    );
    expect(moved(pathFile("line (-reach, 3 mm)"), "(-reach, 3 mm)", { x: 20, y: 3 })).toContain(
      "let reach = -20 mm",
    );
    const negative = pathFile("line (a, 3 mm)", "let a = -5 mm\n");
    expect(moved(negative, "(a, 3 mm)", { x: -6, y: 3 })).toBe("let a = -6 mm");
    expect(moved(negative, "(a, 3 mm)", { x: 6, y: 3 })).toBe("let a = 6 mm");
  });

  it("changes the override of the variant that is looked at", () => {
    const text = `${pathFile("line (reach, 3 mm)")}variant "far" { reach = 150 mm }\n`;
    expect(moved(text, "(reach, 3 mm)", { x: 160, y: 3 }, "far")).toBe('variant "far" { reach = 160 mm }');
    expect(moved(text, "(reach, 3 mm)", { x: 160, y: 3 })).toContain("let reach = 160 mm");
  });

  it("keeps lets within their bounds", () => {
    const text = pathFile("line (1 mm, -waist)");
    expect(moved(text, "(1 mm, -waist)", { x: 1, y: -39 })).toContain("let waist = 39 mm from");
    expect(moved(text, "(1 mm, -waist)", { x: 1, y: -40.004 })).toContain("let waist = 40 mm from");
    const message = "refused: 'waist' has bounds: it stays from 20 mm to 40 mm.";
    expect(moved(text, "(1 mm, -waist)", { x: 1, y: -41 })).toBe(message);
    expect(moved(text, "(1 mm, -waist)", { x: 1, y: 30 })).toBe(message);
    const negative = pathFile("line (a, 3 mm)", "let a = -(-5 mm) from 4 mm to 6 mm\n");
    expect(moved(negative, "(a, 3 mm)", { x: 5.5, y: 3 })).toBe("let a = -(-5.5 mm) from 4 mm to 6 mm");
    expect(moved(negative, "(a, 3 mm)", { x: -5, y: 3 })).toContain("has bounds");
  });

  it("leaves a coordinate that is computed where it is", () => {
    expect(movedStep("(reach / 2, 3 mm)", 9, 4)).toBe("(reach / 2, 4 mm)");
    expect(movedStep("(waist, waist)", 30, 99)).toBe("");
    expect(moved(pathFile("line (waist, waist)"), "(waist, waist)", { x: 30, y: 99 })).toContain(
      "let waist = 30 mm",
    );
  });

  it("is refused where nothing can move, for handles that are none, and for places that are none", () => {
    expect(moved(pathFile("line (reach / 2, tail)"), "(reach / 2, tail)", { x: 1, y: 1 })).toContain(
      "refused: This point is computed",
    );
    expect(moved(pathFile("line (tail @ 3 deg)"), "(tail @ 3 deg)", { x: 1, y: 1 })).toContain(
      "refused: This point is computed",
    );
    const analysis = analysed(pathFile("line (5 mm, 6 mm)"));
    expect(movePoint(analysis, 99, { x: 1, y: 1 })).toHaveProperty("refused");
    expect(movePoint(analysis, -1, { x: 1, y: 1 })).toHaveProperty("refused");
    for (const x of [Number.NaN, Number.POSITIVE_INFINITY, 1e9])
      expect(movePoint(analysis, 0, { x, y: 1 })).toHaveProperty("refused");
  });

  it("makes no edit where the text would say the same", () => {
    const analysis = analysed(pathFile("line (5 mm, 6 mm)"));
    expect(movePoint(analysis, 1, { x: 5.001, y: 6 })).toEqual({ edits: [] });
  });

  it("finds its sign over line ends and comments", () => {
    const text = pathFile("line (reach # - far\n  -\n  6 mm, 3 mm)");
    expect(moved(text, "(reach # - far\n  -\n  6 mm, 3 mm)", { x: 140, y: 3 })).toBe("  +\n  10 mm, 3 mm) }");
  });

  it("takes CRLF text as it is", () => {
    const text = withCrLf(pathFile("line (5 mm, 6 mm)"));
    const result = movePoint(analysed(text), 1, { x: 7, y: 6 });
    expect("edits" in result && applyEdits(text, result.edits)).toBe(text.replace("(5 mm", "(7 mm"));
  });
});

/** Half of the coarsest step that a dragged number is rounded to: 0.001 in. */
const HALF_STEP_MM = 25.4 * 0.001 * 0.5;

/** Half of a hundredth of a degree. */
const HALF_STEP_RAD = (0.005 * Math.PI) / 180;

/** The point is where it was dragged to, as near as its digits allow, and where it cannot move it stays. */
function checkMove(text: string, variant: string | null, pick: number, by: Point): void {
  const analysis = analysed(text, variant);
  const all = handles(analysis);
  const handle = all[pick % all.length];
  if (handle === undefined) return;
  const to = { x: handle.at.x + by.x, y: handle.at.y + by.y };
  const result = movePoint(analysis, handle.id, to);
  if ("refused" in result) {
    expect(handle.movesX || handle.movesY ? /bounds/ : /computed/).toSatisfy((cause: RegExp) =>
      cause.test(result.refused),
    );
    return;
  }
  const changed = analysed(applyEdits(text, result.edits), variant);
  const after = handles(changed)[handle.id];
  const isPolar = sliceOf(text, handle.source).includes("@");
  const slack = isPolar ? HALF_STEP_MM + HALF_STEP_RAD * Math.hypot(to.x, to.y) : HALF_STEP_MM;
  if (handle.movesX) expect(Math.abs((after?.at.x ?? Number.NaN) - to.x)).toBeLessThanOrEqual(slack + 1e-9);
  if (handle.movesY) expect(Math.abs((after?.at.y ?? Number.NaN) - to.y)).toBeLessThanOrEqual(slack + 1e-9);
  // A second drag to the same place finds it there already.
  const again = movePoint(changed, handle.id, after?.at ?? to);
  expect(again).toEqual({ edits: [] });
}

const by = fc.record({
  x: fc.double({ min: -150, max: 150, noNaN: true }),
  y: fc.double({ min: -150, max: 150, noNaN: true }),
});

describe("after a move the point is where it was dragged to", () => {
  it("in every sample and each of its variants", () => {
    const drags = fc.tuple(fc.constantFrom(...SAMPLES), fc.nat(), fc.nat(), by);
    fc.assert(
      fc.property(drags, ([text, which, pick, to]) => {
        const variants = [null, ...readSource(text).variants];
        checkMove(text, variants[which % variants.length] ?? null, pick, to);
      }),
      { seed: 31_337, numRuns: 120 },
    );
  });

  it("in paths of any points", () => {
    const number = fc.constantFrom(
      "3 mm",
      "-3 mm",
      "+0.5 in",
      "(1/4) in",
      "a",
      "-a",
      "b",
      "c",
      "(a)",
      "2 * a",
    );
    const coordinate = fc.oneof(
      number,
      fc.tuple(number, fc.constantFrom("+", "-"), number).map((parts) => parts.join(" ")),
      fc
        .tuple(number, fc.constantFrom("+", "-"), number, fc.constantFrom("+", "-"), number)
        .map((parts) => parts.join(" ")),
    );
    const angle = fc.constantFrom("20 deg", "-1 rad", "t", "t + 3 deg", "0.2 turn");
    const point = fc.oneof(
      fc.tuple(coordinate, coordinate).map(([x, y]) => `(${x}, ${y})`),
      fc.tuple(coordinate, coordinate).map(([x, y]) => `by (${x}, ${y})`),
      fc.tuple(coordinate, angle).map(([radius, direction]) => `(${radius} @ ${direction})`),
    );
    const lets = "let a = 40 mm\nlet b = -1.5 in\nlet c = a / 2\nlet t = 15 deg\n";
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 4 }), fc.nat(), by, (points, pick, to) => {
        checkMove(pathFile(points.map((text) => `line ${text}`).join(" "), lets), null, pick, to);
      }),
      { seed: 2718, numRuns: 400 },
    );
  });
});

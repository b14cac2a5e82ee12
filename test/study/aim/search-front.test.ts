/** The search for two goals, on problems of which the line is known in closed form. */
import { describe, expect, it } from "vitest";
import { nonDominated, searchFront } from "../../../geometry/study/aim/search-front.ts";
import { EFFORTS } from "../../../geometry/study/aim/search-one.ts";
import { seededRandom } from "../../../geometry/study/aim/seeded.ts";
import { type BoxProblem, measureOf, runSearch } from "./boxes.ts";

const COUNT = 11;

function lineOf(problem: BoxProblem, seed = 1) {
  const plain = (value: number) => value;
  const { result } = runSearch(
    problem,
    searchFront({
      seeds: [],
      size: problem.least.length,
      effort: EFFORTS.usual,
      random: seededRandom(seed),
      count: COUNT,
      smoothOf: [plain, plain],
    }),
  );
  return result.map(({ measured: { goals } }) => goals.map(({ value }) => value) as [number, number]);
}

/** Binh and Korn (1997): its line is x = y up to 3, then y = 3; from memory, and the algebra is below. */
const BINH_KORN: BoxProblem = {
  least: [0, 0],
  most: [5, 3],
  at: ([x = 0, y = 0]) => ({
    goals: [4 * x * x + 4 * y * y, (x - 5) ** 2 + (y - 5) ** 2],
    limits: [((x - 5) ** 2 + y * y) / 25 - 1, 1 - ((x - 8) ** 2 + (y + 3) ** 2) / 7.7],
  }),
};

/** Along x = y the first goal is 8t², behind that 4x² + 36. */
function secondOfBinhKorn(first: number): number {
  const t = Math.sqrt(first / 8);
  const [x, y] = t <= 3 ? [t, t] : [Math.sqrt(first / 4 - 9), 3];
  return (x - 5) ** 2 + (y - 5) ** 2;
}

describe("the line of two goals", () => {
  it.each([1, 2, 3])("is the known one, from end to end and evenly (seed %d)", (seed) => {
    const line = lineOf(BINH_KORN, seed);
    expect(line).toHaveLength(COUNT);
    expect(line[0]?.[0]).toBeCloseTo(0, 4);
    expect(line[0]?.[1]).toBeCloseTo(50, 4);
    expect(line.at(-1)?.[0]).toBeCloseTo(136, 4);
    expect(line.at(-1)?.[1]).toBeCloseTo(4, 4);
    for (const [first, second] of line) expect(second - secondOfBinhKorn(first)).toBeLessThan(1e-4 * 46);
    const gaps = line.slice(1).map(([first, second], i) => {
      const [before, beside] = line[i] ?? [0, 0];
      return Math.hypot((first - before) / 136, (second - beside) / 46);
    });
    expect(Math.max(...gaps) / Math.min(...gaps)).toBeLessThan(1.5);
  });

  it("has no bar that another one beats in both goals", () => {
    const line = lineOf(BINH_KORN);
    for (const [a, b] of line)
      expect(line.filter(([c, d]) => c <= a && d <= b && (c < a || d < b))).toEqual([]);
  });

  it("is one bar where one is the best in both", () => {
    const line = lineOf({
      least: [0, 0],
      most: [1, 1],
      at: ([x = 0, y = 0]) => ({ goals: [x + y, 2 + x * y + x + y], limits: [0.25 - x] }),
    });
    expect(line).toHaveLength(1);
    expect(line[0]?.[0]).toBeCloseTo(0.25, 6);
  });

  it("may have a gap, over which no bar is offered", () => {
    // The second goal falls, rises and falls again: what rises is beaten.
    const fall = (x: number) => 1 - x + 0.35 * Math.sin(2 * Math.PI * x);
    const line = lineOf({ least: [0], most: [1], at: ([x = 0]) => ({ goals: [x, fall(x)], limits: [] }) });
    for (const [first, second] of line) {
      expect(second).toBeCloseTo(fall(first), 9);
      for (let x = 0; x < first - 1e-3; x += 1e-3) expect(fall(x)).toBeGreaterThan(second - 2e-3);
    }
  });

  it("is empty where no bar keeps the limits", () => {
    expect(lineOf({ least: [0], most: [1], at: ([x = 0]) => ({ goals: [x, -x], limits: [2 - x] }) })).toEqual(
      [],
    );
  });
});

describe("what is not beaten", () => {
  it("keeps one of two equal places", () => {
    const problem: BoxProblem = {
      least: [0],
      most: [1],
      at: ([x = 0]) => ({ goals: [Math.round(x), 1], limits: [] }),
    };
    const places = [0.1, 0.2, 0.9].flatMap((x) => {
      const measured = measureOf(problem, [x]);
      return measured === null ? [] : [{ x, measured }];
    });
    expect(nonDominated(places).map(({ x }) => x)).toEqual([0.1]);
  });
});

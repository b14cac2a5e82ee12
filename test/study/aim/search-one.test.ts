/** The search for one goal, on problems of which the least value is published or follows by algebra. */
import { describe, expect, it } from "vitest";
import { descend } from "../../../geometry/study/aim/descend.ts";
import { rateBy, rated } from "../../../geometry/study/aim/rating.ts";
import { EFFORTS, type EffortName, searchOne } from "../../../geometry/study/aim/search-one.ts";
import { seededRandom } from "../../../geometry/study/aim/seeded.ts";
import { type BoxProblem, measureOf, runSearch, valuesOf } from "./boxes.ts";

const box = (size: number, least: number, most: number) => ({
  least: Array.from({ length: size }, () => least),
  most: Array.from({ length: size }, () => most),
});

/** x·y·… of a destructured list, typed. */
type Numbers = readonly [number, number, number, number];
const four = (x: readonly number[]) => x as Numbers;

/** Hock and Schittkowski, *Test Examples for Nonlinear Programming Codes* (1981), and Michalewicz's G6 and G8; from memory. */
const PUBLISHED: readonly (readonly [string, BoxProblem, number])[] = [
  [
    "problem 71",
    {
      ...box(4, 1, 5),
      at: (x) => {
        const [a, b, c, d] = four(x);
        return {
          goals: [(a * d * (a + b + c) + c) / 17],
          limits: [
            1 - (a * b * c * d) / 25,
            equal(a * a + b * b + c * c + d * d, 40),
            -equal(a * a + b * b + c * c + d * d, 40) - 1e-9,
          ],
        };
      },
    },
    17.0140173 / 17,
  ],
  [
    "problem 43",
    {
      ...box(4, -5, 5),
      at: (x) => {
        const [a, b, c, d] = four(x);
        return {
          goals: [(a * a + b * b + 2 * c * c + d * d - 5 * a - 5 * b - 21 * c + 7 * d) / 44],
          limits: [
            (a * a + b * b + c * c + d * d + a - b + c - d) / 8 - 1,
            (a * a + 2 * b * b + c * c + 2 * d * d - a - d) / 10 - 1,
            (2 * a * a + b * b + c * c + 2 * a - b - d) / 5 - 1,
          ],
        };
      },
    },
    -1,
  ],
  [
    "G6, a sliver between two circles",
    {
      least: [13, 0],
      most: [100, 100],
      at: (x) => {
        const [a, b] = four(x);
        return {
          goals: [((a - 10) ** 3 + (b - 20) ** 3) / 6961.813_875_58],
          limits: [1 - ((a - 5) ** 2 + (b - 5) ** 2) / 100, ((a - 6) ** 2 + (b - 5) ** 2) / 82.81 - 1],
        };
      },
    },
    -1,
  ],
  [
    "G8, many hills",
    {
      least: [0.001, 0.001],
      most: [10, 10],
      at: (x) => {
        const [a, b] = four(x);
        return {
          goals: [-(Math.sin(2 * Math.PI * a) ** 3 * Math.sin(2 * Math.PI * b)) / (a ** 3 * (a + b))],
          limits: [a * a - b + 1, 1 - a + (b - 4) ** 2],
        };
      },
    },
    -0.095_825_041_418_035_9,
  ],
];

function equal(value: number, wanted: number): number {
  return value / wanted - 1;
}

function searched(
  problem: BoxProblem,
  effort: EffortName,
  seed = 1,
  seeds: readonly (readonly number[])[] = [],
) {
  const steps = searchOne(seeds, problem.least.length, EFFORTS[effort], seededRandom(seed));
  const { result, count } = runSearch(problem, rated(steps, rateBy(0)));
  if (result === null) throw new Error("nothing could be measured");
  return { ...result, x: valuesOf(problem, result.at), count };
}

describe("published optima are reached to a millionth", () => {
  it.each(PUBLISHED)("%s", (_, problem, known) => {
    for (const seed of [1, 2, 3]) {
      const { rating, count } = searched(problem, "usual", seed);
      expect(Math.abs(rating.goal - known)).toBeLessThan(1e-6 * Math.abs(known));
      expect(Math.max(...rating.excess)).toBeLessThanOrEqual(1e-12);
      expect(count).toBeLessThan(EFFORTS.usual.most * problem.least.length);
    }
  });
});

describe("a search", () => {
  it("finds a kink", () => {
    const problem: BoxProblem = {
      ...box(3, -1, 2),
      at: (x) => ({ goals: [x.reduce((sum, value, i) => sum + Math.abs(value - i / 3), 0)], limits: [] }),
    };
    expect(searched(problem, "usual").rating.goal).toBeLessThan(1e-4);
  });

  it("finds its way round where nothing can be measured", () => {
    const problem: BoxProblem = {
      ...box(2, -2, 2),
      at: ([x = 0, y = 0]) =>
        Math.hypot(x + 0.5, y) < 0.8 ? null : { goals: [(x - 1) ** 2 + (y - 1) ** 2], limits: [-x - 1.5] },
    };
    expect(searched(problem, "usual").rating.goal).toBeLessThan(1e-10);
  });

  it("slides along what the checker refuses, which has no slope, to its corner", () => {
    // Least x + y with x + 2y ≥ 1 and 2x + y ≥ 1, told by yes and no alone: (1/3, 1/3).
    const problem: BoxProblem = {
      ...box(2, -1, 2),
      at: ([x = 0, y = 0]) => ({ goals: [x + y], limits: [] }),
      refuses: ([x = 0, y = 0]) => x + 2 * y < 1 || 2 * x + y < 1,
    };
    for (const seed of [1, 2, 3]) {
      const { rating, x } = searched(problem, "usual", seed, [[1, 1]]);
      expect(rating.faults()).toBe(0);
      for (const value of x) expect(Math.abs(value - 1 / 3)).toBeLessThan(1e-3 / 3);
    }
  });

  it("asks for the same places each time, and for others with another seed", () => {
    const [, problem] = PUBLISHED[1] ?? [];
    if (problem === undefined) throw new Error("no problem");
    const trace = (seed: number) => {
      const places: string[] = [];
      const at = (x: readonly number[]) => {
        places.push(x.join(" "));
        return problem.at(x);
      };
      searched({ ...problem, at }, "quick", seed);
      return places;
    };
    expect(trace(1)).toEqual(trace(1));
    expect(trace(2)).not.toEqual(trace(1));
  });

  it("is left with the place that misses the limits least where none holds them", () => {
    const problem: BoxProblem = {
      ...box(2, 0, 1),
      at: ([x = 0, y = 0]) => ({ goals: [x], limits: [0.5 - x * y + 1, x - 0.8] }),
    };
    const { rating, x } = searched(problem, "usual");
    // 1.5 − x·y + (x − 0.8) is least at y = 1, whatever x is from 0.8: 0.7 in all.
    expect(x[1]).toBeCloseTo(1, 6);
    expect(rating.excess.filter((share) => share > 0).reduce((a, b) => a + b, 0)).toBeCloseTo(0.7, 6);
  });
});

describe("a descent", () => {
  it("goes along a curved limit to the point that algebra gives", () => {
    // Most x·y on the circle of radius 1: x = y = 1/√2.
    const problem: BoxProblem = {
      ...box(2, 0, 1),
      at: ([x = 0, y = 0]) => ({ goals: [-x * y], limits: [x * x + y * y - 1] }),
    };
    const begin = measureOf(problem, [0.9, 0.1]);
    if (begin === null) throw new Error("not measured");
    const steps = rated(descend({ at: [0.9, 0.1], rating: rateBy(0)(begin) }), rateBy(0));
    const { result, count } = runSearch(problem, steps);
    expect(result.at[0]).toBeCloseTo(Math.SQRT1_2, 6);
    expect(result.rating.goal).toBeCloseTo(-0.5, 9);
    expect(count).toBeLessThan(100);
  });
});

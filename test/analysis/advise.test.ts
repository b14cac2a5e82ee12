/** Advice on the bite, followed: what is told to help must help. */
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import type { Problem } from "../../geometry/language/problem.ts";
import { expectClose } from "../support/close-to.ts";

const TIP = 100;
const RPM = 4200;
const TURNS_PER_S = RPM / 60;

const bar = (outline: string, approach: string, target = "edge") => `bar "Trial"
thickness 10 mm
density 8000 kg/m^3
${outline}
bore 16 mm
spin ${RPM} rpm ccw
approach 0.5 m/s to ${approach}
target ${target}
require balance <= G6300
`;

/** One tooth whose back is a spiral that rises by so much in a turn. */
const spiral = (riseMm: number) => `outline {
  from (${TIP} mm @ 0 deg)
  line (${TIP - riseMm} mm @ 0 deg)
  spiral (${TIP - riseMm / 2} mm @ 180 deg) turning left
  spiral (${TIP} mm @ 360 deg) turning left
}`;

/** A tooth along +x and a tail with a pointed end at the distance given. */
const tailed = (tailMm: number) => `outline {
  from (${TIP} mm, 0 mm)
  line (40 mm, 0 mm)
  line (25 mm, 25 mm)
  line (-25 mm, 25 mm)
  line (${-tailMm} mm, 0 mm)
  line (-25 mm, -25 mm)
  line (40 mm, -20 mm)
  close
}`;

/** Two teeth half a turn apart, the second one shorter. */
const uneven = (shortMm: number) => `outline {
  from (${TIP} mm, 0 mm)
  line (60 mm, 0 mm)
  line (40 mm, 25 mm)
  line (${shortMm - TIP} mm, 0 mm)
  line (-60 mm, 0 mm)
  line (-40 mm, -25 mm)
  close
}`;

const advice = (text: string, code: string): Problem | undefined =>
  analyse(readSource(text)).problems.find((problem) => problem.code === code);

/** The numbers of a message, in order. */
const numbers = (problem: Problem | undefined): number[] =>
  [...(problem?.message ?? "").matchAll(/-?\d+(?:\.\d+)?/g)].map(([text]) => Number(text));

describe("relief behind the tip", () => {
  // A spiral that rises by s a turn is clear up to s·f; its slope at the tip circle is atan(s/2πR).
  it("is asked for in degrees, and enough when it is given", () => {
    const found = advice(bar(spiral(20), "3 m/s"), "relief-too-small");
    expect(found).toMatchObject({ severity: "information" });
    const [has = 0, needs = 0] = (found?.message ?? "").match(/[\d.]+(?=°)/g)?.map(Number) ?? [];
    expectClose(has, (Math.atan(20 / (2 * Math.PI * TIP)) * 180) / Math.PI, 2e-3);
    expectClose(needs, (Math.atan(3000 / TURNS_PER_S / (2 * Math.PI * TIP)) * 180) / Math.PI, 2e-3);
    const rise = Math.tan((needs * Math.PI) / 180) * 2 * Math.PI * TIP;
    expect(advice(bar(spiral(rise * 1.01), "3 m/s"), "relief-too-small")).toBeUndefined();
    expect(advice(bar(spiral(rise * 0.99), "3 m/s"), "relief-too-small")).toBeDefined();
    expect(advice(bar(spiral(20), "1.3 m/s"), "relief-too-small")).toBeUndefined();
  });

  it("points at the step that is struck", () => {
    const text = bar(spiral(20), "3 m/s");
    const range = advice(text, "relief-too-small")?.range;
    expect(text.slice(range?.start, range?.end)).toContain("spiral");
  });
});

describe("a tail that is too long", () => {
  // A tail at R2 half a turn behind is clear up to 2f(R − R2).
  it("is told from which speed, and clear at the length told", () => {
    const found = advice(bar(tailed(90), "2 m/s"), "struck-beside-teeth");
    const told = numbers(found);
    expect(told).toContain(-90);
    expect(told).toContain(Number((2 * TURNS_PER_S * 0.01).toPrecision(3)));
    const allowed = TIP - (2 / (2 * TURNS_PER_S)) * 1000;
    expect(told.some((value) => Math.abs(value - allowed) < 0.01)).toBe(true);
    expect(advice(bar(tailed(allowed - 0.05), "2 m/s"), "struck-beside-teeth")).toBeUndefined();
    expect(advice(bar(tailed(allowed + 0.05), "2 m/s"), "struck-beside-teeth")).toBeDefined();
  });

  it("is told without a length against another target, where the sum is another one", () => {
    const found = advice(bar(tailed(90), "6 m/s", "face"), "struck-beside-teeth");
    expect(found?.message).toMatch(/m\/s at 4200 rpm\.$/);
  });
});

describe("teeth of different lengths", () => {
  // The tooth before lets the target down to the shorter one from the advance δ in half a turn: v = 2fδ.
  it("are told, with the speed from which the shorter one works", () => {
    for (const shortMm of [2, 6]) {
      const told = numbers(advice(bar(uneven(shortMm), "6 m/s"), "short-tooth"));
      expect(told).toContain(shortMm);
      expect(told.some((value) => Math.abs(value - 2 * TURNS_PER_S * (shortMm / 1000)) < 5e-3)).toBe(true);
    }
  });

  it("are told when the shorter one never strikes in the range", () => {
    const found = advice(bar(uneven(6), "0.8 m/s"), "short-tooth");
    expect(found?.message).toContain("does not strike up to 0.8 m/s");
  });

  it("are left alone when they are alike, or one is a tail", () => {
    expect(advice(bar(uneven(0), "6 m/s"), "short-tooth")).toBeUndefined();
    expect(advice(bar(uneven(30), "6 m/s"), "short-tooth")).toBeUndefined();
  });
});

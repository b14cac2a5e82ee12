/** Paths at random, sensible or not: never a throw, sound loops where there is no error, fixes that do what they say. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectSound, totalTurn } from "./joins.ts";
import { barText, fixedTexts, study } from "./study.ts";

const tenths = (min: number, max: number) => fc.integer({ min: 10 * min, max: 10 * max }).map((n) => n / 10);
const turning = fc.constantFrom("left", "right");
const corner = fc.oneof(
  { weight: 2, arbitrary: fc.constant("") },
  { weight: 3, arbitrary: tenths(0.5, 40).map((size) => `round ${size} mm`) },
  { weight: 1, arbitrary: tenths(0.5, 40).map((size) => `bevel ${size} mm`) },
);

type Step = (place: string) => string;

/** A step to a place that is given later. */
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: fc.constant<Step>((place) => `line ${place}`) },
  {
    weight: 2,
    arbitrary: fc.tuple(tenths(20, 150), turning).map(
      ([radius, way]): Step =>
        (place) =>
          `arc ${place} radius ${radius} mm turning ${way}`,
    ),
  },
  {
    weight: 1,
    arbitrary: turning.map(
      (way): Step =>
        (place) =>
          `spiral ${place} turning ${way}`,
    ),
  },
);

/** Steps in order about the axis, as most bars are drawn. */
const starText = fc
  .array(fc.record({ step, corner, radius: tenths(20, 120), jitter: tenths(-0.3, 0.3) }), {
    minLength: 3,
    maxLength: 8,
  })
  .map((list) => {
    const place = (i: number): string => {
      const degrees = ((i + (list[i]?.jitter ?? 0)) * 360) / list.length;
      return `(${list[i]?.radius} mm @ ${degrees.toFixed(2)} deg)`;
    };
    const steps = list.slice(1).map((item, i) => `${item.step(place(i + 1))} ${item.corner}`);
    return `outline {\n  from ${place(0)}\n  ${steps.join("\n  ")}\n  close ${list[0]?.corner}\n}`;
  });

/** Steps anywhere. */
const wildText = fc
  .array(fc.record({ step, corner, x: tenths(-100, 100), y: tenths(-100, 100) }), {
    minLength: 1,
    maxLength: 6,
  })
  .chain((list) =>
    fc.constantFrom("", "repeat 3", "repeat 2", "mirror x", "mirror y").map((symmetry) => {
      const steps = list.map(({ step, corner, x, y }) => `${step(`(${x} mm, ${y} mm)`)} ${corner}`);
      return `outline ${symmetry} {\n  from (50 mm, 0 mm)\n  ${steps.join("\n  ")}\n}`;
    }),
  );

const isError = ({ severity }: { severity: string }): boolean => severity === "error";

describe("a path at random", () => {
  it("is a sound loop that turns once about, or says what is wrong", () => {
    let sound = 0;
    fc.assert(
      fc.property(starText, (text) => {
        const { outline, draft, problems } = study(barText(text));
        expect(draft).not.toBeNull();
        if (outline === null) {
          expect(problems.some(isError)).toBe(true);
          return;
        }
        expectSound(outline.outer);
        if (problems.some(({ code }) => code === "loop-crosses-itself")) return;
        sound += 1;
        expect(totalTurn(outline.outer)).toBeCloseTo(2 * Math.PI, 8);
      }),
      { seed: 20240514, numRuns: 200 },
    );
    expect(sound).toBeGreaterThan(25);
  });

  it("that goes anywhere is never more than problems", () => {
    fc.assert(
      fc.property(wildText, (text) => {
        const { outline, problems } = study(barText(text));
        expect(outline !== null || problems.some(isError)).toBe(true);
        if (outline) expectSound(outline.outer);
      }),
      { seed: 20240515, numRuns: 300 },
    );
  });

  it("has its radii and corners mended by the fixes, each of which clears the problem it belongs to", () => {
    let mended = 0;
    fc.assert(
      fc.property(starText, (text) => {
        const before = study(barText(text));
        for (const problem of before.problems) {
          if (!["corner-too-large", "arc-cannot-reach"].includes(problem.code)) continue;
          for (const fixed of fixedTexts(before, problem)) {
            mended += 1;
            const after = study(fixed).problems.filter(({ code }) => code === problem.code);
            expect(
              after.map(({ range }) => range.start),
              fixed,
            ).not.toContain(problem.range.start);
          }
        }
      }),
      { seed: 20240516, numRuns: 200 },
    );
    expect(mended).toBeGreaterThan(100);
  });

  it("offers the largest corner that fits: a little more does not", () => {
    let tried = 0;
    fc.assert(
      fc.property(starText, (text) => {
        const before = study(barText(text));
        const problem = before.problems.find(({ code }) => code === "corner-too-large");
        const edit = problem?.fixes[0]?.edits[0];
        if (!problem || !edit || edit.newText === "") return;
        const withSize = (size: string): string =>
          `${before.text.slice(0, edit.start)}${size}${before.text.slice(edit.end)}`;
        const tooLarge = (text: string): number =>
          study(text).problems.filter(({ code }) => code === "corner-too-large").length;
        // Where other corners are too large as well, they may give way to this one.
        if (tooLarge(withSize(edit.newText)) > 0) return;
        tried += 1;
        const more = withSize(`${Number.parseFloat(edit.newText) * 1.02} mm`);
        expect(tooLarge(more), more).toBeGreaterThan(0);
      }),
      { seed: 20240517, numRuns: 150 },
    );
    expect(tried).toBeGreaterThan(20);
  });
});

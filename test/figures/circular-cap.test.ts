import { describe, expect, it } from "vitest";
import {
  type CapFactors,
  deepCap,
  SHALLOW_HALF_SWEEP_RAD,
  shallowCap,
} from "../../geometry/figures/circular-cap.ts";
import { expectClose } from "../support/close-to.ts";

function simpson(f: (x: number) => number, from: number, to: number, strips: number): number {
  const step = (to - from) / strips;
  let sum = f(from) + f(to);
  for (let i = 1; i < strips; i++) sum += (i % 2 === 0 ? 2 : 4) * f(from + i * step);
  return (sum * step) / 3;
}

/** Simpson's rule with its leading error taken out: below 1e-14 of these integrands. */
function integrate(f: (x: number) => number, from: number, to: number): number {
  return (16 * simpson(f, from, to, 600) - simpson(f, from, to, 300)) / 15;
}

/** The cap of a circle of radius 1 cut into strips parallel to its chord; `height` measures along the first axis. */
function capByStrips(h: number, height: (angle: number) => number): CapFactors {
  return {
    area: integrate((a) => 2 * Math.sin(a) ** 2, 0, h),
    first: integrate((a) => 2 * Math.sin(a) ** 2 * height(a), 0, h),
    along: integrate((a) => 2 * Math.sin(a) ** 2 * height(a) ** 2, 0, h),
    across: integrate((a) => (2 / 3) * Math.sin(a) ** 4, 0, h),
  };
}

const aboutCentre = (h: number) => capByStrips(h, Math.cos);
/** cos a − cos h without the loss of their difference. */
const aboutChord = (h: number) => capByStrips(h, (a) => 2 * Math.sin((h + a) / 2) * Math.sin((h - a) / 2));

function expectFactors(actual: CapFactors, expected: CapFactors, relative: number): void {
  for (const key of ["area", "first", "along", "across"] as const)
    expectClose(actual[key], expected[key], relative, Math.abs(expected[key]) || 1);
}

describe("a cap about the circle's centre", () => {
  it.each([0.5, 0.8, 1, Math.PI / 2, 2, 3])("agrees with strips for half sweep %d", (h) => {
    expectFactors(deepCap(h), aboutCentre(h), 1e-12);
  });

  it("is the whole disc for a full turn", () => {
    const disc = { area: Math.PI, first: 0, along: Math.PI / 4, across: Math.PI / 4 };
    expectFactors(deepCap(Math.PI), disc, 1e-15);
  });

  it("changes sign with the sweep", () => {
    const { area, first, along, across } = deepCap(1.2);
    expect(deepCap(-1.2)).toEqual({ area: -area, first: -first, along: -along, across: -across });
  });
});

describe("a cap about the middle of its chord", () => {
  it.each([SHALLOW_HALF_SWEEP_RAD, 0.4, 0.1, 1e-2, 1e-4, 1e-8])(
    "agrees with strips for half sweep %d",
    (h) => {
      const { area, first, along, across } = aboutChord(h);
      const a = Math.sin(h);
      const scaled = {
        area: area / a ** 2,
        first: first / a ** 3,
        along: along / a ** 4,
        across: across / a ** 4,
      };
      expectFactors(shallowCap(h), scaled, 1e-13);
    },
  );

  it("takes its area away for a clockwise arc, on the other side of the chord", () => {
    const { area, first, along, across } = shallowCap(0.3);
    expect(shallowCap(-0.3)).toEqual({ area: -area, first, along: -along, across: -across });
  });

  it("is nothing for no sweep", () => {
    expect(shallowCap(0)).toEqual({ area: 0, first: 0, along: 0, across: 0 });
  });
});

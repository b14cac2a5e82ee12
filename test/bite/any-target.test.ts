/** What holds of every bar against every kind of target. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  advanceForDepth,
  type BiteProfile,
  biteAt,
  biteProfile,
  closingForDepth,
  contactAt,
  depthsOfBite,
  spinForDepth,
  teethOnly,
} from "../../geometry/bite/bite.ts";
import { biteAtAdvance } from "../../geometry/bite/bite-at.ts";
import type { Target } from "../../geometry/language/design.ts";
import { expectClose } from "../support/close-to.ts";
import { stepper } from "./oracles/first-contact.ts";
import { variedBar } from "./random-bars.ts";
import { RAD_PER_S, SPIN, SQUARE_RAD } from "./spin.ts";

const target: fc.Arbitrary<Target> = fc.oneof(
  fc.constant<Target>({ kind: "edge", radiusMm: 0, offsetMm: 0 }),
  fc.constant<Target>({ kind: "face", radiusMm: 0, offsetMm: 0 }),
  fc.record({
    kind: fc.constant("edge" as const),
    radiusMm: fc.constant(0),
    offsetMm: fc.integer({ min: -50, max: 50 }),
  }),
  fc.record({
    kind: fc.constant("round" as const),
    radiusMm: fc.integer({ min: 1, max: 20 }),
    offsetMm: fc.integer({ min: -30, max: 30 }),
  }),
);
const sense = fc.constantFrom("ccw" as const, "cw" as const);
/** An advance from a slow approach to one faster than the tips. */
const advance = fc.double({ min: -1, max: 2, noNaN: true }).map((power) => 10 ** power);
const seed = fc.integer({ min: 0, max: 499 });

/** A property of the profile of any bar, sense and target; what fails is told by these, not by the profile. */
function ofProfile<T>(more: fc.Arbitrary<T>, holds: (profile: BiteProfile, more: T) => void) {
  return fc.property(seed, sense, target, more, (bar, direction, aim, rest) =>
    holds(biteProfile(variedBar(bar), direction, aim), rest),
  );
}

const MM_PER_M = 1000;

describe("the bite on any target", () => {
  it("shares out all phases, its figures in order", () => {
    fc.assert(
      ofProfile(advance, (any, kappa) => {
        const bite = biteAtAdvance(any, any.teeth(SQUARE_RAD), kappa);
        const { minMm, tenthMm, medianMm, ninetiethMm, maxMm, meanMm } = bite;
        const shares = bite.strikes.reduce((sum, { share }) => sum + share, bite.passedShare);
        expectClose(shares, 1, 1e-9);
        const inOrder = [0, minMm, tenthMm, medianMm, ninetiethMm, maxMm, any.rimMm + 1e-9];
        expect([...inOrder].sort((a, b) => a - b)).toEqual(inOrder);
        expect(meanMm).toBeGreaterThanOrEqual(minMm - 1e-9);
        expect(meanMm).toBeLessThanOrEqual(maxMm + 1e-9);
        expect(bite.cleanShare).toBeLessThanOrEqual(bite.toothShare + 1e-9);
        expect(bite.cleanShare).toBeLessThanOrEqual(bite.squareShare + 1e-9);
      }),
      { seed: 101, numRuns: 150 },
    );
  });

  it("has a distribution whose mean is the mean, and whose quantiles turn it round", () => {
    fc.assert(
      ofProfile(advance, (any, kappa) => {
        const condition = { closingMPerS: (kappa * RAD_PER_S) / MM_PER_M, radPerS: RAD_PER_S };
        const bite = biteAt(any, { ...condition, squareStrikeRad: SQUARE_RAD });
        const { shareWithin, depthAtShare } = depthsOfBite(any, condition);
        expect(shareWithin(bite.maxMm)).toBeGreaterThan(1 - 1e-9);
        for (const share of [0.05, 0.3, 0.5, 0.77]) {
          const depth = depthAtShare(share);
          expect(shareWithin(depth + 1e-9 * any.rimMm)).toBeGreaterThanOrEqual(share - 1e-9);
          // A step of the distribution, where the bar is level, lies at the depth itself.
          expect(shareWithin(depth - 1e-9 * any.rimMm)).toBeLessThanOrEqual(share + 1e-6);
        }
        // ∫(1 − share) over the depths, by the trapezium rule.
        const steps = 4000;
        const rest = Array.from({ length: steps + 1 }, (_, i) => 1 - shareWithin((bite.maxMm * i) / steps));
        const sum = rest.reduce((all, one, i) => all + (i === 0 || i === steps ? one / 2 : one), 0);
        expectClose((sum * bite.maxMm) / steps, bite.meanMm, 1e-3, any.rimMm);
      }),
      { seed: 102, numRuns: 25 },
    );
  });

  it("changes evenly with the closing speed", () => {
    fc.assert(
      ofProfile(advance, (any, kappa) => {
        const teeth = any.teeth(SQUARE_RAD);
        const [a, b] = [biteAtAdvance(any, teeth, kappa), biteAtAdvance(any, teeth, kappa * (1 + 1e-7))];
        expectClose(b.meanMm, a.meanMm, 1e-4, any.rimMm);
        expectClose(b.medianMm, a.medianMm, 1e-2, any.rimMm);
        for (const figure of ["squareShare", "cleanShare", "toothShare", "passedShare"] as const)
          expectClose(b[figure], a[figure], 1e-3, 1);
      }),
      { seed: 103, numRuns: 80 },
    );
  });

  it("is the same for twice the closing speed at twice the spin", () => {
    fc.assert(
      ofProfile(advance, (any, kappa) => {
        const condition = { ...SPIN, closingMPerS: (kappa * RAD_PER_S) / MM_PER_M };
        const doubled = {
          ...condition,
          closingMPerS: 2 * condition.closingMPerS,
          radPerS: 2 * condition.radPerS,
        };
        expect(biteAt(any, doubled)).toEqual(biteAt(any, condition));
      }),
      { seed: 104, numRuns: 30 },
    );
  });
});

describe("one contact", () => {
  it("is what following the phase finds", () => {
    fc.assert(
      fc.property(
        seed,
        sense,
        target,
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (bar, direction, aim, phase) => {
          const outer = variedBar(bar);
          const any = biteProfile(outer, direction, aim);
          const kappa = 7;
          const contact = contactAt(any, kappa, phase);
          const followed = stepper(outer, direction, aim, kappa)(phase);
          // Beside an edge of a shadow the two may take one side each.
          const near = [-1e-6, 1e-6].map((off) => contactAt(any, kappa, phase + off));
          const found = [contact, ...near].some(
            ({ depthMm }) => Math.abs(depthMm - followed.depthMm) < 1e-4 * any.rimMm,
          );
          expect(found, `${contact.depthMm}, followed ${followed.depthMm}`).toBe(true);
          expect(contact.point === null).toBe(contact.place === null);
          expectClose(contact.depthMm + contact.alongMm, any.rimMm, 1e-12);
        },
      ),
      { seed: 105, numRuns: 120 },
    );
  });
});

describe("teeth only", () => {
  it("is where the first share of the strikes is off the teeth", () => {
    fc.assert(
      ofProfile(fc.constant(null), (any) => {
        const teeth = any.teeth(SQUARE_RAD);
        const { closingMPerS, endedBy } = teethOnly(any, SPIN);
        const offAt = (kappa: number) => 1 - biteAtAdvance(any, teeth, kappa).toothShare;
        if (closingMPerS === null) return;
        const limit = (closingMPerS * MM_PER_M) / RAD_PER_S;
        if (limit === 0) {
          expect(offAt(1e-3 * any.rimMm)).toBeGreaterThan(1e-9);
          return;
        }
        expect(endedBy).not.toBeNull();
        for (const share of [0.2, 0.6, 0.95, 1 - 1e-6]) expect(offAt(share * limit)).toBeLessThan(1e-9);
        const above = [1.0001, 1.001, 1.01].map((share) => offAt(share * limit));
        expect(Math.max(...above)).toBeGreaterThan(1e-9);
      }),
      { seed: 106, numRuns: 120 },
    );
  });
});

describe("a wanted depth", () => {
  it("is reached at the speed and at the spin told, and below neither", () => {
    fc.assert(
      ofProfile(fc.double({ min: 0.02, max: 0.5, noNaN: true }), (any, share) => {
        const depth = share * any.rimMm;
        const kappa = advanceForDepth(any, depth);
        if (kappa === null) return;
        const teeth = any.teeth(SQUARE_RAD);
        expect(biteAtAdvance(any, teeth, kappa * (1 + 1e-9)).maxMm).toBeGreaterThanOrEqual(
          depth * (1 - 1e-6),
        );
        const closing = closingForDepth(any, depth, RAD_PER_S) ?? 0;
        expectClose(closing, (kappa * RAD_PER_S) / MM_PER_M, 1e-12);
        expectClose(spinForDepth(any, depth, closing) ?? 0, RAD_PER_S, 1e-12);
        for (const less of [0.3, 0.7, 0.99])
          expect(biteAtAdvance(any, teeth, less * kappa).maxMm).toBeLessThan(depth * (1 + 1e-9));
      }),
      { seed: 107, numRuns: 80 },
    );
  });
});

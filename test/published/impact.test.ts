/** Blows of textbooks. Each is a rod on a pin, which is a bar on a robot that is held fast. */
import { describe, expect, it } from "vitest";
import { type Impact, impactOf, type StrikingBar } from "../../geometry/fight/impact/impact.ts";
import { percussionOf } from "../../geometry/fight/impact/percussion.ts";
import { norm, ORIGIN } from "../../geometry/outline/vector.ts";
import { HELD_FAST } from "../fight/impact/blows.ts";
import { expectClose } from "../support/close-to.ts";
import { expectPrinted } from "../support/printed.ts";

/** A uniform rod that hangs from its end or turns about its middle; down is −y, and the blow comes from −x. */
const hanging = (massKg: number, lengthM: number): StrikingBar => ({
  massKg,
  inertiaKgM2: (massKg * lengthM ** 2) / 3,
  centreM: { x: 0, y: -lengthM / 2 },
  spinRadPerS: 0,
});
const aboutMiddle = (massKg: number, lengthM: number): StrikingBar => ({
  massKg,
  inertiaKgM2: (massKg * lengthM ** 2) / 12,
  centreM: ORIGIN,
  spinRadPerS: 0,
});

/** A ball flies into a rod that hangs at rest. */
function ballIntoRod(
  rod: StrikingBar,
  ball: { kg: number; mPerS: number; belowPinM: number; restitution: number },
): Impact {
  const atM = { x: 0, y: -ball.belowPinM };
  const impact = impactOf({
    bar: rod,
    robot: HELD_FAST,
    opponent: {
      massKg: ball.kg,
      inertiaKgM2: 1,
      centreM: atM,
      velocityMPerS: { x: ball.mPerS, y: 0 },
      restitution: ball.restitution,
    },
    // The rod pushes the ball back.
    strike: { atM, along: { x: -1, y: 0 } },
  });
  if (!impact) throw new Error("no blow");
  return impact;
}

// Beer & Johnston, Vector Mechanics for Engineers: Dynamics, Sample Problem 17.10: 3.21 rad/s, −0.143 m/s. Seen.
describe("a sphere of 2 kg at 5 m/s against the end of a hinged rod of 8 kg and 1.2 m, e = 0.8", () => {
  const impact = ballIntoRod(hanging(8, 1.2), { kg: 2, mPerS: 5, belowPinM: 1.2, restitution: 0.8 });

  it("sets the rod turning and bounces back as printed", () => {
    expectPrinted(impact.barAfter.spinRadPerS, "3.21");
    expectPrinted(impact.opponentAfter.velocityMPerS.x, "-0.143");
  });

  // Worked out from the same: J = m_eff·(1 + e)·v with 1/m_eff = 1/2 + 1.2²/3.84.
  it("has the impulse and the loss of the exact solution", () => {
    expectClose(impact.barAfter.spinRadPerS, 45 / 14, 1e-12);
    expectClose(impact.impulseNS, 72 / 7, 1e-12);
    expectClose(impact.effectiveMassKg, 8 / 7, 1e-12);
    expectClose(impact.energy.lostJ, 36 / 7, 1e-12);
  });
});

// Halliday, Resnick & Walker, Fundamentals of Physics, the problem of Fig. 11-50: 1.3·10³ m/s. The second row is a worked
// variant of it with other numbers: 1442 m/s. Both seen.
it.each([
  [3, 4, 0.5, 10, 1300, 50],
  [3.1, 4.6, 0.42, 12, 1442, 0.5],
])(
  "a bullet of %d g that lodges at 60° in the end of a rod of %d kg and %d m, which then turns at %d rad/s",
  (g, kg, m, spin, mPerS, within) => {
    const perMPerS = ballIntoRod(aboutMiddle(kg, m), {
      kg: g / 1000,
      mPerS: Math.sin(Math.PI / 3),
      belowPinM: m / 2,
      restitution: 0,
    }).barAfter.spinRadPerS;
    expect(Math.abs(spin / perMPerS - mPerS)).toBeLessThan(within);
  },
);

// A problem of physics courses, its data seen: rod of 400 g and 60 cm, 21 g at 300 cm/s, 46 cm from the pivot.
it("a bullet of 21 g at 3 m/s that sticks 0.46 m below the pivot of a rod of 0.4 kg and 0.6 m", () => {
  const impact = ballIntoRod(hanging(0.4, 0.6), { kg: 0.021, mPerS: 3, belowPinM: 0.46, restitution: 0 });
  expectPrinted(impact.barAfter.spinRadPerS, "0.55259");
});

// A problem of physics courses, its data seen; the answer worked out from Iω + m·r²ω = m·v·r, with 9.8 m/s² as there.
it("clay of 2 kg at 14 m/s that sticks 1.3 m below the pivot of a bar of 75 N and 3 m", () => {
  const impact = ballIntoRod(hanging(75 / 9.8, 3), { kg: 2, mPerS: 14, belowPinM: 1.3, restitution: 0 });
  expectClose(impact.barAfter.spinRadPerS, (2 * 14 * 1.3) / ((75 / 9.8) * 3 + 2 * 1.3 ** 2), 1e-12);
});

describe("linear momentum of a rod on a pin", () => {
  // The classic mistake, seen worked out wrongly: a pin gives an impulse of its own, so that linear momentum of rod and
  // ball alone is not kept, except for a blow at the centre of percussion.
  it("is not kept: the pin takes part in the blow", () => {
    const [kg, mPerS] = [0.021, 3];
    const rod = hanging(0.4, 0.6);
    const impact = ballIntoRod(rod, { kg, mPerS, belowPinM: 0.46, restitution: 0 });
    const wrong = (kg * mPerS) / (rod.massKg * 0.3 + kg * 0.46);
    expect(Math.abs(impact.barAfter.spinRadPerS / wrong - 1)).toBeGreaterThan(0.1);
    const gained = rod.massKg * impact.barAfter.velocityMPerS.x + kg * impact.opponentAfter.velocityMPerS.x;
    expectClose(gained - kg * mPerS, impact.axleImpulseNS.x, 1e-12, kg * mPerS);
  });
});

describe("the centre of percussion", () => {
  const strike = (belowM: number) => ({ atM: { x: 0, y: -belowM }, along: { x: -1, y: 0 } });

  // A table of any physics course: 2L/3 for a uniform rod about its end. Seen.
  it("of a rod about its end is at two thirds of its length", () => {
    expectClose(percussionOf(hanging(3, 0.9), strike(0.9))?.radiusM, 0.6, 1e-12);
    expectClose(percussionOf(hanging(3, 0.9), strike(0.9))?.strikeBeyondM, 0.3, 1e-12);
  });

  // A worked example for a bat, its data seen: 0.8 kg, centre of mass 0.600 m from the pivot, 0.0530 kg·m² about it.
  it("of a bat", () => {
    const bat = { massKg: 0.8, inertiaKgM2: 0.053 + 0.8 * 0.6 ** 2, centreM: { x: 0, y: -0.6 } };
    expectPrinted(percussionOf(bat, strike(0.7))?.radiusM, "0.71042");
  });

  it("is where a blow leaves the pin alone, and nowhere else", () => {
    const rod = hanging(8, 1.2);
    const pin = (belowPinM: number) =>
      ballIntoRod(rod, { kg: 2, mPerS: 5, belowPinM, restitution: 0.5 }).axleImpulseNS;
    expect(norm(pin(0.8))).toBeLessThan(1e-14);
    expect(pin(0.7).x).toBeLessThan(-0.1);
    expect(pin(0.9).x).toBeGreaterThan(0.1);
  });

  it("is nowhere on a bar in balance", () => {
    expect(percussionOf(aboutMiddle(2, 0.3), strike(0.15))).toBeNull();
  });
});

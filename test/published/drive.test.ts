/** Motors, belts, shafts and discs in air, as published. */
import { describe, expect, it } from "vitest";
import {
  barDragNMS2,
  discReynolds,
  laminarDiscNM,
  turbulentDiscNM,
} from "../../geometry/fight/drive/air-drag.ts";
import {
  grooveFriction,
  leastSlackN,
  slipTorqueNM,
  tensionRatio,
  turningTensionN,
} from "../../geometry/fight/drive/belt.ts";
import {
  emfFromNoLoad,
  idealSpeedRadPerS,
  type Motor,
  peakPowerW,
  stallA,
  stallNM,
  torqueConstant,
} from "../../geometry/fight/drive/motor.ts";
import { beltLoad, keyStress, setScrewNM, shaftStress } from "../../geometry/fight/drive/shaft.ts";
import { endRadPerS, spinAfterRadPerS } from "../../geometry/fight/drive/stretch.ts";
import { expectClose } from "../support/close-to.ts";
import { expectPrinted } from "../support/printed.ts";

const rpm = (radPerS: number) => (radPerS * 60) / (2 * Math.PI);
const radPerS = (turns: number) => (turns * 2 * Math.PI) / 60;
const radians = (degrees: number) => (degrees * Math.PI) / 180;

describe("a motor", () => {
  // Worked out: 60/(2π·1000).
  it("of 1000 rpm/V has 9.54930 mN·m/A", () => expectPrinted(torqueConstant(1000) * 1000, "9.54930"));

  // A maker's data sheet: 51 V at 1000 rpm and 0.49 N·m/A; exact 0.48701. Seen.
  it("of 51 V at 1000 rpm has the torque constant of its sheet", () => {
    const own = torqueConstant(1000 / 51);
    expectPrinted(own, "0.49");
    expectPrinted(own, "0.48701");
  });

  // A maker's data sheet of a small motor: 1.5 V, 17 300 rpm, 34.1 mA without load; 0.453 mN·m and 0.581 A held still. Data seen.
  it("has the same constant by torque and by speed", () => {
    const byTorque = 0.453 / 0.581;
    const run = { volts: 1.5, amperes: 0.0341, resistanceOhm: 1.5 / 0.581, radPerS: radPerS(17_300) };
    expectPrinted(byTorque, "0.7797");
    expectPrinted(emfFromNoLoad(run) * 1000, "0.7794");
    expectClose(emfFromNoLoad(run) * 1000, byTorque, 1e-3);
  });

  // A worked example, data seen: 10 V, 1.5 Ω, 0.12 N·m/A and 12 V at 1000 rpm, which are not the same number.
  it("of 10 V, 1.5 Ω, 0.12 N·m/A and 12 V at 1000 rpm", () => {
    const emfVPerRadPerS = torqueConstant(1000 / 12);
    const motor: Motor = {
      torqueNMPerA: 0.12,
      emfVPerRadPerS,
      resistanceOhm: 1.5,
      noLoadA: 0,
      rotorInertiaKgM2: 0,
    };
    expectPrinted(rpm(idealSpeedRadPerS(motor, 10)), "833.33");
    expectPrinted(stallA(motor, 10), "6.667");
    expectPrinted(stallNM(motor, 10), "0.8");
    expectPrinted(peakPowerW(motor, 10), "17.453");
  });
});

describe("a motor spinning up", () => {
  // GATE 2020, Electrical Engineering, question 34: 6.32 rad/s after 0.5 s, 10 rad/s in the end, so τ = 0.5 s. Data seen.
  it("that ends at 10 rad/s with a time constant of 0.5 s is at 6.32 rad/s after 0.5 s", () => {
    const stretch = { inertiaKgM2: 0.5, torqueNM: 10, perRadPerS: 1, perRadPerSSquared: 0 };
    expectPrinted(endRadPerS(stretch), "10");
    expectPrinted(spinAfterRadPerS(stretch, 0, 0.5), "6.32");
  });

  // A widely used example of control courses, data seen: J 3.2284e-6, R 4, K 0.0274, B 3.5077e-6 (SI).
  it.each([
    [0, 0.0172007],
    [3.5077e-6, 0.0168851],
  ])("with a viscous friction of %d has the time constant %d s", (viscous, tau) => {
    const [inertiaKgM2, ohm, k] = [3.2284e-6, 4, 0.0274];
    const stretch = {
      inertiaKgM2,
      torqueNM: k / ohm,
      perRadPerS: k ** 2 / ohm + viscous,
      perRadPerSSquared: 0,
    };
    expectClose(spinAfterRadPerS(stretch, 0, tau), endRadPerS(stretch) * (1 - Math.exp(-1)), 1e-5);
  });
});

describe("a belt", () => {
  // Capstan tables: friction and turns. Worked out from e^(μθ).
  it.each([
    [0.1, 1, "1.87446"],
    [0.3, 2, "43.3762"],
    [0.5, 1, "23.1407"],
  ])("with friction %d over %d turns", (friction, turns, ratio) => {
    expectPrinted(
      tensionRatio({ friction, grooveRad: null, wrapRad: 2 * Math.PI * turns, kgPerM: 0 }),
      ratio,
    );
  });

  // A published worked example: tight side 6.75 N, centrifugal 2.25 N, μ 0.12, 2.543 rad: 5.56 N; exact 5.5665. Seen.
  it("has its own turning taken off both sides", () => {
    const ratio = tensionRatio({ friction: 0.12, grooveRad: null, wrapRad: 2.543, kgPerM: 0 });
    expectPrinted(leastSlackN(6.75, 2.25, ratio), "5.56", 1);
    expectPrinted(leastSlackN(6.75, 2.25, ratio), "5.5665");
  });

  // Of any handbook: a groove of β acts as μ/sin(β/2).
  it("in a groove of 40° grips as if its friction were 2.924 times as much", () => {
    const belt = { friction: 0.3, grooveRad: radians(40), wrapRad: Math.PI, kgPerM: 0.1 };
    expectClose(grooveFriction(belt), 0.3 / Math.sin(radians(20)), 1e-15);
    expectPrinted(grooveFriction({ ...belt, friction: 1 }), "2.924");
  });

  it("slips where the sides that its tension allows are in the ratio that friction allows", () => {
    const belt = { friction: 0.3, grooveRad: radians(40), wrapRad: 2.5, kgPerM: 0.1 };
    const [rest, radius, speed] = [150, 0.03, 20];
    const difference = slipTorqueNM(belt, rest, radius, speed) / radius;
    const [tight, slack] = [rest + difference / 2, rest - difference / 2];
    const turning = turningTensionN(belt, speed);
    expectClose(turning, 40, 1e-15);
    expectClose((tight - turning) / (slack - turning), tensionRatio(belt), 1e-12);
    expectClose(leastSlackN(tight, turning, tensionRatio(belt)), slack, 1e-12);
    expect(slipTorqueNM(belt, 40, radius, speed)).toBe(0);
  });
});

describe("a shaft", () => {
  const bending = (bendingNM: number, torqueNM: number, axialN = 0) => ({ bendingNM, torqueNM, axialN });

  // MecMovies M6.17: 424.413 N·m at 75 MPa need 30.660 mm. Seen.
  it("of 30.660 mm has 75 MPa of shear from 424.413 N·m", () => {
    expectPrinted(shaftStress(0.03066, bending(0, 424.413)).shearMPa, "75.00");
  });

  // A published worked example: 75 mm, 2400 N·m of bending, 135 MPa, by maximum shear 5.05 kN·m. Seen. By distortion energy 5831 N·m,
  // worked out.
  it("of 75 mm with 2400 N·m of bending is at 135 MPa", () => {
    const { normalMPa, shearMPa } = shaftStress(0.075, bending(2400, 5050));
    expectClose(Math.hypot(normalMPa, 2 * shearMPa), 135, 1e-3);
    expectClose(shaftStress(0.075, bending(2400, 5831)).equivalentMPa, 135, 1e-4);
  });

  // A worked example of a machine design text, data seen: 15 mm, 3 kN of pull, 65 N·m, 50 N·m of bending, 400 MPa.
  it("of 15 mm with pull, torque and bending", () => {
    const stress = shaftStress(0.015, bending(50, 65, 3000));
    expectPrinted(stress.normalMPa, "167.88");
    expectPrinted(stress.shearMPa, "98.09");
    expectPrinted(stress.equivalentMPa, "238.84");
    expectPrinted(400 / stress.equivalentMPa, "1.675");
  });

  it("is bent by both sides of its belt and turned by their difference", () => {
    expect(beltLoad(200, 50, 0.02, 0.03)).toEqual({ bendingNM: 7.5, torqueNM: 3, axialN: 0 });
  });
});

describe("what holds a pulley", () => {
  // Mott, Machine Elements in Mechanical Design, 4th ed., eq. 11-1 and 11-3: τ = 2T/(D·W·L), σ = 4T/(D·L·H). Formulas seen.
  it("a key", () => {
    const { shearMPa, pressureMPa } = keyStress(40, 0.02, { widthM: 0.006, heightM: 0.006, lengthM: 0.025 });
    expectClose(shearMPa, (2 * 40) / (0.02 * 0.006 * 0.025) / 1e6, 1e-14);
    expectClose(pressureMPa, (4 * 40) / (0.02 * 0.025 * 0.006) / 1e6, 1e-14);
  });

  it("set screws, by friction on the radius of the bore", () => {
    expectClose(setScrewNM(2, 4000, 0.008), 2 * 4000 * 0.004, 1e-15);
  });
});

describe("drag of air", () => {
  const air = { kgPerM3: 1.2, m2PerS: 1.5e-5 };

  // Both faces of a disc, turbulent 0.073·ρ·Ω²·R⁵·Re^(−0.2), laminar 0.616·π·ρ·R⁴·√(ν·Ω³). Formulas seen, numbers worked out.
  it("of a disc of 0.2 m at 500 rad/s", () => {
    expectClose(discReynolds(500, 0.2, air.m2PerS), 1.3333e6, 1e-4);
    expectPrinted(turbulentDiscNM(500, 0.2, air), "0.41745");
    expectPrinted(turbulentDiscNM(500, 0.2, air) * 500, "208.73");
    expect(laminarDiscNM(500, 0.2, air)).toBeLessThan(turbulentDiscNM(500, 0.2, air));
    expectClose(
      laminarDiscNM(500, 0.2, air),
      0.616 * Math.PI * 1.2 * 0.2 ** 4 * Math.sqrt(1.5e-5 * 500 ** 3),
      1e-12,
    );
  });

  // Cd 1.98 of a long plate: Aeronautical Engineer's Data Book. Seen. The integral over both arms is done here by steps.
  it("of a bar of two arms is that of each of its parts, a long plate square to the wind", () => {
    const [height, radius, spin, parts] = [0.012, 0.2, 400, 100_000];
    let torque = 0;
    for (let i = 0; i < parts; i++) {
      const at = ((i + 0.5) / parts) * radius;
      torque += 2 * 0.5 * 1.2 * 1.98 * height * (radius / parts) * (spin * at) ** 2 * at;
    }
    expectClose(barDragNMS2(height, radius, 1.2) * spin ** 2, torque, 1e-8);
  });
});

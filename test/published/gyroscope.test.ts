/** Gyroscopic moments of textbooks, on the vehicle H × Ω, x ahead, y left, z up. */
import { describe, expect, it } from "vitest";
import { gyroscopicMomentNM, type Vector3 } from "../../geometry/fight/handling/gyroscope.ts";
import { expectClose } from "../support/close-to.ts";
import { expectPrinted } from "../support/printed.ts";

const radPerS = (rpm: number) => (rpm * 2 * Math.PI) / 60;
const vector = (x: number, y: number, z: number): Vector3 => ({ x, y, z });
/** A moment about −y lifts the nose. */
const noseUp = (moment: Vector3) => -moment.y;

describe("an airscrew or turbine that turns clockwise seen from behind, so about the way it goes", () => {
  // Textbooks of theory of machines, two of them; seen: turning left lifts the nose, turning right lowers it.
  it("lifts the nose in a left turn, and lowers it in a right turn", () => {
    expect(noseUp(gyroscopicMomentNM(vector(1, 0, 0), vector(0, 0, 1)))).toBe(1);
    expect(noseUp(gyroscopicMomentNM(vector(1, 0, 0), vector(0, 0, -1)))).toBe(-1);
  });

  // One published answer to a ship problem has it the wrong way round: bow up in a right turn, and the turn to the left of a bow
  // that pitches up. What holds: bow down in a right turn, and a bow that pitches up (Ω about −y) is turned to the right.
  it("lowers the bow in a right turn and turns a bow that pitches up to the right", () => {
    expect(noseUp(gyroscopicMomentNM(vector(1, 0, 0), vector(0, 0, -1)))).toBeLessThan(0);
    expect(gyroscopicMomentNM(vector(1, 0, 0), vector(0, -1, 0)).z).toBeLessThan(0);
  });

  it("feels nothing as it rolls", () => {
    const { x, y, z } = gyroscopicMomentNM(vector(5, 0, 0), vector(3, 0, 0));
    expect(Math.hypot(x, y, z)).toBe(0);
  });
});

// A textbook of theory of machines, chapter 14, Example 14.2 (Khurmi & Gupta; authors from memory): 116.5 N up and 67.5 N down,
// worked there with the moment of inertia rounded to 0.014 kg·m². Seen.
describe("a disc of 5 kg and 150 mm at 1000 rpm, its axle turned at 60 rpm, bearings 100 mm apart", () => {
  const inertia = (kgM2: number) =>
    gyroscopicMomentNM(vector(0, kgM2 * radPerS(1000), 0), vector(0, 0, radPerS(60)));

  it("has the loads printed, with the inertia printed", () => {
    const couple = Math.hypot(inertia(0.014).x, inertia(0.014).y, inertia(0.014).z);
    const [pushed, weight] = [couple / 0.1, (5 * 9.81) / 2];
    // The couple is rounded to 9.2 N·m there, which is 1 N at the bearings.
    expect(Math.abs(pushed + weight - 116.5)).toBeLessThan(1);
    expect(Math.abs(pushed - weight - 67.5)).toBeLessThan(1);
  });

  it("has the couple of the exact inertia", () => {
    expectPrinted(Math.abs(inertia((5 * 0.075 ** 2) / 2).x), "9.2528");
  });
});

// The same, Example 14.3, data seen: 400 kg, radius of gyration 0.3 m, 2400 rpm, 200 km/h round 50 m.
it("an engine of 400 kg in an aeroplane that turns", () => {
  const yaw = 200 / 3.6 / 50;
  const moment = gyroscopicMomentNM(vector(400 * 0.3 ** 2 * radPerS(2400), 0, 0), vector(0, 0, yaw));
  expectPrinted(noseUp(moment), "10053.1");
});

// A turbine rotor in a ship that pitches, data seen: 750 kg, radius of gyration 0.25 m, 1500 rpm, 1 rad/s.
it("a rotor of 750 kg in a ship that pitches", () => {
  const moment = gyroscopicMomentNM(vector(750 * 0.25 ** 2 * radPerS(1500), 0, 0), vector(0, 1, 0));
  expectClose(Math.abs(moment.z), 7363.1, 1e-5);
});

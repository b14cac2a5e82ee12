/** Signs and sizes against cross products written out here, and against the equations of motion followed step by step. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  evenSpeedMPerS,
  inverted,
  rollPerYaw,
  type Steered,
  yawLimit,
} from "../../../geometry/fight/handling/handling.ts";
import { leastTimeS, meanTorqueNM, pitchingOf } from "../../../geometry/fight/handling/pitching.ts";
import { steeringChart } from "../../../geometry/fight/handling/steering-chart.ts";
import { steeringWords } from "../../../geometry/fight/handling/steering-words.ts";
import { expectClose } from "../../support/close-to.ts";
import { axisAfterTorque, meanMomentOfCarriedBar } from "./euler.ts";

type Vector = readonly [number, number, number];
const cross = ([a, b, c]: Vector, [p, q, r]: Vector): Vector => [b * r - c * q, c * p - a * r, a * q - b * p];

const ROBOT: Steered = {
  massKg: 13.6,
  trackM: 0.3,
  centreHeightM: 0.04,
  angularMomentumKgM2PerS: 5.3,
  edge: "up",
};
const EDGES = ["up", "down"] as const;
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyRobot: fc.Arbitrary<Steered> = fc.record({
  massKg: real(1, 110),
  trackM: real(0.05, 1),
  centreHeightM: real(0.01, 0.3),
  angularMomentumKgM2PerS: real(0.01, 200),
  edge: fc.constantFrom(...EDGES),
});

/** A spin that moves the point ahead of the axle up is about −y: (−ω ŷ) × x̂ = ω ẑ. */
const spinOf = ({ edge }: Steered): Vector => [0, edge === "up" ? -1 : 1, 0];

/** Loads of the left and the right wheels of a robot that turns left at a yaw rate, moments taken about the floor. */
function wheelLoads(robot: Steered, groundMPerS: number, yaw: number): { left: number; right: number } {
  const { massKg, trackM, centreHeightM } = robot;
  const momentum = spinOf(robot).map((part) => part * robot.angularMomentumKgM2PerS) as unknown as Vector;
  // On the rotor Ω × H; on the robot the opposite.
  const ofBar = -cross([0, 0, yaw], momentum)[0];
  // The floor pushes towards the inside, a height below the centre of mass.
  const ofCornering = cross([0, 0, -centreHeightM], [0, massKg * groundMPerS * yaw, 0])[0];
  // A load at y has the moment y·N about x.
  const shift = (ofBar + ofCornering) / trackM;
  const half = (massKg * 9.80665) / 2;
  return { left: half - shift, right: half + shift };
}

describe("the spin of a bar whose front edge moves up", () => {
  it("is about −y: what is ahead of the axle moves up", () => {
    expect(cross(spinOf(ROBOT), [1, 0, 0])[2]).toBe(1);
  });
});

describe("the yaw rate at which a wheel lifts", () => {
  it("takes all load off that wheel, and no more", () => {
    fc.assert(
      fc.property(anyRobot, real(-10, 10), fc.constantFrom(1, -1), (robot, ground, side) => {
        const { radPerS, lifts } = yawLimit(robot, ground);
        fc.pre(Number.isFinite(radPerS) && radPerS < 1e6);
        const { left, right } = wheelLoads(robot, ground, side * radPerS);
        const [inner, outer] = side > 0 ? [left, right] : [right, left];
        const weight = robot.massKg * 9.80665;
        const [lifted, pressed] = lifts === "inner" ? [inner, outer] : [outer, inner];
        expectClose(lifted, 0, 1e-9, weight * (1 + radPerS));
        expectClose(pressed, weight, 1e-9, weight * (1 + radPerS));
      }),
    );
  });

  it("on the spot is the same both ways up, and m·g·w/(2·I·ω)", () => {
    for (const edge of EDGES) {
      expectClose(yawLimit({ ...ROBOT, edge }, 0).radPerS, (13.6 * 9.80665 * 0.3) / 2 / 5.3, 1e-12);
    }
  });

  it("on the spot lifts the outer wheel with the edge moving up, the inner one with it moving down", () => {
    expect(yawLimit(ROBOT, 0).lifts).toBe("outer");
    expect(yawLimit({ ...ROBOT, edge: "down" }, 0).lifts).toBe("inner");
  });

  it("rises with the ground speed for an edge that moves up and falls for one that moves down", () => {
    const limits = [0, 1, 2, 3].map((ground) => [
      yawLimit(ROBOT, ground).radPerS,
      yawLimit({ ...ROBOT, edge: "down" }, ground).radPerS,
    ]);
    for (let i = 1; i < limits.length; i++) {
      expect(limits[i]?.[0]).toBeGreaterThan(limits[i - 1]?.[0] ?? Number.NaN);
      expect(limits[i]?.[1]).toBeLessThan(limits[i - 1]?.[1] ?? Number.NaN);
    }
  });

  it("is none at the speed at which bar and cornering cancel", () => {
    const robot = { ...ROBOT, massKg: 16, centreHeightM: 0.0625, angularMomentumKgM2PerS: 4 };
    expect(evenSpeedMPerS(robot)).toBe(4);
    expect(yawLimit(robot, 4)).toEqual({ radPerS: Number.POSITIVE_INFINITY, lifts: null });
    expect(evenSpeedMPerS({ ...robot, edge: "down" })).toBe(-4);
    expect(yawLimit({ ...robot, edge: "down" }, -4).lifts).toBeNull();
  });

  it("without a bar is that of cornering: a lateral acceleration of g·w/2h", () => {
    const { radPerS, lifts } = yawLimit({ ...ROBOT, angularMomentumKgM2PerS: 0 }, 5);
    expectClose(radPerS * 5, (9.80665 * 0.3) / 0.08, 1e-12);
    expect(lifts).toBe("inner");
  });
});

describe("on its back", () => {
  it("the bar turns the other way, as rolling its spin over by half a turn shows", () => {
    fc.assert(
      fc.property(anyRobot, (robot) => {
        const [x, y, z] = spinOf(robot);
        const rolled: Vector = [x, -y, -z];
        expect(spinOf(inverted(robot, 0.06))[1]).toBe(rolled[1]);
        expect(inverted(robot, 0.06).centreHeightM).toBe(0.06);
      }),
    );
  });
});

describe("the moment of the bar", () => {
  // No engine is asked: Euler's equations of the turning body, in steps of a microsecond.
  it.each(EDGES)("keeps an axle level and turning as it should when put on the rotor, edge %s", (edge) => {
    const [inertia, spin, yaw] = [0.012, 300, 2];
    const robot = { ...ROBOT, angularMomentumKgM2PerS: inertia * spin, edge };
    const onRobot = rollPerYaw(robot, 0).bar * yaw;
    const axis = axisAfterTorque({
      inertia,
      spin: spin * (edge === "up" ? -1 : 1),
      yaw,
      onRotor: -onRobot,
      seconds: 0.2,
    });
    const turned = yaw * 0.2;
    expectClose(axis.x, -Math.sin(turned), 1e-5, 1);
    expectClose(axis.y, Math.cos(turned), 1e-5, 1);
    expectClose(axis.z, 0, 1e-5, 1);
  });

  it.each(EDGES)(
    "is the mean of what a slender bar gives, edge %s, which swings by as much again",
    (edge) => {
      const [inertia, spin, yaw] = [0.012, 300, 2];
      const robot = { ...ROBOT, angularMomentumKgM2PerS: inertia * spin, edge };
      const own = rollPerYaw(robot, 0).bar * yaw;
      const { mean, most } = meanMomentOfCarriedBar({ inertia, spin: spin * (edge === "up" ? -1 : 1), yaw });
      expectClose(mean, own, 1e-6);
      expectClose(most, 2 * Math.abs(own), 1e-3);
    },
  );
});

describe("the torque that turns the bar", () => {
  it("comes back on the robot: (0, ∓T, 0) on the bar, its opposite on the frame, which lifts what is ahead or not", () => {
    for (const edge of EDGES) {
      const onFrame: Vector = [0, edge === "up" ? 7 : -7, 0];
      const liftsAhead = cross(onFrame, [1, 0, 0])[2];
      expect(pitchingOf(7, edge)).toEqual({ spinUpNM: liftsAhead, brakingNM: -liftsAhead });
    }
    expect(pitchingOf(7, "up").spinUpNM).toBe(-7);
  });

  it("lifts the wheels in the least time, when its moment is that of the weight", () => {
    const seconds = leastTimeS(5.3, 13.6, 0.12);
    expectClose(meanTorqueNM(5.3, seconds), 13.6 * 9.80665 * 0.12, 1e-12);
  });
});

describe("the chart", () => {
  it("has the limits of both ways at even ground speeds", () => {
    const chart = steeringChart(ROBOT, 6, 4);
    expect(chart.map(({ groundMPerS }) => groundMPerS)).toEqual([0, 2, 4, 6]);
    expect(chart[2]?.edgeUpRadPerS).toBe(yawLimit(ROBOT, 4).radPerS);
    expect(chart[2]?.edgeDownRadPerS).toBe(yawLimit({ ...ROBOT, edge: "down" }, 4).radPerS);
  });
});

describe("the words", () => {
  it("say which way helps and which hurts, as the numbers do", () => {
    expect(steeringWords("up")).toContain("leans it into the turn, against the load shift");
    expect(steeringWords("down")).toContain("the two add up");
    const { bar, cornering } = rollPerYaw(ROBOT, 3);
    expect(bar * cornering).toBeLessThan(0);
    const down = rollPerYaw({ ...ROBOT, edge: "down" }, 3);
    expect(down.bar * down.cornering).toBeGreaterThan(0);
  });
});

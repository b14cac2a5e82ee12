/** What a blow does to the front of one's own robot, by the direction of the strike. */
import { describe, expect, it } from "vitest";
import { velocityAt } from "../../../geometry/fight/impact/body.ts";
import { type Impact, impactOf, type StruckOpponent } from "../../../geometry/fight/impact/impact.ts";
import { type Edge, spinSign, strikeAt } from "../../../geometry/fight/impact/strike.ts";
import { ORIGIN } from "../../../geometry/outline/vector.ts";
import { expectClose } from "../../support/close-to.ts";

const REAR = { x: -0.25, y: -0.05 };
const FRONT = { x: 0.02, y: -0.05 };

function struck(
  edge: Edge,
  aboveLevelRad = 0,
  opponent: Partial<StruckOpponent> = {},
  front = FRONT,
): Impact {
  const strike = strikeAt(0.13, aboveLevelRad, edge);
  const impact = impactOf({
    bar: { massKg: 1.6, inertiaKgM2: 0.012, centreM: ORIGIN, spinRadPerS: 440 * spinSign(edge) },
    robot: {
      massKg: 12,
      inertiaKgM2: 0.2,
      centreM: { x: -0.13, y: 0 },
      speedMPerS: 0,
      standsAtM: [REAR, front],
    },
    opponent: {
      massKg: 13.6,
      inertiaKgM2: 0.2,
      centreM: strike.atM,
      velocityMPerS: ORIGIN,
      restitution: 0.3,
      ...opponent,
    },
    strike,
  });
  if (!impact) throw new Error("no blow");
  return impact;
}

describe("a strike upwards", () => {
  const impact = struck("up");

  it("throws the opponent up and presses the own front down on the floor, which holds it", () => {
    expect(impact.opponentAfter.velocityMPerS.y).toBeGreaterThan(1);
    expect(impact.frontLiftNMS).toBeLessThan(0);
    expect(impact.floorImpulseNS[1]).toBeGreaterThan(0);
    expect(velocityAt(impact.robotAfter, FRONT).y).toBeCloseTo(0, 12);
  });

  it("acts on the front by the axle's impulse at the axle's distance from the rear wheels", () => {
    expectClose(
      impact.frontLiftNMS ?? undefined,
      -impact.axleImpulseNS.y * 0.25 + impact.axleImpulseNS.x * 0.05,
      1e-12,
    );
  });

  it("on a balanced bar has the axle take all of the blow, and what the bar itself takes along", () => {
    const taken = 1.6 * impact.barAfter.velocityMPerS.y;
    expectClose(impact.axleImpulseNS.y, impact.impulseNS + taken, 1e-12);
  });

  it("presses all wheels if the axle is between them", () => {
    expect(impact.floorImpulseNS[0]).toBeGreaterThan(0);
  });

  it("tips the robot over its front wheels if the axle is ahead of them", () => {
    const tipped = struck("up", 0, {}, { x: -0.08, y: -0.05 });
    expect(tipped.floorImpulseNS[0]).toBe(0);
    expect(velocityAt(tipped.robotAfter, REAR).y).toBeGreaterThan(0);
  });
});

describe("a strike downwards", () => {
  const impact = struck("down", 0, {
    massKg: Number.POSITIVE_INFINITY,
    inertiaKgM2: Number.POSITIVE_INFINITY,
  });

  it("on one that is pressed to the floor lifts the own front and presses the rear", () => {
    expect(impact.frontLiftNMS).toBeGreaterThan(0);
    expect(velocityAt(impact.robotAfter, FRONT).y).toBeGreaterThan(0);
    expect(impact.robotAfter.spinRadPerS).toBeGreaterThan(0);
    expect(impact.floorImpulseNS[1]).toBe(0);
  });

  it("takes more off the spin than one on an opponent that gives way", () => {
    expect(impact.spinLeftShare).toBeLessThan(struck("down").spinLeftShare ?? Number.NaN);
  });
});

describe("a strike below the axle with the front edge moving up", () => {
  it("drives the opponent ahead and the own robot back", () => {
    const impact = struck("up", -Math.PI / 3);
    expect(impact.opponentAfter.velocityMPerS.x).toBeGreaterThan(0);
    expect(impact.robotAfter.velocityMPerS.x).toBeLessThan(0);
  });
});

describe("a tooth that moves away from its opponent", () => {
  it("strikes no blow", () => {
    const strike = strikeAt(0.13, 0, "up");
    const blow = {
      bar: { massKg: 1.6, inertiaKgM2: 0.012, centreM: ORIGIN, spinRadPerS: -440 },
      robot: { massKg: 12, inertiaKgM2: 0.2, centreM: { x: -0.1, y: 0 }, speedMPerS: 0, standsAtM: [] },
      opponent: { massKg: 1, inertiaKgM2: 1, centreM: strike.atM, velocityMPerS: ORIGIN, restitution: 0 },
      strike,
    };
    expect(impactOf(blow)).toBeNull();
    expect(impactOf({ ...blow, bar: { ...blow.bar, spinRadPerS: 0 } })).toBeNull();
  });
});

/** Blows for tests: any that a robot could deal, and what they have to keep. */
import fc from "fast-check";
import type { Body } from "../../../geometry/fight/impact/body.ts";
import type { Blow, Impact } from "../../../geometry/fight/impact/impact.ts";
import { strikeAt } from "../../../geometry/fight/impact/strike.ts";
import { cross, ORIGIN, plus, times } from "../../../geometry/outline/vector.ts";

export const HELD_FAST = {
  massKg: Number.POSITIVE_INFINITY,
  inertiaKgM2: Number.POSITIVE_INFINITY,
  centreM: ORIGIN,
  speedMPerS: 0,
  standsAtM: [],
};

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const place = (size: number) => fc.record({ x: real(-size, size), y: real(-size, size) });

/** A bar of 1 to 3 kg on a robot of up to 60, an opponent of any weight, on the floor or in the air. */
export const anyBlow: fc.Arbitrary<Blow> = fc
  .record({
    barKg: real(0.5, 3),
    gyrationM: real(0.05, 0.15),
    barCentreM: place(0.02),
    spinRadPerS: real(20, 1000),
    robotKg: real(1, 60),
    robotGyrationM: real(0.05, 0.3),
    robotCentreM: fc.record({ x: real(-0.3, -0.05), y: real(-0.1, 0.1) }),
    speedMPerS: real(-3, 8),
    inTheAir: fc.boolean(),
    opponentKg: fc.oneof(real(0.5, 60), fc.constant(Number.POSITIVE_INFINITY)),
    opponentGyrationM: real(0.05, 0.3),
    besideM: place(0.2),
    restitution: real(0, 1),
    radiusM: real(0.1, 0.25),
    aboveLevelRad: real(-1.5, 1.5),
    skidRad: real(-1, 1),
    edge: fc.constantFrom("up", "down"),
  })
  .map((of) => {
    const strike = strikeAt(of.radiusM, of.aboveLevelRad, of.edge, of.skidRad);
    const belowM = -0.06;
    return {
      bar: {
        massKg: of.barKg,
        inertiaKgM2: of.barKg * (of.gyrationM ** 2 + of.barCentreM.x ** 2 + of.barCentreM.y ** 2),
        centreM: of.barCentreM,
        spinRadPerS: of.edge === "up" ? of.spinRadPerS : -of.spinRadPerS,
      },
      robot: {
        massKg: of.robotKg,
        inertiaKgM2: of.robotKg * of.robotGyrationM ** 2,
        centreM: of.robotCentreM,
        speedMPerS: of.speedMPerS,
        standsAtM: of.inTheAir
          ? []
          : [
              { x: of.robotCentreM.x - 0.1, y: belowM },
              { x: 0.03, y: belowM },
            ],
      },
      opponent: {
        massKg: of.opponentKg,
        inertiaKgM2: of.opponentKg * of.opponentGyrationM ** 2,
        centreM: plus(strike.atM, of.besideM),
        velocityMPerS: ORIGIN,
        restitution: of.restitution,
      },
      strike,
    };
  });

/** Of an impact, the bar as it was before it. */
export function barBefore({ bar, robot }: Blow): Body {
  const about = bar.massKg * (bar.centreM.x ** 2 + bar.centreM.y ** 2);
  const turning = { x: -bar.centreM.y * bar.spinRadPerS, y: bar.centreM.x * bar.spinRadPerS };
  return {
    massKg: bar.massKg,
    inertiaKgM2: bar.inertiaKgM2 - about,
    centreM: bar.centreM,
    velocityMPerS: plus(turning, { x: robot.speedMPerS, y: 0 }),
    spinRadPerS: bar.spinRadPerS,
  };
}

/** [p_x, p_y, L about the axle], and how large the parts of each are. */
export type Momenta = readonly [number, number, number];

export function momenta(body: Body): Momenta {
  const momentum = times(body.velocityMPerS, body.massKg);
  return [momentum.x, momentum.y, cross(body.centreM, momentum) + body.inertiaKgM2 * body.spinRadPerS];
}

export function momentaOfImpulse(atM: { x: number; y: number }, impulse: { x: number; y: number }): Momenta {
  return [impulse.x, impulse.y, cross(atM, impulse)];
}

export const bodiesBefore = (blow: Blow, impact: Impact): readonly Body[] => [
  barBefore(blow),
  impact.robotBefore,
  impact.opponentBefore,
];

export const bodiesAfter = ({ barAfter, robotAfter, opponentAfter }: Impact): readonly Body[] => [
  barAfter,
  robotAfter,
  opponentAfter,
];

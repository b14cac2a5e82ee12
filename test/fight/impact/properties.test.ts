/** What every blow keeps, whatever struck whatever: momentum, angular momentum, energy, the axle, the floor. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kineticEnergyJ, velocityAt } from "../../../geometry/fight/impact/body.ts";
import { type Blow, type Impact, impactOf } from "../../../geometry/fight/impact/impact.ts";
import { dot, minus, norm, ORIGIN, times } from "../../../geometry/outline/vector.ts";
import { expectClose } from "../../support/close-to.ts";
import { anyBlow, bodiesAfter, bodiesBefore, type Momenta, momenta, momentaOfImpulse } from "./blows.ts";

/** Of the largest part: some fifty operations on numbers good to 1e-16, through a system of up to five equations. */
const ROUNDING = 1e-11;

function everyBlow(check: (blow: Blow, impact: Impact) => void): void {
  fc.assert(
    fc.property(anyBlow, (blow) => {
      const impact = impactOf(blow);
      if (impact) check(blow, impact);
    }),
    { numRuns: 400 },
  );
}

/** The three changes of momentum are those of the impulses from outside. */
function expectBalance(changes: readonly Momenta[], outside: readonly Momenta[], sizes: Momenta): void {
  for (const i of [0, 1, 2] as const) {
    const sum = (of: readonly Momenta[]) => of.reduce((total, momenta) => total + momenta[i], 0);
    expectClose(sum(changes), sum(outside), ROUNDING, sizes[i]);
  }
}

const change = (from: Momenta, to: Momenta): Momenta => [to[0] - from[0], to[1] - from[1], to[2] - from[2]];

describe("any blow", () => {
  it("is struck at all: most of those that are tried", () => {
    const blows = fc.sample(anyBlow, { numRuns: 200, seed: 1 });
    expect(blows.filter((blow) => impactOf(blow) !== null).length).toBeGreaterThan(100);
    expect(
      blows.filter((blow) => impactOf(blow)?.floorImpulseNS.some((impulse) => impulse > 0)).length,
    ).toBeGreaterThan(20);
  });

  it("keeps momentum and angular momentum of what can move, but for what floor and braced opponent add", () => {
    everyBlow((blow, impact) => {
      const [were, are] = [bodiesBefore(blow, impact), bodiesAfter(impact)];
      const moving = were.flatMap((body, i) => (Number.isFinite(body.massKg) ? [i] : []));
      const of = (bodies: typeof were, i: number) => momenta(bodies[i] ?? impact.robotAfter);
      const changes = moving.map((i) => change(of(were, i), of(are, i)));
      const floor = blow.robot.standsAtM.map((at, i) =>
        momentaOfImpulse(at, { x: 0, y: impact.floorImpulseNS[i] ?? 0 }),
      );
      const { atM, along } = blow.strike;
      const bracing = momentaOfImpulse(atM, times(along, -impact.impulseNS));
      const outside = Number.isFinite(blow.opponent.massKg) ? floor : [...floor, bracing];
      const sizes = [0, 1, 2].map((k) =>
        moving.reduce(
          (sum, i) => sum + Math.abs(of(were, i)[k] ?? 0) + Math.abs(of(are, i)[k] ?? 0),
          impact.impulseNS,
        ),
      );
      expectBalance(changes, outside, [sizes[0] ?? 0, sizes[1] ?? 0, sizes[2] ?? 0]);
    });
  });

  it("changes each body by the impulses that are told", () => {
    everyBlow((blow, impact) => {
      const [bar] = bodiesBefore(blow, impact);
      if (!bar) return;
      const told = [
        momentaOfImpulse(ORIGIN, impact.axleImpulseNS),
        momentaOfImpulse(blow.strike.atM, times(blow.strike.along, -impact.impulseNS)),
      ];
      const size = norm(impact.axleImpulseNS) + impact.impulseNS + norm(times(bar.velocityMPerS, bar.massKg));
      const turning = Math.abs(momenta(bar)[2]) + impact.impulseNS;
      expectBalance([change(momenta(bar), momenta(impact.barAfter))], told, [size, size, turning]);
    });
  });

  it("loses (1 − e)·J·v/2, which is never negative, and no other energy", () => {
    everyBlow((blow, impact) => {
      const { impulseNS, approachMPerS, energy } = impact;
      const scale = energy.barBeforeJ + kineticEnergyJ(impact.robotBefore);
      const loss = ((1 - blow.opponent.restitution) * impulseNS * approachMPerS) / 2;
      expectClose(energy.lostJ, loss, ROUNDING, scale);
      expect(energy.lostJ).toBeGreaterThanOrEqual(-ROUNDING * scale);
      const spent = energy.robotGainJ + energy.opponentGainJ + energy.lostJ;
      expectClose(energy.barBeforeJ - energy.barAfterJ, spent, ROUNDING, scale);
    });
  });

  it("parts tooth and opponent at e times the speed at which they met", () => {
    everyBlow(({ strike: { atM, along }, opponent }, impact) => {
      const apart = minus(velocityAt(impact.opponentAfter, atM), velocityAt(impact.barAfter, atM));
      expectClose(
        dot(apart, along),
        opponent.restitution * impact.approachMPerS,
        ROUNDING,
        impact.approachMPerS,
      );
    });
  });

  it("leaves the bar on its axle", () => {
    everyBlow((_, impact) => {
      const apart = minus(velocityAt(impact.barAfter, ORIGIN), velocityAt(impact.robotAfter, ORIGIN));
      expect(norm(apart)).toBeLessThan(ROUNDING * impact.approachMPerS);
    });
  });

  it("lets no wheel sink, and presses only wheels that stay down", () => {
    everyBlow(({ robot }, impact) => {
      robot.standsAtM.forEach((at, i) => {
        const impulse = impact.floorImpulseNS[i] ?? Number.NaN;
        const up = velocityAt(impact.robotAfter, at).y;
        expect(impulse).toBeGreaterThanOrEqual(-ROUNDING * impact.impulseNS);
        expect(up).toBeGreaterThan(-ROUNDING * impact.approachMPerS);
        if (impulse > ROUNDING * impact.impulseNS) expect(up).toBeLessThan(ROUNDING * impact.approachMPerS);
      });
    });
  });

  it("turned over is the same blow: up and down in a mirror, without a floor", () => {
    everyBlow((blow, impact) => {
      if (blow.robot.standsAtM.length > 0) return;
      const flip = ({ x, y }: { x: number; y: number }) => ({ x, y: -y });
      const { bar, robot, opponent, strike } = blow;
      const mirrored = impactOf({
        bar: { ...bar, centreM: flip(bar.centreM), spinRadPerS: -bar.spinRadPerS },
        robot: { ...robot, centreM: flip(robot.centreM) },
        opponent: { ...opponent, centreM: flip(opponent.centreM) },
        strike: { atM: flip(strike.atM), along: flip(strike.along) },
      });
      expectClose(mirrored?.impulseNS, impact.impulseNS, ROUNDING);
      expectClose(mirrored?.axleImpulseNS.y, -impact.axleImpulseNS.y, ROUNDING, impact.impulseNS);
    });
  });
});

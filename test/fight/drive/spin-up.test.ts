/** Spin-ups against a stepped circuit, an exponential, and what has to add up. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drive, motorA, packA, stretchesOf } from "../../../geometry/fight/drive/drive.ts";
import {
  type SpinUp,
  spinRegained,
  spinUpOf,
  spinUpsPerPack,
  warmingK,
  withoutOneMotor,
} from "../../../geometry/fight/drive/spin-up.ts";
import { expectClose } from "../../support/close-to.ts";
import { anyDrive, DRIVE, stepped } from "./drives.ts";

function spinUp(drive: Drive): SpinUp {
  const found = spinUpOf(drive);
  if (!found) throw new Error("it cannot turn");
  return found;
}

const seconds = (of: SpinUp, share: number) =>
  of.times.find((time) => time.share === share)?.seconds ?? Number.NaN;

const VARIED: readonly (readonly [string, Drive])[] = [
  ["as it is", DRIVE],
  ["without a limit", { ...DRIVE, limitA: null }],
  ["without drag", { ...DRIVE, dragNMS2: 0 }],
  ["with a pack of no resistance", { ...DRIVE, pack: { volts: 44.4, resistanceOhm: 0 } }],
  ["held below its limit by drag", { ...DRIVE, dragNMS2: 1e-3 }],
  ["with one motor dead", { ...DRIVE, motors: 1, deadMotors: 1 }],
];

describe.each(VARIED)("a drive %s", (_, drive) => {
  const own = spinUp(drive);

  it.each([0.5, 0.63, 0.9, 0.95])("reaches %d of its top when the stepped circuit does", (share) => {
    // The limit's end is a corner, where a step of Runge-Kutta is only good to its square.
    const { radPerS } = stepped(drive, seconds(own, share), 20_000);
    expectClose(radPerS, share * own.topRadPerS, 1e-7);
  });

  it("takes from the pack and heats its motors as the stepped circuit does", () => {
    const { packAs, heatJ } = stepped(drive, seconds(own, 0.95), 20_000);
    expectClose(own.packAs, packAs, 1e-6);
    expectClose(own.motorHeatJ, heatJ, 1e-6);
  });

  it("is no better for ten times the steps: what is left is not of the steps", () => {
    const few = stepped(drive, seconds(own, 0.9), 4000).radPerS;
    const many = stepped(drive, seconds(own, 0.9), 40_000).radPerS;
    expectClose(many, 0.9 * own.topRadPerS, 1e-8);
    expectClose(few, many, 1e-6);
  });
});

describe("a motor without limit, drag or no-load current", () => {
  // e^(−t/τ) with τ = J·R/(Kt·Ke), from memory of any course on direct-current machines.
  it("follows the exponential of its time constant", () => {
    const pack = { volts: 44.4, resistanceOhm: 0 };
    const motor = { ...DRIVE.motor, noLoadA: 0, rotorInertiaKgM2: 0 };
    const drive = { ...DRIVE, motor, motors: 1, limitA: null, ratio: 1, efficiency: 1, dragNMS2: 0, pack };
    const own = spinUp(drive);
    const tau = (0.012 * 0.03) / DRIVE.motor.torqueNMPerA ** 2;
    expectClose(own.topRadPerS, 44.4 / DRIVE.motor.emfVPerRadPerS, 1e-12);
    for (const { share, seconds: time } of own.times) expectClose(time, -tau * Math.log(1 - share), 1e-12);
    expectClose(spinRegained(drive, 0, tau) ?? undefined, own.topRadPerS * (1 - Math.exp(-1)), 1e-12);
    expectClose(own.peakMotorA, 44.4 / 0.03, 1e-12);
    // What the pack gives is heat and motion; at full speed half of each.
    expectClose(own.packJ, own.motorHeatJ + own.kineticJ, 1e-8);
  });
});

describe("any drive", () => {
  it("gives no more energy than it takes, and reaches shares of its top one after the other", () => {
    fc.assert(
      fc.property(anyDrive, (drive) => {
        const own = spinUpOf(drive);
        fc.pre(own !== null);
        if (!own) return;
        const heat = drive.motors * own.motorHeatJ;
        expect(own.packJ).toBeGreaterThan((own.kineticJ + heat) * (1 - 1e-8));
        const times = own.times.map((time) => time.seconds);
        expect(times.every((time, i) => Number.isFinite(time) && time > (times[i - 1] ?? 0))).toBe(true);
        expect(own.topRadPerS).toBeLessThan(drive.pack.volts / drive.motor.emfVPerRadPerS / drive.ratio);
        if (drive.limitA !== null) expect(own.peakMotorA).toBeLessThanOrEqual(drive.limitA);
      }),
    );
  });

  it("is back at its spin after the time between, from wherever a blow left it", () => {
    fc.assert(
      fc.property(anyDrive, fc.double({ min: 0, max: 0.94, noNaN: true }), (drive, left) => {
        const own = spinUpOf(drive);
        fc.pre(own !== null);
        if (!own) return;
        const until = (share: number) => timeTo(drive, share * own.topRadPerS, seconds(own, 0.95));
        const rest = seconds(own, 0.95) - until(left);
        expectClose(
          spinRegained(drive, left * own.topRadPerS, rest) ?? undefined,
          0.95 * own.topRadPerS,
          1e-6,
        );
      }),
    );
  });

  it("draws the current of its pack without a jump where the limit ends", () => {
    const change = stretchesOf(DRIVE)?.changeRadPerS ?? Number.NaN;
    expect(change).toBeGreaterThan(50);
    expectClose(packA(DRIVE, change * (1 - 1e-9)), packA(DRIVE, change * (1 + 1e-9)), 1e-6);
    expectClose(packA(DRIVE, change), 160, 1e-9);
    expectClose(spinUp(DRIVE).peakPackA, 160, 1e-9);
    expect(packA(DRIVE, 0)).toBeLessThan(160);
    expect(motorA(DRIVE, 0)).toBe(80);
  });
});

/** By halving, through what is regained from standing. */
function timeTo(drive: Drive, radPerS: number, most: number): number {
  let [low, high] = [0, most];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if ((spinRegained(drive, 0, middle) ?? 0) < radPerS) low = middle;
    else high = middle;
  }
  return low;
}

describe("one motor of two lost", () => {
  it("takes more than twice as long, and a little off the top", () => {
    const [both, one] = [spinUp(DRIVE), spinUp(withoutOneMotor(DRIVE) ?? DRIVE)];
    expect(seconds(one, 0.5)).toBeGreaterThan(2 * seconds(both, 0.5) * (one.topRadPerS / both.topRadPerS));
    expect(one.topRadPerS).toBeLessThan(both.topRadPerS);
    expect(one.topRadPerS).toBeGreaterThan(0.85 * both.topRadPerS);
  });

  it("is not told of a single one", () => {
    expect(withoutOneMotor({ ...DRIVE, motors: 1 })).toBeNull();
  });
});

describe("what cannot be", () => {
  it("is null: a motor that cannot overcome its losses, a bar that bounced back", () => {
    expect(spinUpOf({ ...DRIVE, limitA: 1 })).toBeNull();
    expect(spinRegained(DRIVE, -3, 1)).toBeNull();
  });
});

describe("a pack of 5 Ah", () => {
  it("has as many spin-ups as its charge is times that of one", () => {
    const own = spinUp(DRIVE);
    expectClose(spinUpsPerPack(5, own) * own.packAs, 18_000, 1e-12);
    expectClose(warmingK(own.motorHeatJ, 77), own.motorHeatJ / 77, 1e-12);
  });
});

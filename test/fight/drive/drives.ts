/** Drives for tests, and a spin-up stepped through without its closed solution. */
import fc from "fast-check";
import type { Drive } from "../../../geometry/fight/drive/drive.ts";
import { torqueConstant } from "../../../geometry/fight/drive/motor.ts";

const KT = torqueConstant(350);

/** Two motors of 350 rpm/V on 12 lithium cells, 3 : 1 to a bar of 0.012 kg·m². */
export const DRIVE: Drive = {
  motor: {
    torqueNMPerA: KT,
    emfVPerRadPerS: KT,
    resistanceOhm: 0.03,
    noLoadA: 1.5,
    rotorInertiaKgM2: 6e-5,
  },
  motors: 2,
  deadMotors: 0,
  limitA: 80,
  pack: { volts: 44.4, resistanceOhm: 0.03 },
  ratio: 3,
  efficiency: 0.92,
  inertiaKgM2: 0.012,
  dragNMS2: 4e-6,
};

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const anyDrive: fc.Arbitrary<Drive> = fc
  .record({
    kv: real(100, 2000),
    resistanceOhm: real(0.01, 0.3),
    noLoadA: real(0.1, 3),
    rotorInertiaKgM2: real(0, 2e-4),
    motors: fc.integer({ min: 1, max: 3 }),
    limitA: fc.option(real(10, 100)),
    volts: real(10, 50),
    packOhm: real(0, 0.04),
    ratio: real(1, 8),
    efficiency: real(0.5, 1),
    inertiaKgM2: real(0.001, 0.1),
    dragNMS2: fc.oneof(fc.constant(0), real(1e-9, 1e-4)),
  })
  .map((of) => ({
    motor: {
      torqueNMPerA: torqueConstant(of.kv),
      emfVPerRadPerS: torqueConstant(of.kv),
      resistanceOhm: of.resistanceOhm,
      noLoadA: of.noLoadA,
      rotorInertiaKgM2: of.rotorInertiaKgM2,
    },
    motors: of.motors,
    deadMotors: 0,
    limitA: of.limitA,
    pack: { volts: of.volts, resistanceOhm: of.packOhm },
    ratio: of.ratio,
    efficiency: of.efficiency,
    inertiaKgM2: of.inertiaKgM2,
    dragNMS2: of.dragNMS2,
  }));

export interface Stepped {
  readonly radPerS: number;
  readonly packAs: number;
  readonly heatJ: number;
}

/**
 * By the circuit alone, fourth-order Runge-Kutta over even steps: back-EMF, winding and pack give the current, the current the
 * torque. The share that a limiting controller lets through is found by halving.
 */
export function stepped(drive: Drive, seconds: number, steps: number): Stepped {
  const dt = seconds / steps;
  let state: readonly [number, number, number] = [0, 0, 0];
  const rates = ([radPerS]: typeof state): typeof state => {
    const { amperes, share } = circuit(drive, radPerS);
    const { motor, motors, deadMotors, ratio, efficiency } = drive;
    const torque =
      ratio *
        motor.torqueNMPerA *
        (efficiency * motors * (amperes - motor.noLoadA) - deadMotors * motor.noLoadA) -
      drive.dragNMS2 * radPerS ** 2;
    const inertia = drive.inertiaKgM2 + (motors + deadMotors) * motor.rotorInertiaKgM2 * ratio ** 2;
    return [torque / inertia, share * motors * amperes, amperes ** 2 * motor.resistanceOhm];
  };
  const moved = (from: typeof state, by: typeof state, time: number): typeof state => [
    from[0] + by[0] * time,
    from[1] + by[1] * time,
    from[2] + by[2] * time,
  ];
  for (let i = 0; i < steps; i++) {
    const a = rates(state);
    const b = rates(moved(state, a, dt / 2));
    const c = rates(moved(state, b, dt / 2));
    const d = rates(moved(state, c, dt));
    state = [0, 1, 2].map(
      (k) => (state[k] ?? 0) + (dt / 6) * ((a[k] ?? 0) + 2 * (b[k] ?? 0) + 2 * (c[k] ?? 0) + (d[k] ?? 0)),
    ) as unknown as typeof state;
  }
  return { radPerS: state[0], packAs: state[1], heatJ: state[2] };
}

function circuit(drive: Drive, radPerS: number): { amperes: number; share: number } {
  const { motor, motors, pack, limitA } = drive;
  const emf = motor.emfVPerRadPerS * drive.ratio * radPerS;
  const through = (share: number) =>
    (share * pack.volts - emf) / (motor.resistanceOhm + motors * pack.resistanceOhm * share ** 2);
  if (limitA === null || through(1) <= limitA) return { amperes: through(1), share: 1 };
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (through(middle) > limitA) high = middle;
    else low = middle;
  }
  return { amperes: limitA, share: low };
}

/** A bar brought to its spin: how long, how much from the pack, how hot. */
import { type Drive, motorA, packA, type Stretches, stretchesOf, turningInertiaKgM2 } from "./drive.ts";
import { secondsBetween, spinAfterRadPerS } from "./stretch.ts";

/** Shares of the top at which the time is told; 0.632… is one time constant of a motor without limit and drag. */
export const TOLD_SHARES = [0.5, 0.63, 0.9, 0.95] as const;

export interface SpinUp {
  readonly topRadPerS: number;
  /** From standing to shares of the top. */
  readonly times: readonly { readonly share: number; readonly seconds: number }[];
  /** What follows is of a spin-up to the last of them. */
  readonly kineticJ: number;
  /** Out of the cells, what their own resistance takes included. */
  readonly packJ: number;
  readonly packAs: number;
  /** In the winding of one motor. */
  readonly motorHeatJ: number;
  readonly peakMotorA: number;
  readonly peakPackA: number;
}

/** `null` for a drive that cannot turn its bar. */
export function spinUpOf(drive: Drive): SpinUp | null {
  const stretches = stretchesOf(drive);
  if (!stretches) return null;
  const { topRadPerS } = stretches;
  const times = TOLD_SHARES.map((share) => ({
    share,
    seconds: timeBetween(stretches, 0, share * topRadPerS),
  }));
  const lastRadPerS = 0.95 * topRadPerS;
  const over = (rate: (radPerS: number) => number) => integral(stretches, lastRadPerS, rate);
  const packAs = over((radPerS) => packA(drive, radPerS));
  return {
    topRadPerS,
    times,
    kineticJ: (turningInertiaKgM2(drive) * lastRadPerS ** 2) / 2,
    packAs,
    packJ: packAs * drive.pack.volts,
    motorHeatJ: over((radPerS) => motorA(drive, radPerS) ** 2 * drive.motor.resistanceOhm),
    peakMotorA: motorA(drive, 0),
    // It rises up to the end of the limit and falls from there on.
    peakPackA: packA(drive, Math.min(stretches.changeRadPerS, lastRadPerS)),
  };
}

/**
 * The spin some seconds after a blow has left a bar at a spin of 0 or more; `null` for a drive that cannot turn it, and for a
 * bar that bounced back.
 */
export function spinRegained(drive: Drive, fromRadPerS: number, seconds: number): number | null {
  const stretches = stretchesOf(drive);
  return stretches && fromRadPerS >= 0 ? spinAfter(stretches, fromRadPerS, seconds) : null;
}

/** The same drive with one of its motors dead and dragged along; `null` if it has only one. */
export function withoutOneMotor(drive: Drive): Drive | null {
  if (drive.motors < 2) return null;
  return { ...drive, motors: drive.motors - 1, deadMotors: drive.deadMotors + 1 };
}

/** How many spin-ups a pack has charge for, what is driven and lost between them not counted. */
export function spinUpsPerPack(capacityAh: number, spinUp: SpinUp): number {
  return (capacityAh * 3600) / spinUp.packAs;
}

/** How much warmer a winding gets if it keeps all its heat: heat over its heat capacity (copper 385 J/(kg·K) times mass). */
export function warmingK(motorHeatJ: number, heatCapacityJPerK: number): number {
  return motorHeatJ / heatCapacityJPerK;
}

function timeBetween({ limited, full, changeRadPerS }: Stretches, from: number, to: number): number {
  if (!limited || from >= changeRadPerS) return secondsBetween(full, from, to);
  if (to <= changeRadPerS) return secondsBetween(limited, from, to);
  return secondsBetween(limited, from, changeRadPerS) + secondsBetween(full, changeRadPerS, to);
}

function spinAfter({ limited, full, changeRadPerS }: Stretches, from: number, seconds: number): number {
  if (!limited || from >= changeRadPerS) return spinAfterRadPerS(full, from, seconds);
  const change = secondsBetween(limited, from, changeRadPerS);
  if (seconds <= change) return spinAfterRadPerS(limited, from, seconds);
  return spinAfterRadPerS(full, changeRadPerS, seconds - change);
}

/** Of a rate over the time from standing to a spin, stretch by stretch, since it has a corner between them. */
function integral(stretches: Stretches, toRadPerS: number, rate: (radPerS: number) => number): number {
  const { changeRadPerS } = stretches;
  const corner = Math.min(changeRadPerS, toRadPerS);
  return simpson(stretches, 0, corner, rate) + simpson(stretches, corner, toRadPerS, rate);
}

/** Even; twice as many change nothing up to the tenth digit. */
const PARTS = 256;

/** By Simpson's rule in time, along the closed solution. */
function simpson(stretches: Stretches, from: number, to: number, rate: (radPerS: number) => number): number {
  if (to <= from) return 0;
  const seconds = timeBetween(stretches, from, to);
  let sum = 0;
  for (let i = 0; i <= PARTS; i++) {
    const weight = i === 0 || i === PARTS ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * rate(spinAfter(stretches, from, (seconds * i) / PARTS));
  }
  return (sum * seconds) / PARTS / 3;
}

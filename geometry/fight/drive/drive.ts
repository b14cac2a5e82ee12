/** One or more motors on a pack that turn a bar over a belt or gears, at full throttle. */
import type { Motor } from "./motor.ts";
import { endRadPerS, type Stretch } from "./stretch.ts";

export interface Pack {
  /** With no current. */
  readonly volts: number;
  readonly resistanceOhm: number;
}

export interface Drive {
  readonly motor: Motor;
  /** That drive. */
  readonly motors: number;
  /** That are dead and only dragged along. */
  readonly deadMotors: number;
  /** Of the controller, for each motor; `null` for one that does not limit. */
  readonly limitA: number | null;
  readonly pack: Pack;
  /** Turns of the motor for one of the bar. */
  readonly ratio: number;
  /** Of belt or gears. */
  readonly efficiency: number;
  /** Of all that turns with the bar. */
  readonly inertiaKgM2: number;
  /** Air drag for each (rad/s)² of the bar, N·m·s². */
  readonly dragNMS2: number;
}

/** The stretches of a spin-up: first at the current limit, then at full voltage. */
export interface Stretches {
  /** `null` where the limit is never reached. */
  readonly limited: Stretch | null;
  readonly full: Stretch;
  /** Where the one passes into the other; 0 where there is only the second. */
  readonly changeRadPerS: number;
  /** The top, drag and losses taken off. */
  readonly topRadPerS: number;
}

/** `null` for a drive that cannot overcome its own losses. */
export function stretchesOf(drive: Drive): Stretches | null {
  const full = fullVoltage(drive);
  const changeRadPerS = changeOf(drive);
  const limited = changeRadPerS > 0 && drive.limitA !== null ? limitedCurrent(drive, drive.limitA) : null;
  if ((limited ?? full).torqueNM <= 0) return null;
  // Drag can hold a bar below the spin at which the limit would no longer matter.
  const heldBelow = limited !== null && endRadPerS(limited) <= changeRadPerS;
  return { limited, full, changeRadPerS, topRadPerS: endRadPerS(heldBelow ? limited : full) };
}

/** Of each motor that drives, at a spin of the bar. */
export function motorA(drive: Drive, radPerS: number): number {
  const free = freeA(drive, radPerS);
  return drive.limitA === null ? free : Math.min(free, drive.limitA);
}

/**
 * From the pack, of all motors. A controller that limits lowers voltage for current as a transformer does: what it takes from the
 * pack is the share D of what it gives, D·V − R·n·i·D² = i·R_winding + Ke·ω, with the smaller D of the two. Up to a limit at which
 * the pack gives half its voltage, D is then 1 where the limit ends.
 */
export function packA(drive: Drive, radPerS: number): number {
  const free = freeA(drive, radPerS);
  if (drive.limitA === null || free <= drive.limitA) return drive.motors * free;
  const all = drive.motors * drive.limitA;
  const { volts, resistanceOhm } = drive.pack;
  const needed = drive.limitA * drive.motor.resistanceOhm + emfV(drive, radPerS);
  const root = Math.sqrt(Math.max(0, volts ** 2 - 4 * resistanceOhm * all * needed));
  return ((2 * needed) / (volts + root)) * all;
}

/** What the full voltage pushes through each motor. */
function freeA(drive: Drive, radPerS: number): number {
  return (drive.pack.volts - emfV(drive, radPerS)) / circuitOhm(drive);
}

/** All that turns, as the bar feels it: the motors' by the square of the ratio. */
export function turningInertiaKgM2(drive: Drive): number {
  const rotors = drive.motors + drive.deadMotors;
  return drive.inertiaKgM2 + rotors * drive.motor.rotorInertiaKgM2 * drive.ratio ** 2;
}

function emfV(drive: Drive, radPerS: number): number {
  return drive.motor.emfVPerRadPerS * drive.ratio * radPerS;
}

/** Winding and, since all motors draw on it, as many packs in series as there are motors. */
function circuitOhm({ motor, motors, pack }: Drive): number {
  return motor.resistanceOhm + motors * pack.resistanceOhm;
}

/** The spin above which the pack cannot push the limit current through any more; 0 or less without a limit. */
function changeOf(drive: Drive): number {
  if (drive.limitA === null) return 0;
  const left = drive.pack.volts - drive.limitA * circuitOhm(drive);
  return Math.max(0, left / (drive.motor.emfVPerRadPerS * drive.ratio));
}

function limitedCurrent(drive: Drive, limitA: number): Stretch {
  return { ...commonOf(drive), torqueNM: torqueNM(drive, limitA), perRadPerS: 0 };
}

function fullVoltage(drive: Drive): Stretch {
  const { motor, motors, pack, ratio, efficiency } = drive;
  const ohm = circuitOhm(drive);
  const perRadPerS = (efficiency * motors * motor.torqueNMPerA * motor.emfVPerRadPerS * ratio ** 2) / ohm;
  return { ...commonOf(drive), torqueNM: torqueNM(drive, pack.volts / ohm), perRadPerS };
}

function commonOf(drive: Drive): { inertiaKgM2: number; perRadPerSSquared: number } {
  return { inertiaKgM2: turningInertiaKgM2(drive), perRadPerSSquared: drive.dragNMS2 };
}

/** On the bar, for a current in each motor that drives; a dead one takes what it would take to turn it without load. */
function torqueNM(drive: Drive, amperes: number): number {
  const { motor, motors, deadMotors, ratio, efficiency } = drive;
  const driving = efficiency * motors * (amperes - motor.noLoadA);
  return ratio * motor.torqueNMPerA * (driving - deadMotors * motor.noLoadA);
}

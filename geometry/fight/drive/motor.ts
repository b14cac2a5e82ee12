/** A brushed or brushless motor as a direct-current machine: torque by current, voltage by speed. */

export interface Motor {
  /** Torque for each ampere, N·m/A. */
  readonly torqueNMPerA: number;
  /** Voltage for each rad/s, V·s. The same number as the torque constant if both are measured without losses. */
  readonly emfVPerRadPerS: number;
  /** Between the leads. */
  readonly resistanceOhm: number;
  readonly noLoadA: number;
  /** Of what turns in it, and its pulley. */
  readonly rotorInertiaKgM2: number;
}

const RAD_PER_S_PER_RPM = (2 * Math.PI) / 60;

/** Torque constant in N·m/A, or V·s, from the speed constant in rpm/V: 60/(2π·Kv). */
export function torqueConstant(kvRpmPerV: number): number {
  return 1 / (kvRpmPerV * RAD_PER_S_PER_RPM);
}

/** Voltage constant in V·s from a run without load: what is left of the voltage after the winding, over the speed. */
export function emfFromNoLoad(run: {
  readonly volts: number;
  readonly amperes: number;
  readonly resistanceOhm: number;
  readonly radPerS: number;
}): number {
  return (run.volts - run.amperes * run.resistanceOhm) / run.radPerS;
}

/** Speed without any load or loss, V/Ke. */
export function idealSpeedRadPerS(motor: Motor, volts: number): number {
  return volts / motor.emfVPerRadPerS;
}

/** Current held still, V/R. */
export function stallA(motor: Motor, volts: number): number {
  return volts / motor.resistanceOhm;
}

/** Torque held still, losses not taken off. */
export function stallNM(motor: Motor, volts: number): number {
  return motor.torqueNMPerA * stallA(motor, volts);
}

/** The most power on the shaft, at half its speed: a quarter of stall torque times speed; losses not taken off. */
export function peakPowerW(motor: Motor, volts: number): number {
  return (stallNM(motor, volts) * idealSpeedRadPerS(motor, volts)) / 4;
}

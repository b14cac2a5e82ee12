/** Stress in a round solid shaft, and what holds a pulley on it. Forces in N, moments in N·m, lengths in m, stress in MPa. */

export interface ShaftLoad {
  readonly bendingNM: number;
  readonly torqueNM: number;
  readonly axialN: number;
}

export interface ShaftStress {
  /** At the surface: bending and pull. */
  readonly normalMPa: number;
  readonly shearMPa: number;
  /** By the distortion energy, √(σ² + 3τ²). */
  readonly equivalentMPa: number;
}

const MPA = 1e6;

/** 32·M/(π·d³) + 4·F/(π·d²), and 16·T/(π·d³). */
export function shaftStress(diameterM: number, load: ShaftLoad): ShaftStress {
  const bending = (32 * load.bendingNM) / (Math.PI * diameterM ** 3);
  const pull = (4 * load.axialN) / (Math.PI * diameterM ** 2);
  const normalMPa = (Math.abs(bending) + Math.abs(pull)) / MPA;
  const shearMPa = (16 * Math.abs(load.torqueNM)) / (Math.PI * diameterM ** 3) / MPA;
  return { normalMPa, shearMPa, equivalentMPa: Math.hypot(normalMPa, Math.sqrt(3) * shearMPa) };
}

/** What a belt does to the shaft of its pulley: both sides pull at a distance from the bearing. */
export function beltLoad(
  tightN: number,
  slackN: number,
  pulleyRadiusM: number,
  overhangM: number,
): ShaftLoad {
  return {
    bendingNM: (tightN + slackN) * overhangM,
    torqueNM: (tightN - slackN) * pulleyRadiusM,
    axialN: 0,
  };
}

/** The torque that set screws hold by the force that each is rated for, n·F·d/2. */
export function setScrewNM(count: number, holdingN: number, boreM: number): number {
  return (count * holdingN * boreM) / 2;
}

export interface Key {
  readonly widthM: number;
  readonly heightM: number;
  readonly lengthM: number;
}

/** Shear across a key and pressure on the half of its height that is in the hub: F/(w·l) and 2F/(h·l) with F = 2T/d. */
export function keyStress(
  torqueNM: number,
  boreM: number,
  key: Key,
): { shearMPa: number; pressureMPa: number } {
  const force = (2 * torqueNM) / boreM;
  return {
    shearMPa: force / (key.widthM * key.lengthM) / MPA,
    pressureMPa: (2 * force) / (key.heightM * key.lengthM) / MPA,
  };
}

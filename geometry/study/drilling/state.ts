import type { Point } from "../../language/design.ts";
import { FULL_TURN, norm, ORIGIN, plus, times, wrapped } from "../../outline/vector.ts";
import { blindMetal, pointLengthMm, throughMetal } from "./drilled-metal.ts";
import { leftOver, type Pick, takenBy } from "./picks.ts";
import type { DrilledHole, DrilledState, Drilling } from "./request.ts";

/** The bar as far as drilling needs to know it. */
export interface Bar {
  /** Its imbalance, g·mm. */
  readonly load: Point;
  readonly massG: number;
  readonly inertiaKgM2: number;
  /** `null` without a spin. */
  readonly radPerS: number | null;
  readonly thicknessMm: number;
  readonly gPerMm3: number;
  /** A shop's step of a length. */
  readonly stepMm: number;
}

/** No hole drilled. */
export function barAsItIs(bar: Bar): Drilling {
  return drillingOf(bar, []);
}

/** What some holes come to, worked out from the rounded places and depths. */
export function drillingOf(bar: Bar, picks: readonly Pick[]): Drilling {
  const holes = picks.map((pick) => holeOf(bar, pick));
  const takenG = takenBy(picks);
  const takenKgM2 = picks.reduce((sum, pick) => sum + inertiaKgM2Of(bar, pick), 0);
  return {
    holes,
    takenG,
    after: stateOf(bar, leftOver(bar.load, picks), takenG, takenKgM2),
    coupleGMm2: coupleOf(bar, picks),
  };
}

function holeOf(bar: Bar, { place, option, steps, massG }: Pick): DrilledHole {
  const { diameterMm } = option.drill;
  const isThrough = option.perStepG === 0;
  const fullDepthMm = isThrough ? bar.thicknessMm : rounded(steps * bar.stepMm);
  return {
    drill: option.drill,
    radiusMm: rounded(place.radiusSteps * bar.stepMm),
    angleDeg: place.angleTenths / 10,
    centre: { x: place.x, y: place.y },
    fullDepthMm,
    pointDepthMm: isThrough ? null : fullDepthMm + pointLengthMm(diameterMm),
    massG,
  };
}

/** Steps of a tenth are that, not a tenth with an error in the last bit. */
function rounded(lengthMm: number): number {
  return Number(lengthMm.toFixed(6));
}

function stateOf(bar: Bar, left: Point, takenG: number, takenKgM2: number): DrilledState {
  const massG = bar.massG - takenG;
  const imbalanceGMm = norm(left);
  const eccentricityMm = imbalanceGMm / massG;
  const inertiaKgM2 = bar.inertiaKgM2 - takenKgM2;
  const isNothing = imbalanceGMm <= ROUNDING_SHARE * norm(bar.load);
  return {
    imbalanceGMm,
    angleDeg: isNothing ? null : (wrapped(Math.atan2(left.y, left.x)) / FULL_TURN) * 360,
    massKg: massG / 1000,
    inertiaKgM2,
    energyJ: bar.radPerS === null ? null : (inertiaKgM2 * bar.radPerS ** 2) / 2,
    eccentricityMm,
    gradeMmPerS: bar.radPerS === null ? null : eccentricityMm * bar.radPerS,
  };
}

/** What rounding leaves has no direction. */
const ROUNDING_SHARE = 1e-12;

/** About the spin axis, by the parallel-axis theorem. */
function inertiaKgM2Of(bar: Bar, pick: Pick): number {
  const { ownInertiaMm5 } = metalOfPick(bar, pick);
  const { x, y } = pick.place;
  return (pick.massG * (x * x + y * y) + ownInertiaMm5 * bar.gPerMm3) * KG_M2_PER_G_MM2;
}

const KG_M2_PER_G_MM2 = 1e-9;

function coupleOf(bar: Bar, picks: readonly Pick[]): number {
  const sum = picks.reduce((couple, pick) => {
    const offMiddleMm = bar.thicknessMm / 2 - metalOfPick(bar, pick).centroidDepthMm;
    return plus(couple, times(pick.place, pick.massG * offMiddleMm));
  }, ORIGIN);
  return norm(sum);
}

function metalOfPick(bar: Bar, { option, steps }: Pick) {
  const { diameterMm } = option.drill;
  return option.perStepG === 0
    ? throughMetal(diameterMm, bar.thicknessMm)
    : blindMetal(diameterMm, steps * bar.stepMm);
}

import type { DrillResult } from "../study/drilling/drill.ts";
import { addedMass } from "../study/drilling/remedy.ts";
import type { DrilledHole, DrilledState, Drilling } from "../study/drilling/request.ts";

/** A drilling plan as one plain object with stable keys, units in the names; unknown is `null`. */
export function drillJson(result: DrillResult, maxRadiusMm: number | null) {
  const drilling = result.solved ? result.drilling : result.nearest;
  return {
    solved: result.solved,
    reason: result.solved ? null : result.reason,
    message: result.solved ? null : result.message,
    aim: result.aim && {
      text: result.aim.text,
      eccentricityMm: result.aim.neededMm,
      imbalanceGMm: result.aim.neededGMm,
    },
    before: result.before && stateJson(result.before.after),
    after: drilling && stateJson(drilling.after),
    holes: drilling ? drilling.holes.map(holeJson) : [],
    takenG: drilling?.takenG ?? null,
    coupleGMm2: drilling?.coupleGMm2 ?? null,
    insteadAdd: result.before && maxRadiusMm !== null ? addedJson(result.before, maxRadiusMm) : null,
  };
}

function stateJson({
  imbalanceGMm,
  angleDeg,
  gradeMmPerS,
  eccentricityMm,
  massKg,
  inertiaKgM2,
  energyJ,
}: DrilledState) {
  return {
    imbalanceGMm,
    imbalanceDeg: angleDeg,
    balanceGrade: gradeMmPerS,
    eccentricityMm,
    massKg,
    inertiaKgM2,
    energyJ,
  };
}

function holeJson({ drill, radiusMm, angleDeg, centre, fullDepthMm, pointDepthMm, massG }: DrilledHole) {
  return {
    drill: drill.text,
    diameterMm: drill.diameterMm,
    radiusMm,
    angleDeg,
    centreMm: [centre.x, centre.y],
    through: pointDepthMm === null,
    fullDepthMm,
    pointDepthMm,
    massG,
  };
}

function addedJson(before: Drilling, radiusMm: number) {
  const added = addedMass(before.after, radiusMm);
  return added && { massG: added.massG, radiusMm: added.radiusMm, angleDeg: added.angleDeg };
}

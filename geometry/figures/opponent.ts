/** What a blow does, by the file's bar, robot and opponent, worked out by `fight/impact`. */
import { boltForceN, meanForceN, riseM } from "../fight/impact/estimates.ts";
import { type Blow, type Impact, impactOf } from "../fight/impact/impact.ts";
import type { OpponentTerms } from "../fight/impact/scene.ts";
import type { OpponentDesign } from "../language/design.ts";
import { minus, norm } from "../outline/vector.ts";
import type { FigureValue } from "./figure.ts";

/** The blow's figures by their keys, in reading order. */
export interface OpponentFigures {
  readonly strikeMPerS: FigureValue;
  readonly impulseNS: FigureValue;
  readonly effectiveMassKg: FigureValue;
  readonly spinLeftRpm: FigureValue;
  readonly spinLeftShare: FigureValue;
  readonly passedOnJ: FigureValue;
  readonly lostJ: FigureValue;
  readonly ownRobotJ: FigureValue;
  readonly opponentAheadMPerS: FigureValue;
  readonly opponentUpMPerS: FigureValue;
  readonly opponentRiseMm: FigureValue;
  readonly ownAheadMPerS: FigureValue;
  readonly ownUpMPerS: FigureValue;
  readonly ownRiseMm: FigureValue;
  readonly ownPitchDegPerS: FigureValue;
  readonly frontLiftNMS: FigureValue;
  readonly axleImpulseNS: FigureValue;
  readonly axleForceN: FigureValue;
  readonly boltForceN: FigureValue;
  readonly percussionRadiusMm: FigureValue;
  readonly strikeBeyondMm: FigureValue;
  readonly assumed: FigureValue;
}

const RPM_PER_RAD_PER_S = 60 / (2 * Math.PI);
const DEG_PER_RAD = 180 / Math.PI;

/**
 * What can be told of a blow; null for a tooth that moves away from its opponent.
 * @param bolts that hold the bar, if said
 */
export function opponentFigures(
  blow: Blow,
  opponent: OpponentDesign,
  bolts: number | null,
  assumed: readonly string[],
): OpponentFigures | null {
  const impact = impactOf(blow);
  if (impact === null) return null;
  const { contactTimeMs } = opponent;
  const forceN = contactTimeMs && meanForceN(norm(impact.axleImpulseNS), contactTimeMs.value / 1000);
  const { percussion } = impact;
  return {
    ...blowFigures(impact),
    ...recoilFigures(impact, opponent),
    axleImpulseNS: norm(impact.axleImpulseNS),
    axleForceN: forceN,
    boltForceN: forceN === null || bolts === null ? null : boltForceN(forceN, bolts),
    percussionRadiusMm: percussion && percussion.radiusM * 1000,
    strikeBeyondMm: percussion && percussion.strikeBeyondM * 1000,
    assumed: assumed.length === 0 ? "nothing" : assumed.join(", "),
  };
}

/** What a blow needs of the opponent; null where something of it is not said or wrong. */
export function opponentTerms(opponent: OpponentDesign): OpponentTerms | null {
  const { restitution, massKg, isBraced, closingMPerS, struckAtMm, isStruckLevel } = opponent;
  if (restitution === null || isBraced === null || closingMPerS === null) return null;
  if (!isBraced && massKg === null) return null;
  if (!isStruckLevel && struckAtMm === null) return null;
  return {
    massKg: isBraced ? null : (massKg?.value ?? null),
    restitution: restitution.value,
    closingMPerS,
    struckAtM: struckAtMm === null ? null : struckAtMm.value / 1000,
  };
}

function blowFigures(impact: Impact) {
  const { energy, spinLeftShare, barAfter } = impact;
  // Against the spin it had is told as negative, whichever way that was.
  const sign = Math.sign(spinLeftShare ?? 0);
  return {
    strikeMPerS: impact.approachMPerS,
    impulseNS: impact.impulseNS,
    effectiveMassKg: impact.effectiveMassKg,
    spinLeftRpm: sign * Math.abs(barAfter.spinRadPerS) * RPM_PER_RAD_PER_S,
    spinLeftShare,
    passedOnJ: energy.opponentGainJ,
    lostJ: energy.lostJ,
    ownRobotJ: energy.robotGainJ,
  };
}

function recoilFigures(impact: Impact, { isBraced }: OpponentDesign) {
  const opponent = minus(impact.opponentAfter.velocityMPerS, impact.opponentBefore.velocityMPerS);
  const own = minus(impact.robotAfter.velocityMPerS, impact.robotBefore.velocityMPerS);
  const told = (value: number) => (isBraced ? null : value);
  return {
    opponentAheadMPerS: told(opponent.x),
    opponentUpMPerS: told(opponent.y),
    opponentRiseMm: told(riseM(opponent.y) * 1000),
    ownAheadMPerS: own.x,
    ownUpMPerS: own.y,
    ownRiseMm: riseM(own.y) * 1000,
    ownPitchDegPerS: impact.robotAfter.spinRadPerS * DEG_PER_RAD,
    frontLiftNMS: impact.frontLiftNMS,
  };
}

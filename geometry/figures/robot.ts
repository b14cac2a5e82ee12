/** What the file's robot does with its bar spinning, worked out by `fight/handling`. */
import {
  evenSpeedMPerS,
  inverted,
  type Steered,
  type YawLimit,
  yawLimit,
} from "../fight/handling/handling.ts";
import { leastTimeS, meanTorqueNM, pitchingOf } from "../fight/handling/pitching.ts";
import { steeringChart } from "../fight/handling/steering-chart.ts";
import { steeringWords } from "../fight/handling/steering-words.ts";
import { type CarriedBar, type RobotTerms, takenRobot } from "../fight/impact/scene.ts";
import type { Located, RobotDesign } from "../language/design.ts";
import type { FigureValue } from "./figure.ts";

/** Of the chart: Infinity where turning shifts no load. */
export type SteeringValue = {
  readonly groundMPerS: number;
  readonly edgeUpDegPerS: number;
  readonly edgeDownDegPerS: number;
};

/** The robot's figures by their keys, in reading order. */
export interface RobotFigures {
  readonly spotYawDegPerS: FigureValue;
  readonly spotLifts: FigureValue;
  readonly drivingYawDegPerS: FigureValue;
  readonly drivingLifts: FigureValue;
  readonly invertedYawDegPerS: FigureValue;
  readonly invertedLifts: FigureValue;
  readonly evenSpeedMPerS: FigureValue;
  readonly spinUpPitchNM: FigureValue;
  readonly leastSpinUpS: FigureValue;
  readonly steering: readonly SteeringValue[] | null;
  readonly steeringWords: string | null;
}

const DEG_PER_RAD = 180 / Math.PI;
/** Ground speeds of the chart. */
const CHART_SPEEDS = 9;

/**
 * What can be told of a robot with its bar.
 * @param terms what a blow needs of it, where all of it is said
 */
export function robotFigures(bar: CarriedBar, robot: RobotDesign, terms: RobotTerms | null): RobotFigures {
  const steered = steeredOf(bar, robot);
  const ground = robot.groundMPerS?.value ?? null;
  const spot = steered && yawLimit(steered, 0);
  const driving = steered && ground !== null ? yawLimit(steered, ground) : null;
  const onBack = invertedLimit(steered, robot, ground);
  return {
    ...limitFigures(spot, driving, onBack),
    evenSpeedMPerS: steered && evenSpeedMPerS(steered),
    ...pitchFigures(bar, robot, terms),
    steering: steered && ground !== null && ground > 0 ? chartValues(steered, ground) : null,
    steeringWords: steered && steeringWords(steered.edge),
  };
}

/** What a blow needs of the robot; null where something of it is not said or wrong. */
export function robotTerms(robot: RobotDesign): RobotTerms | null {
  const massKg = robot.massKg?.value;
  const centreHeightM = metres(robot.centreHeightMm);
  const axleAheadM = metres(robot.axleAheadMm);
  const axleHeightM = metres(robot.axleHeightMm);
  const { edge } = robot;
  if (massKg === undefined || centreHeightM === null || axleAheadM === null) return null;
  if (axleHeightM === null || edge === null) return null;
  return {
    massKg,
    centreHeightM,
    axleAheadM,
    axleHeightM,
    edge,
    lengthM: metres(robot.lengthMm),
    heightM: metres(robot.heightMm),
    pitchInertiaKgM2: robot.pitchInertiaKgM2?.value ?? null,
    rearWheelsM: metres(robot.rearWheelsMm),
    frontWheelsM: metres(robot.frontWheelsMm),
  };
}

function metres(length: Located<number> | null): number | null {
  return length === null ? null : length.value / 1000;
}

function steeredOf(bar: CarriedBar, robot: RobotDesign): Steered | null {
  const { massKg, edge } = robot;
  const [trackM, centreHeightM] = [metres(robot.trackMm), metres(robot.centreHeightMm)];
  if (massKg === null || trackM === null || centreHeightM === null || edge === null) return null;
  const angularMomentumKgM2PerS = bar.inertiaKgM2 * bar.radPerS;
  return { massKg: massKg.value, trackM, centreHeightM, angularMomentumKgM2PerS, edge };
}

function invertedLimit(steered: Steered | null, robot: RobotDesign, ground: number | null): YawLimit | null {
  const height = metres(robot.invertedCentreHeightMm);
  if (steered === null || height === null || ground === null) return null;
  return yawLimit(inverted(steered, height), ground);
}

function limitFigures(spot: YawLimit | null, driving: YawLimit | null, onBack: YawLimit | null) {
  const rate = (limit: YawLimit | null) => limit && limit.radPerS * DEG_PER_RAD;
  return {
    spotYawDegPerS: rate(spot),
    spotLifts: spot?.lifts ?? null,
    drivingYawDegPerS: rate(driving),
    drivingLifts: driving?.lifts ?? null,
    invertedYawDegPerS: rate(onBack),
    invertedLifts: onBack?.lifts ?? null,
  };
}

/** The wheels that stay down while the bar is spun up: those in front with the edge moving up. */
function pitchFigures(bar: CarriedBar, robot: RobotDesign, terms: RobotTerms | null) {
  const momentum = bar.inertiaKgM2 * bar.radPerS;
  const taken = terms && takenRobot(bar, terms);
  const seconds = robot.spinUpS?.value ?? null;
  const support = terms?.edge === "up" ? taken?.frontWheelsM : taken?.rearWheelsM;
  const known = robot.edge !== null && seconds !== null;
  return {
    spinUpPitchNM:
      known && robot.edge ? pitchingOf(meanTorqueNM(momentum, seconds), robot.edge).spinUpNM : null,
    leastSpinUpS: terms && support ? leastTimeS(momentum, terms.massKg, support) : null,
  };
}

function chartValues(steered: Steered, fastestMPerS: number): readonly SteeringValue[] {
  return steeringChart(steered, fastestMPerS, CHART_SPEEDS).map((point) => ({
    groundMPerS: point.groundMPerS,
    edgeUpDegPerS: point.edgeUpRadPerS * DEG_PER_RAD,
    edgeDownDegPerS: point.edgeDownRadPerS * DEG_PER_RAD,
  }));
}

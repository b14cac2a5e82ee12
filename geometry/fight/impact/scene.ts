/**
 * A blow from what a builder can measure: a robot on its wheels with an upright bar in front, an opponent ahead of it. The axle
 * is at (0, 0), x ahead, y up, seen from the robot's right. What is not said is taken from what is, and told.
 */
import type { Point } from "../../language/design.ts";
import { ORIGIN, plus, polar, times } from "../../outline/vector.ts";
import { boxInertiaKgM2 } from "./estimates.ts";
import type { Blow, StrikingRobot } from "./impact.ts";
import { type Edge, type Strike, spinSign, strikeAtHeight } from "./strike.ts";

/** The bar by its figures. */
export interface CarriedBar {
  readonly massKg: number;
  /** About its axle. */
  readonly inertiaKgM2: number;
  readonly radPerS: number;
  /** Of the tip that strikes. */
  readonly tipRadiusM: number;
  /** Of its centre of mass from the axle. */
  readonly eccentricityM: number;
  /** By how much its heavy side runs ahead of the tip, in the sense of the spin. */
  readonly heavyAheadRad: number;
}

/** Lengths level from the centre of mass, heights from the floor; `null` for what is not said. */
export interface RobotTerms {
  /** The bar included, as is its centre of mass. */
  readonly massKg: number;
  readonly centreHeightM: number;
  readonly axleAheadM: number;
  readonly axleHeightM: number;
  readonly edge: Edge;
  readonly lengthM: number | null;
  readonly heightM: number | null;
  /** Without the bar. */
  readonly pitchInertiaKgM2: number | null;
  readonly rearWheelsM: number | null;
  readonly frontWheelsM: number | null;
}

export interface OpponentTerms {
  /** `null` for one that is braced. */
  readonly massKg: number | null;
  readonly restitution: number;
  readonly closingMPerS: number;
  /** `null` for level with the axle. */
  readonly struckAtM: number | null;
}

/** What is taken of a robot where less is said. */
export interface TakenRobot {
  readonly pitchInertiaKgM2: number;
  readonly rearWheelsM: number;
  readonly frontWheelsM: number;
  /** What was taken, as phrases; empty where everything is said. */
  readonly assumed: readonly string[];
}

/** Why there can be no such robot or blow. */
export type SceneFault = "lighter-than-bar" | "bar-in-floor" | "out-of-reach";

/** Of the bar's mass: no robot of less has carried a bar, and its recoil would be beyond all numbers. */
const LEAST_REST = 0.01;

/** What of a robot and its bar cannot be; `null` where all can. */
export function robotFault(bar: CarriedBar, robot: RobotTerms): SceneFault | null {
  if (robot.massKg - bar.massKg < LEAST_REST * bar.massKg) return "lighter-than-bar";
  if (robot.axleHeightM <= bar.tipRadiusM) return "bar-in-floor";
  return null;
}

/**
 * What is taken of a robot: even and solid, as long as the axle is ahead of its centre, as high as its centre is above the floor, and both
 * again on the other side; standing on its rear end and below its axle.
 */
export function takenRobot(bar: CarriedBar, robot: RobotTerms): TakenRobot {
  const lengthM = robot.lengthM ?? 2 * robot.axleAheadM;
  const heightM = robot.heightM ?? 2 * robot.centreHeightM;
  const box = boxInertiaKgM2(robot.massKg - bar.massKg, lengthM, heightM);
  const mm = (metres: number) => `${Math.round(metres * 1000)}`;
  return {
    pitchInertiaKgM2: robot.pitchInertiaKgM2 ?? box,
    rearWheelsM: robot.rearWheelsM ?? lengthM / 2,
    frontWheelsM: robot.frontWheelsM ?? robot.axleAheadM,
    assumed: [
      ...(robot.pitchInertiaKgM2 === null ? [`box ${mm(lengthM)} × ${mm(heightM)} mm`] : []),
      ...(robot.rearWheelsM === null ? [`rear wheels ${mm(lengthM / 2)} mm`] : []),
      ...(robot.frontWheelsM === null ? [`front ${mm(robot.axleAheadM)} mm`] : []),
    ],
  };
}

/** The blow, or why there can be none. */
export function blowOf(bar: CarriedBar, robot: RobotTerms, opponent: OpponentTerms): Blow | SceneFault {
  const fault = robotFault(bar, robot);
  if (fault) return fault;
  const aboveAxleM = (opponent.struckAtM ?? robot.axleHeightM) - robot.axleHeightM;
  const strike = strikeAtHeight(bar.tipRadiusM, aboveAxleM, robot.edge);
  if (!strike) return "out-of-reach";
  const centreM = heavySide(bar, robot.edge, strike);
  const { massKg, inertiaKgM2 } = bar;
  const held = opponent.massKg === null;
  return {
    bar: { massKg, inertiaKgM2, centreM, spinRadPerS: bar.radPerS * spinSign(robot.edge) },
    robot: robotBody(bar, robot, centreM, opponent.closingMPerS),
    opponent: {
      massKg: opponent.massKg ?? Number.POSITIVE_INFINITY,
      // Struck straight through its centre it does not turn; one that is braced cannot.
      inertiaKgM2: held ? Number.POSITIVE_INFINITY : 1,
      centreM: strike.atM,
      velocityMPerS: ORIGIN,
      restitution: opponent.restitution,
    },
    strike,
  };
}

/** The bar's centre of mass as it lies when its tip strikes. */
function heavySide(bar: CarriedBar, edge: Edge, { atM }: Strike): Point {
  const tipRad = Math.atan2(atM.y, atM.x);
  return polar(ORIGIN, bar.eccentricityM, tipRad + spinSign(edge) * bar.heavyAheadRad);
}

/** The robot less its bar: its centre of mass is where the two together have that of the whole. */
function robotBody(bar: CarriedBar, robot: RobotTerms, barCentreM: Point, speedMPerS: number): StrikingRobot {
  const taken = takenRobot(bar, robot);
  const massKg = robot.massKg - bar.massKg;
  const whole = { x: -robot.axleAheadM, y: robot.centreHeightM - robot.axleHeightM };
  const centreM = times(plus(times(whole, robot.massKg), times(barCentreM, -bar.massKg)), 1 / massKg);
  const standsAtM = [-taken.rearWheelsM, taken.frontWheelsM].map((ahead) => ({
    x: whole.x + ahead,
    y: -robot.axleHeightM,
  }));
  return { massKg, inertiaKgM2: taken.pitchInertiaKgM2, centreM, speedMPerS, standsAtM };
}

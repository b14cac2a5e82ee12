/**
 * One blow of the bar: a planar rigid body on a frictionless axle in another, the robot, strikes a third, the
 * opponent, with a coefficient of restitution. The axle, the tooth and the floor answer in the same instant. Seen from the
 * robot's right, x ahead, y up, the axle at (0, 0). Source: impulse and momentum of rigid bodies in a plane.
 */
import type { Point } from "../../language/design.ts";
import { cross, minus, ORIGIN, times } from "../../outline/vector.ts";
import { type Body, kineticEnergyJ, velocityAt } from "./body.ts";
import { type Condition, speedOf } from "./conditions.ts";
import { withFloor } from "./floor.ts";
import { type Percussion, percussionOf } from "./percussion.ts";
import type { Strike } from "./strike.ts";

export interface StrikingBar {
  readonly massKg: number;
  /** About the axle. */
  readonly inertiaKgM2: number;
  /** Its centre of mass from the axle, as it lies at the strike. */
  readonly centreM: Point;
  /** Counter-clockwise is positive: the front edge moves up. */
  readonly spinRadPerS: number;
}

/** The robot without its bar. */
export interface StrikingRobot {
  /** Infinity for one that is held fast. */
  readonly massKg: number;
  /** About its centre of mass, in the plane of the bar. */
  readonly inertiaKgM2: number;
  /** From the axle. */
  readonly centreM: Point;
  /** Ahead. */
  readonly speedMPerS: number;
  /** Where it stands on the floor, the rear first, from the axle; none for one in the air. At most a few. */
  readonly standsAtM: readonly Point[];
}

/** It is not turning before the blow. A floor under it is not looked at: say Infinity for what is pressed against it. */
export interface StruckOpponent {
  /** Infinity for one that is braced. */
  readonly massKg: number;
  readonly inertiaKgM2: number;
  /** Its centre of mass from the axle; the place of the strike for a blow straight through it. */
  readonly centreM: Point;
  readonly velocityMPerS: Point;
  /** 0: nothing springs back, 1: nothing is lost. */
  readonly restitution: number;
}

export interface Blow {
  readonly bar: StrikingBar;
  readonly robot: StrikingRobot;
  readonly opponent: StruckOpponent;
  readonly strike: Strike;
}

export interface BlowEnergy {
  /** Of the bar before the blow, moving along with its robot and turning. */
  readonly barBeforeJ: number;
  readonly barAfterJ: number;
  readonly robotGainJ: number;
  readonly opponentGainJ: number;
  /** Into heat, bent metal and noise. */
  readonly lostJ: number;
}

export interface Impact {
  /** On the opponent, along the strike. */
  readonly impulseNS: number;
  /** How fast tooth and opponent came together along the strike. */
  readonly approachMPerS: number;
  /** A mass that would give the same impulse: J/((1 + e)·v). */
  readonly effectiveMassKg: number;
  readonly energy: BlowEnergy;
  /** Negative where the bar bounces back; `null` for a bar that stood still. */
  readonly spinLeftShare: number | null;
  /** From the axle on the bar; the robot feels the opposite. */
  readonly axleImpulseNS: Point;
  /** From the floor, in the order of `standsAtM`. */
  readonly floorImpulseNS: readonly number[];
  /** The angular impulse by the axle on the robot about where it stands at the rear: positive lifts the front. `null` in the air. */
  readonly frontLiftNMS: number | null;
  readonly barAfter: Body;
  readonly robotBefore: Body;
  readonly robotAfter: Body;
  readonly opponentBefore: Body;
  readonly opponentAfter: Body;
  readonly percussion: Percussion | null;
}

const BAR = 0;
const ROBOT = 1;
const OPPONENT = 2;

/**
 * What a blow does to all three; `null` where the tooth moves away from its opponent, so that there is no blow, and where
 * bodies are too unlike in size for numbers to tell.
 */
export function impactOf(blow: Blow): Impact | null {
  const { bar, robot, opponent, strike } = blow;
  const robotBefore = robotBodyOf(robot);
  const barBefore = barBodyOf(bar, robotBefore);
  const opponentBefore: Body = opponentBodyOf(opponent);
  const bodies = [barBefore, robotBefore, opponentBefore];
  const approachMPerS = -speedOf(bodies, contactOf(strike, 0));
  if (approachMPerS <= 0) return null;
  const contact = contactOf(strike, opponent.restitution * approachMPerS);
  const kept = withFloor(bodies, [...AXLE, contact], robot.standsAtM.map(standing));
  if (kept === null) return null;
  const [axleX = 0, axleY = 0, impulseNS = 0] = kept.impulses;
  const [barAfter = barBefore, robotAfter = robotBefore, opponentAfter = opponentBefore] = kept.after;
  const rear = robot.standsAtM[0];
  const axleImpulseNS = { x: axleX, y: axleY };
  return {
    impulseNS,
    approachMPerS,
    effectiveMassKg: impulseNS / ((1 + opponent.restitution) * approachMPerS),
    energy: energyOf(bodies, kept.after),
    spinLeftShare: bar.spinRadPerS === 0 ? null : barAfter.spinRadPerS / bar.spinRadPerS,
    axleImpulseNS,
    floorImpulseNS: kept.floor,
    frontLiftNMS: rear ? cross(minus(ORIGIN, rear), times(axleImpulseNS, -1)) : null,
    barAfter,
    robotBefore,
    robotAfter,
    opponentBefore,
    opponentAfter,
    percussion: percussionOf(bar, strike),
  };
}

function opponentBodyOf({ massKg, inertiaKgM2, centreM, velocityMPerS }: StruckOpponent): Body {
  return { massKg, inertiaKgM2, centreM, velocityMPerS, spinRadPerS: 0 };
}

function robotBodyOf(robot: StrikingRobot): Body {
  const { massKg, inertiaKgM2, centreM, speedMPerS } = robot;
  return { massKg, inertiaKgM2, centreM, velocityMPerS: { x: speedMPerS, y: 0 }, spinRadPerS: 0 };
}

/** Its own centre of mass circles the axle, which moves with the robot. */
function barBodyOf({ massKg, inertiaKgM2, centreM, spinRadPerS }: StrikingBar, robot: Body): Body {
  const turning = velocityAt({ ...robot, centreM: ORIGIN, spinRadPerS }, centreM);
  const aboutCentre = inertiaKgM2 - massKg * (centreM.x ** 2 + centreM.y ** 2);
  return { massKg, inertiaKgM2: aboutCentre, centreM, velocityMPerS: turning, spinRadPerS };
}

/** Bar and robot stay together at the axle, in both directions. */
const AXLE: readonly Condition[] = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
].map((along) => ({
  pushes: [
    { body: BAR, atM: ORIGIN, along },
    { body: ROBOT, atM: ORIGIN, along: times(along, -1) },
  ],
  afterMPerS: 0,
}));

function contactOf({ atM, along }: Strike, afterMPerS: number): Condition {
  return {
    pushes: [
      { body: OPPONENT, atM, along },
      { body: BAR, atM, along: times(along, -1) },
    ],
    afterMPerS,
  };
}

function standing(atM: Point): Condition {
  return { pushes: [{ body: ROBOT, atM, along: { x: 0, y: 1 } }], afterMPerS: 0 };
}

function energyOf(before: readonly Body[], after: readonly Body[]): BlowEnergy {
  const [bar = 0, robot = 0, opponent = 0] = before.map(kineticEnergyJ);
  const [barAfterJ = 0, robotAfter = 0, opponentAfter = 0] = after.map(kineticEnergyJ);
  return {
    barBeforeJ: bar,
    barAfterJ,
    robotGainJ: robotAfter - robot,
    opponentGainJ: opponentAfter - opponent,
    lostJ: bar + robot + opponent - barAfterJ - robotAfter - opponentAfter,
  };
}

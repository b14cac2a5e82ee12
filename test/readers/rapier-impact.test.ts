/**
 * Blows as a general engine for rigid bodies has them (Rapier, by its JavaScript build `@dimforge/rapier2d-compat`): tooth
 * and opponent are small discs in touch with one another, carried by bodies of the given mass and inertia, the bar hinged to
 * its robot or held fast. Nothing of the impact formulas is known to the engine.
 *
 * It reckons in single precision, by iterations that come near the answer; what is left is told at the tolerance.
 */
import RAPIER from "@dimforge/rapier2d-compat";
import { beforeAll, describe, expect, it } from "vitest";
import { type Blow, impactOf } from "../../geometry/fight/impact/impact.ts";
import { strikeAt } from "../../geometry/fight/impact/strike.ts";
import { minus, ORIGIN, plus, times } from "../../geometry/outline/vector.ts";
import { bodiesAfter, bodiesBefore, HELD_FAST } from "../fight/impact/blows.ts";

interface Motion {
  readonly x: number;
  readonly y: number;
  readonly spin: number;
}

/** As a share of the speed at which they meet; turning is measured at a tenth of a metre. */
const TOLERANCE = 5e-4;
/** Radius of the discs that touch. */
const DISC = 0.01;
const GAP = -1e-5;
const STEP_S = 1e-6;
const STEPS = 4;
const ITERATIONS = 200;

beforeAll(() => RAPIER.init());

type Place = { readonly x: number; readonly y: number };

function body(world: RAPIER.World, at: Place, mass: { massKg: number; inertiaKgM2: number }) {
  const desc = Number.isFinite(mass.massKg) ? RAPIER.RigidBodyDesc.dynamic() : RAPIER.RigidBodyDesc.fixed();
  desc.setTranslation(at.x, at.y).setCanSleep(false);
  if (Number.isFinite(mass.massKg)) desc.setAdditionalMassProperties(mass.massKg, ORIGIN, mass.inertiaKgM2);
  return world.createRigidBody(desc);
}

function disc(world: RAPIER.World, carrier: RAPIER.RigidBody, at: Place, restitution: number): void {
  const offset = minus(at, carrier.translation());
  const desc = RAPIER.ColliderDesc.ball(DISC)
    .setTranslation(offset.x, offset.y)
    .setDensity(0)
    .setFriction(0)
    .setRestitution(restitution);
  world.createCollider(desc, carrier);
}

/** By how much the blow changes the motion of bar, robot and opponent. */
type Changes = readonly [Motion, Motion, Motion];

interface Scene {
  readonly world: RAPIER.World;
  readonly bar: RAPIER.RigidBody;
  readonly robot: RAPIER.RigidBody;
  readonly opponent: RAPIER.RigidBody;
  readonly hinge: RAPIER.JointData;
}

function sceneOf({ bar, robot, opponent, strike }: Blow): Scene {
  const world = new RAPIER.World({ x: 0, y: 0 });
  world.timestep = STEP_S;
  world.numSolverIterations = ITERATIONS;
  const aboutCentre = bar.inertiaKgM2 - bar.massKg * (bar.centreM.x ** 2 + bar.centreM.y ** 2);
  const turning = body(world, bar.centreM, { ...bar, inertiaKgM2: aboutCentre });
  const carrying = body(world, robot.centreM, robot);
  const struck = body(world, opponent.centreM, opponent);
  disc(world, turning, plus(strike.atM, times(strike.along, -DISC)), opponent.restitution);
  disc(world, struck, plus(strike.atM, times(strike.along, DISC + GAP)), opponent.restitution);
  const hinge = RAPIER.JointData.revolute(minus(ORIGIN, robot.centreM), minus(ORIGIN, bar.centreM));
  return { world, bar: turning, robot: carrying, opponent: struck, hinge };
}

function changesIn({ world, bar, robot, opponent }: Scene): Changes {
  const motions = () => [bar, robot, opponent].map((of) => ({ ...of.linvel(), spin: of.angvel() }));
  const before = motions();
  for (let step = 0; step < STEPS; step++) world.step();
  const changes = motions().map(({ x, y, spin }, i) => {
    const was = before[i] ?? { x: Number.NaN, y: 0, spin: 0 };
    return { x: x - was.x, y: y - was.y, spin: spin - was.spin };
  });
  world.free();
  const [ofBar, ofRobot, ofOpponent] = changes;
  if (!ofBar || !ofRobot || !ofOpponent) throw new Error("three bodies");
  return [ofBar, ofRobot, ofOpponent];
}

/** The bar turns in a hinge of impulses. The engine bounces after the hinge is solved, so this is for e = 0 only. */
function turningBlow(blow: Blow): Changes {
  const scene = sceneOf(blow);
  scene.world.createImpulseJoint(scene.hinge, scene.robot, scene.bar, true);
  const { spinRadPerS: spin, centreM } = blow.bar;
  const { speedMPerS } = blow.robot;
  scene.bar.setLinvel({ x: speedMPerS - centreM.y * spin, y: centreM.x * spin }, true);
  scene.bar.setAngvel(spin, true);
  if (scene.robot.isDynamic()) scene.robot.setLinvel({ x: speedMPerS, y: 0 }, true);
  if (scene.opponent.isDynamic()) scene.opponent.setLinvel(blow.opponent.velocityMPerS, true);
  return changesIn(scene);
}

/**
 * Bar and robot as one jointed body, which this engine bounces rightly but does not let one start: so they stand still and
 * the opponent comes at the speed at which the two would have met. A blow changes motions by the same amounts.
 */
function comingBlow(blow: Blow, approachMPerS: number): Changes {
  const scene = sceneOf(blow);
  scene.world.createMultibodyJoint(scene.hinge, scene.robot, scene.bar, true);
  if (scene.opponent.isFixed()) scene.opponent.setBodyType(RAPIER.RigidBodyType.KinematicVelocityBased, true);
  scene.opponent.setLinvel(times(blow.strike.along, -approachMPerS), true);
  return changesIn(scene);
}

function expectSame(blow: Blow, way: "coming" | "turning"): void {
  const impact = impactOf(blow);
  if (!impact) throw new Error("no blow");
  const { approachMPerS } = impact;
  const engine = way === "coming" ? comingBlow(blow, approachMPerS) : turningBlow(blow);
  const was = bodiesBefore(blow, impact);
  bodiesAfter(impact).forEach((own, i) => {
    const [from, other] = [was[i], engine[i]];
    if (!from || !other) throw new Error("three bodies");
    const off = Math.hypot(
      own.velocityMPerS.x - from.velocityMPerS.x - other.x,
      own.velocityMPerS.y - from.velocityMPerS.y - other.y,
      (own.spinRadPerS - from.spinRadPerS - other.spin) / 10,
    );
    expect(off / approachMPerS, `body ${i}: ${JSON.stringify([from, own, other])}`).toBeLessThan(TOLERANCE);
  });
}

const BAR = { massKg: 1.6, inertiaKgM2: 0.012, centreM: ORIGIN, spinRadPerS: 40 };
const ROBOT = {
  massKg: 12,
  inertiaKgM2: 0.25,
  centreM: { x: -0.13, y: 0.01 },
  speedMPerS: 0,
  standsAtM: [],
};
const at = (aboveLevelRad: number, edge: "up" | "down") => strikeAt(0.13, aboveLevelRad, edge);
const through = (strike: { atM: Place }, massKg: number, restitution: number) => ({
  massKg,
  inertiaKgM2: 0.2,
  centreM: strike.atM,
  velocityMPerS: ORIGIN,
  restitution,
});

const RESTITUTIONS = [0, 0.3, 0.7, 1] as const;

function pinned(e: number): Blow {
  const strike = at(0, "up");
  return { bar: BAR, robot: HELD_FAST, opponent: through(strike, 2, e), strike };
}

function textbookRod(e: number): Blow {
  const atM = { x: 0, y: -1.2 };
  const opponent = { ...through({ atM }, 2, e), velocityMPerS: { x: 5, y: 0 } };
  const bar = { massKg: 8, inertiaKgM2: 3.84, centreM: { x: 0, y: -0.6 }, spinRadPerS: 0 };
  return { bar, robot: HELD_FAST, opponent, strike: { atM, along: { x: -1, y: 0 } } };
}

function upwards(e: number): Blow {
  const strike = at(-0.3, "up");
  return { bar: BAR, robot: ROBOT, opponent: through(strike, 13.6, e), strike };
}

function downwardsOutOfBalance(e: number): Blow {
  const strike = at(0.5, "down");
  const bar = { ...BAR, spinRadPerS: -40, centreM: { x: 0.006, y: 0.003 } };
  const opponent = { ...through(strike, 6, e), centreM: plus(strike.atM, { x: 0.1, y: -0.02 }) };
  return { bar, robot: { ...ROBOT, speedMPerS: 1.5 }, opponent, strike };
}

function braced(e: number): Blow {
  const strike = at(0.2, "up");
  const rock = { massKg: Number.POSITIVE_INFINITY, inertiaKgM2: Number.POSITIVE_INFINITY };
  return { bar: BAR, robot: ROBOT, opponent: { ...through(strike, 1, e), ...rock }, strike };
}

const SCENES = [
  ["a bar on a pin against a free mass", pinned],
  ["a rod of a textbook against a ball", textbookRod],
  ["a bar in a robot in the air that strikes upwards", upwards],
  [
    "downwards from above level, out of balance, on the move, beside the centre of mass",
    downwardsOutOfBalance,
  ],
  ["against one that is braced", braced],
] as const;

describe.each(SCENES)("%s, as the engine has it", (_, scene) => {
  it.each(RESTITUTIONS)("struck by its opponent, e = %d", (e) => {
    expectSame(scene(e), "coming");
  });

  it("turning into its opponent, e = 0", () => {
    expectSame(scene(0), "turning");
  });
});

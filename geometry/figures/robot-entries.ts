/** The catalogue's entries about steering. */
import type { Figure } from "./figure.ts";
import type { RobotFigures } from "./robot.ts";

const UNSAID =
  "the file has no robot, or something of robot, bar or spin is not said; robot takes mass, track, centre_height and edge, and some figures ground_speed and more";

function entry(
  key: keyof RobotFigures,
  label: string,
  measure: Figure["measure"],
  better: Figure["better"],
  meaning: string,
): Figure {
  return {
    group: "robot",
    key,
    label,
    meaning,
    measure,
    better,
    requirable: null,
    unknownBecause: UNSAID,
    of: ({ fight }) => fight.robot?.[key] ?? null,
  };
}

const SIDE =
  "The wheel on the inside of the turn, or the one on the outside; none where turning shifts no load.";

export const ROBOT_FIGURES: readonly Figure[] = [
  entry(
    "spotYawDegPerS",
    "Wheel lifts on the spot at",
    "turnRate",
    "more",
    "How fast the robot may turn on the spot with the bar at its spin until all load is off one side's wheels; an estimate for an even floor.",
  ),
  entry("spotLifts", "What lifts", "word", null, SIDE),
  entry(
    "drivingYawDegPerS",
    "Wheel lifts in a turn at",
    "turnRate",
    "more",
    "The same at the ground speed of the file; grip is not looked at.",
  ),
  entry("drivingLifts", "What lifts in it", "word", null, SIDE),
  entry(
    "invertedYawDegPerS",
    "On its back in a turn at",
    "turnRate",
    "more",
    "The same on its back, where the bar's front edge moves the other way; takes centre_height_inverted.",
  ),
  entry("invertedLifts", "What lifts on its back", "word", null, SIDE),
  entry(
    "evenSpeedMPerS",
    "Bar cancels cornering at",
    "speed",
    null,
    "The ground speed at which the lean by the bar and that of cornering cancel, I·ω/(m·h); negative for driving backwards.",
  ),
  entry(
    "spinUpPitchNM",
    "Pitching by spin-up",
    "torque",
    null,
    "The mean torque on the robot while the bar is brought to its spin in the time of the file, positive lifts the front; as much the other way while it is stopped in that time.",
  ),
  entry(
    "leastSpinUpS",
    "Spin-up that lifts none",
    "time",
    "less",
    "The least time of an even spin-up that leaves all wheels down.",
  ),
  entry(
    "steering",
    "Steering over ground speed",
    null,
    null,
    "The yaw rate at which a wheel lifts, up to the ground speed of the file, with the front edge moving up and down; null where turning shifts no load.",
  ),
  entry(
    "steeringWords",
    "Why one way is harder",
    null,
    null,
    "Why one direction of the bar is harder to steer.",
  ),
];

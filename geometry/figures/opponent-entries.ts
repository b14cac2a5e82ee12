/** The catalogue's entries about a blow. */
import type { Figure } from "./figure.ts";
import type { OpponentFigures } from "./opponent.ts";

const UNSAID =
  "the file has no robot or no opponent, something of them, the bar or its spin is not said, or there can be no such blow; robot takes mass, centre_height, axle_ahead, axle_height and edge, opponent mass and restitution";

function entry(
  key: keyof OpponentFigures,
  label: string,
  measure: Figure["measure"],
  better: Figure["better"],
  meaning: string,
): Figure {
  return {
    group: "opponent",
    key,
    label,
    meaning,
    measure,
    better,
    requirable: null,
    unknownBecause: UNSAID,
    of: ({ fight }) => fight.opponent?.[key] ?? null,
  };
}

export const OPPONENT_FIGURES: readonly Figure[] = [
  entry(
    "strikeMPerS",
    "Speed of the blow",
    "speed",
    null,
    "At which tip and opponent meet, along the blow, the closing speed included.",
  ),
  entry(
    "impulseNS",
    "Impulse of the blow",
    "impulse",
    "more",
    "On the opponent, square to the tip's radius, of rigid bodies without friction.",
  ),
  entry(
    "effectiveMassKg",
    "Mass that takes part",
    "mass",
    null,
    "A mass that would give the same impulse at that speed: I/r² of the bar, its robot and the opponent together.",
  ),
  entry(
    "spinLeftRpm",
    "Spin left",
    "rotation",
    "more",
    "Of the bar after the blow; negative where it bounces back.",
  ),
  entry("spinLeftShare", "Share of the spin left", "share", "more", "Of the spin before the blow."),
  entry("passedOnJ", "Energy passed on", "energy", "more", "What the opponent flies off with."),
  entry("lostJ", "Energy lost", "energy", null, "Into bent and cut metal, heat and noise, of both robots."),
  entry(
    "ownRobotJ",
    "Energy to the own robot",
    "energy",
    null,
    "What the recoil gives the own robot without its bar, seen from the floor; negative where it slows a robot that drives in.",
  ),
  entry("opponentAheadMPerS", "Opponent, away", "speed", null, "Its change of speed away from the robot."),
  entry(
    "opponentUpMPerS",
    "Opponent, upwards",
    "speed",
    null,
    "Its change of speed upwards; negative for one that is driven down.",
  ),
  entry(
    "opponentRiseMm",
    "Opponent would rise",
    "length",
    "more",
    "v²/2g of that speed: an estimate, nothing in its way.",
  ),
  entry(
    "ownAheadMPerS",
    "Own robot, ahead",
    "speed",
    null,
    "Its change of speed ahead; negative for a recoil.",
  ),
  entry(
    "ownUpMPerS",
    "Own robot, upwards",
    "speed",
    null,
    "The change of speed of its centre of mass upwards, held by the floor where it is pressed down.",
  ),
  entry("ownRiseMm", "Own robot would rise", "length", "less", "v²/2g of that speed: an estimate."),
  entry("ownPitchDegPerS", "Own robot pitches", "turnRate", null, "Positive where its front comes up."),
  entry(
    "frontLiftNMS",
    "Lift of the own front",
    "angularMomentum",
    null,
    "Angular impulse of the axle about the rear wheels; negative where the blow presses the front down.",
  ),
  entry(
    "axleImpulseNS",
    "Impulse on the axle",
    "impulse",
    "less",
    "What the axle gives the bar in the blow.",
  ),
  entry(
    "axleForceN",
    "Mean force on the axle",
    "force",
    "less",
    "That impulse over the contact time of the file; the peak is higher, by half as much again and more.",
  ),
  entry(
    "boltForceN",
    "Mean force on a bolt",
    "force",
    "less",
    "That force over the bolts of the file, if all carry the same.",
  ),
  entry(
    "percussionRadiusMm",
    "Radius of percussion",
    "length",
    null,
    "I/(m·e): a blow there, on the heavy side, would leave the axle alone. Far out for a bar near balance, whose axle takes all of the blow.",
  ),
  entry(
    "strikeBeyondMm",
    "Strike beyond it",
    "length",
    null,
    "How much farther out the strike is on that side; negative for farther in.",
  ),
  entry(
    "assumed",
    "Taken for granted",
    "word",
    null,
    "What the file does not say of the robot: that it pitches like an even box, unless pitch_inertia or length and height are given; that it stands on its rear end and below its axle, unless rear_wheels and front_wheels are.",
  ),
];

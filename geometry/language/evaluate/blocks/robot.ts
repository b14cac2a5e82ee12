import type { RobotDesign } from "../../design.ts";
import { type BlockValues, numberOf, textOf, unsaidOf } from "./block-values.ts";

/** Without them there is neither steering nor a blow. */
const NEEDED = ["mass", "track", "centre_height", "axle_ahead", "axle_height", "edge"];

/** What `robot { … }` says. */
export function robotOf(values: BlockValues): RobotDesign {
  const number = (word: string) => numberOf(values, word, "value");
  return {
    massKg: number("mass"),
    trackMm: number("track"),
    centreHeightMm: number("centre_height"),
    invertedCentreHeightMm: number("centre_height_inverted"),
    axleAheadMm: number("axle_ahead"),
    axleHeightMm: number("axle_height"),
    lengthMm: number("length"),
    heightMm: number("height"),
    pitchInertiaKgM2: number("pitch_inertia"),
    rearWheelsMm: number("rear_wheels"),
    frontWheelsMm: number("front_wheels"),
    edge: edgeOf(textOf(values, "edge", "value")?.value),
    groundMPerS: number("ground_speed"),
    spinUpS: number("spin_up"),
    bolts: number("bolts"),
    unsaid: unsaidOf(values, NEEDED),
    keyword: values.keyword,
    range: values.range,
  };
}

function edgeOf(word: string | undefined): RobotDesign["edge"] {
  return word === "up" || word === "down" ? word : null;
}

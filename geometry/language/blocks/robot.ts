import { INERTIA, LENGTH, MASS, SPEED, TIME } from "../dimension.ts";
import type { BlockTable, FieldRange, QuantityField, SettingRow } from "./block-table.ts";
import { choiceRow, quantityRow } from "./fields.ts";

/** Ten metres: beyond any robot, and it keeps every sum finite. */
const MOST_MM = 10_000;
const SIZES: FieldRange = { least: 1, most: MOST_MM };

type Length = Omit<QuantityField, "takes" | "name" | "lead">;

function length(what: string, example: string, about: string, range: FieldRange = SIZES): Length {
  return { dimension: LENGTH, unit: "mm", what, example, about, range };
}

/** `robot { … }`: the robot around the bar, as far as its bar throws it about. */
export const ROBOT: BlockTable = {
  summary:
    "The robot that carries the bar upright, its spin axis across: what steering with a spinning bar and a blow do to it. Estimates, with the cautions that are always shown.",
  example:
    "robot { mass 13.6 kg  track 300 mm  centre_height 70 mm  axle_ahead 160 mm  axle_height 150 mm  edge up }",
  template:
    "robot {\n  mass ‹13.6 kg›\n  track ‹300 mm›\n  centre_height ‹70 mm›\n  axle_ahead ‹160 mm›\n  axle_height ‹150 mm›\n  edge ‹up|down›\n}",
  limitExample: null,
  settings: [
    quantityRow("mass", "What the robot weighs ready to fight, the bar included.", {
      dimension: MASS,
      unit: "kg",
      what: "The mass of the robot",
      example: "13.6 kg",
      about: "The bar included.",
      range: { least: 0, above: true, most: 1e5, whyNotLess: "Whatever carries a bar has a mass." },
    }),
    quantityRow(
      "track",
      "How far apart its left and right wheels are.",
      length("The track", "300 mm", "Between the middles of the left and the right wheels."),
    ),
    quantityRow(
      "centre_height",
      "How high its centre of mass is.",
      length("The height of the centre of mass", "70 mm", "Above the floor."),
    ),
    quantityRow(
      "centre_height_inverted",
      "How high its centre of mass is when it drives on its back.",
      length("The height of the centre of mass of the robot on its back", "85 mm", "Above the floor."),
    ),
    quantityRow(
      "axle_ahead",
      "How far the bar's axle is ahead of the centre of mass.",
      length("The distance of the axle", "160 mm", "Level, from the centre of mass of the robot.", {
        ...SIZES,
        whyNotLess: "The bar is in front; take the other end for the front.",
      }),
    ),
    quantityRow(
      "axle_height",
      "How high the bar's axle is.",
      length("The height of the axle", "150 mm", "Above the floor; more than the bar's largest radius."),
    ),
    quantityRow(
      "length",
      "How long the robot is without its bar, to estimate how hard it is to pitch.",
      length("The length of the robot", "400 mm", "From front to rear, the bar left out."),
    ),
    quantityRow(
      "height",
      "How high the robot is without its bar, to estimate how hard it is to pitch.",
      length("The height of the robot", "120 mm", "From its lowest to its highest part, the bar left out."),
    ),
    quantityRow("pitch_inertia", "The robot's moment of inertia in pitch, in place of the estimate.", {
      dimension: INERTIA,
      unit: "kg*m^2",
      what: "The moment of inertia in pitch",
      example: "0.2 kg*m^2",
      about: "Without the bar, about an axis across the robot through its centre of mass.",
      range: { least: 1e-6, most: 1e6 },
    }),
    quantityRow(
      "rear_wheels",
      "How far its rearmost wheels are behind the centre of mass.",
      length(
        "The distance of the rear wheels",
        "130 mm",
        "Level, from the centre of mass to where they touch the floor.",
      ),
    ),
    quantityRow(
      "front_wheels",
      "How far what it stands on at the front is ahead of the centre of mass: wheels, a wedge or forks.",
      length(
        "The distance of the front wheels",
        "90 mm",
        "Level, from the centre of mass to where they touch the floor.",
      ),
    ),
    choiceRow("edge", "Which way the bar's front edge moves.", {
      words: ["up", "down"],
      about: "As the robot stands on its wheels.",
    }),
    quantityRow("ground_speed", "How fast the robot drives in a turn.", {
      dimension: SPEED,
      unit: "m/s",
      what: "The ground speed",
      example: "4 m/s",
      about: "Ahead, in the turns that are to be judged.",
      range: { least: 0, most: 100, whyNotMore: "No robot drives so fast." },
    }),
    quantityRow("spin_up", "How long the bar takes from standing to its spin.", {
      dimension: TIME,
      unit: "s",
      what: "The time of the spin-up",
      example: "4 s",
      about: "From standing to the spin of the file.",
      range: { least: 0, above: true, most: 3600, whyNotLess: "No bar spins at once." },
    }),
    boltRow(),
  ],
};

function boltRow(): SettingRow {
  return {
    word: "bolts",
    summary: "How many bolts hold the bar to its hub, to share out the load of a blow.",
    example: "bolts 6",
    fields: [
      {
        takes: "count",
        name: "value",
        lead: null,
        example: "6",
        what: "The count of bolts",
        least: 1,
        most: 100,
        about: "Those that carry the bar.",
      },
    ],
  };
}

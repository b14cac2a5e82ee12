import { TIME } from "../dimension.ts";
import type { BlockTable } from "./block-table.ts";

/** An hour: a bar that turns for longer has been timed in another unit. */
const MOST_SPIN_DOWN_S = 3600;

/** `event { … }`: the limits that an event states, on the figures that `require` knows. */
export const EVENT: BlockTable = {
  summary:
    "Limits that an event states, checked as requirements are; the event's own rules and its inspectors decide.",
  example: "event { tip_speed <= 75 m/s  energy <= 900 J  spin_down <= 60 s  measured_spin_down 42 s }",
  template: "event {\n  tip_speed <= ‹75 m/s›\n  mass <= ‹1.5 kg›\n}",
  limitExample: "tip_speed <= 75 m/s",
  settings: [
    {
      word: "measured_spin_down",
      summary: "How long the bar takes from full spin to standstill, timed on the robot.",
      example: "measured_spin_down 42 s",
      fields: [
        {
          takes: "quantity",
          name: "time",
          lead: null,
          dimension: TIME,
          unit: "s",
          example: "42 s",
          what: "The time of the spin-down",
          about: "From full spin to standstill.",
          range: {
            least: 0,
            above: true,
            most: MOST_SPIN_DOWN_S,
            whyNotLess: "No bar stands still at once.",
            whyNotMore: "No bar turns for an hour.",
          },
        },
      ],
    },
  ],
};

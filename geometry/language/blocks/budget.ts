import { MASS } from "../dimension.ts";
import type { BlockTable, FieldRange, QuantityField } from "./block-table.ts";

/** A hundred tonnes: far beyond any robot, and it keeps every sum finite. */
const MASSES: FieldRange = {
  least: 0,
  above: true,
  most: 1e5,
  whyNotLess: "Whatever is weighed has a mass.",
};
const MOST_COUNT = 1000;

function mass(what: string, example: string, about: string): QuantityField {
  const common = { takes: "quantity", name: "mass", lead: null, dimension: MASS, unit: "kg" } as const;
  return { ...common, what, example, about, range: MASSES };
}

/** `budget { … }`: what the robot may weigh and what its parts do. The bar itself is counted from its outline. */
export const BUDGET: BlockTable = {
  summary:
    "What the robot may weigh and what is in it; the bar of this file counts by itself, with the mass of its outline.",
  example: 'budget { limit 6 kg  part "frame" 2.1 kg  part "wheel" 120 g count 4  scale 5.87 kg }',
  template: 'budget {\n  limit ‹6 kg›\n  part "‹frame›" ‹2.1 kg›\n  part "‹wheel›" ‹120 g› count ‹4›\n}',
  limitExample: null,
  settings: [
    {
      word: "limit",
      summary: "What the robot may weigh in all, the bar included.",
      example: "limit 6 kg",
      fields: [mass("The limit", "6 kg", "The most that the event lets it weigh.")],
    },
    {
      word: "part",
      summary: "Something the robot is made of, the bar apart; spare where the robot can do without it.",
      example: 'part "wheel" 120 g count 4',
      isRepeated: true,
      fields: [
        { takes: "text", name: "name", lead: null, example: "frame", about: "What it is called." },
        mass("The mass of a part", "2.1 kg", "The mass of one of them."),
        {
          takes: "count",
          name: "count",
          lead: "count",
          isOptional: true,
          example: "4",
          what: "The count of a part",
          least: 1,
          most: MOST_COUNT,
          about: "How many of them the robot has; one where nothing is said.",
        },
        {
          takes: "flag",
          name: "spare",
          lead: "spare",
          isOptional: true,
          about: "The robot can do without it: it is among what may be left off.",
        },
      ],
    },
    {
      word: "scale",
      summary: "What a scale reads with everything on; told beside what the parts add up to.",
      example: "scale 5.87 kg",
      fields: [mass("The reading of the scale", "5.87 kg", "The reading, the bar included.")],
    },
  ],
};

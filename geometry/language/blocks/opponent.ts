import { LENGTH, MASS, NUMBER, SPEED, TIME } from "../dimension.ts";
import type { BlockTable } from "./block-table.ts";
import { choiceRow, quantityRow } from "./fields.ts";

/** `opponent { … }`: what the bar strikes. */
export const OPPONENT: BlockTable = {
  summary:
    "What the bar strikes: what a blow does to it, to the bar, to the axle and to the own robot. Estimates, with the cautions that are always shown.",
  example: "opponent { mass 13.6 kg  restitution 0.3  stands free  closing 3 m/s  contact_time 0.5 ms }",
  template: "opponent {\n  mass ‹13.6 kg›\n  restitution ‹0.3›\n  closing ‹3 m/s›\n}",
  limitExample: null,
  settings: [
    quantityRow("mass", "What the opponent weighs.", {
      dimension: MASS,
      unit: "kg",
      what: "The mass of the opponent",
      example: "13.6 kg",
      about: "All of it: the blow is taken to go straight through its centre of mass.",
      range: { least: 0, above: true, most: 1e5, whyNotLess: "Whatever is struck has a mass." },
    }),
    quantityRow("restitution", "How much of the speed at which they meet they part with.", {
      dimension: NUMBER,
      unit: "",
      what: "The restitution",
      example: "0.3",
      about:
        "From 0, where nothing springs back, to 1, where nothing is lost; hard steel on steel that bends is low.",
      range: {
        least: 0,
        most: 1,
        whyNotLess: "They would go on into each other.",
        whyNotMore: "They would part with more energy than they met with.",
      },
    }),
    choiceRow("stands", "Whether the opponent can give way.", {
      words: ["free", "braced"],
      about: "braced for one that is pressed against the floor or a wall; free where nothing is said.",
    }),
    quantityRow("closing", "How fast the robots come together.", {
      dimension: SPEED,
      unit: "m/s",
      what: "The closing speed",
      example: "3 m/s",
      about: "Along the floor; none where nothing is said.",
      range: { least: 0, most: 100, whyNotMore: "No robots meet so fast." },
    }),
    quantityRow("struck_at", "How high above the floor the opponent is struck.", {
      dimension: LENGTH,
      unit: "mm",
      what: "The height of the strike",
      example: "60 mm",
      about: "Above the floor, within reach of the bar; level with the axle where nothing is said.",
      range: { least: 0, most: 10_000, whyNotLess: "The floor is in the way." },
    }),
    quantityRow("contact_time", "How long a blow lasts, to turn its impulse into forces.", {
      dimension: TIME,
      unit: "ms",
      what: "The contact time",
      example: "0.5 ms",
      about: "An assumption: forces are in inverse proportion to it.",
      range: {
        least: 0,
        above: true,
        most: 1000,
        whyNotLess: "A blow that takes no time has no finite force.",
      },
    }),
  ],
};

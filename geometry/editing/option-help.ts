/** One line of help and an example for the words that stand inside a statement or step. */
import type { OPTION_WORDS } from "../language/vocabulary.ts";
import type { WordHelp } from "./statement-help.ts";

/** `from` is a step in a path; in a let and in a ring of holes it is an option too. */
export type OptionWord = (typeof OPTION_WORDS)[number] | "from";

export const OPTION_HELP: Readonly<Record<OptionWord, WordHelp>> = {
  at: {
    summary: "In a ring: at which radius its holes lie. In a requirement or an aim: at which closing speed.",
    example: "require bite at 3 m/s >= 6 mm",
  },
  about: {
    summary: "The centre of an arc; both ends are equally far from it.",
    example: "arc (0 mm, 60 mm) about (0 mm, 0 mm) turning left",
  },
  and: {
    summary: "A second goal: what is best of both is traded off.",
    example: "aim most inertia and least mass by tail, waist",
  },
  bevel: {
    summary: "Cuts the corner at the end of this step, so far from the corner along both sides.",
    example: "line (60 mm, 20 mm) bevel 3 mm",
  },
  by: {
    summary:
      "A point counted from the last one: how far in x and in y. Behind balance and in an aim: the lets that may be moved.",
    example: "line by (10 mm, -4 mm)",
  },
  ccw: { summary: "The bar spins counter-clockwise, as drawn.", example: "spin 4200 rpm ccw" },
  cw: { summary: "The bar spins clockwise, as drawn.", example: "spin 4200 rpm cw" },
  diameter: { summary: "The size of a round hole.", example: "hole (0 mm, 17 mm) diameter 6.5 mm" },
  edge: { summary: "The bar meets an edge, such as the rim of a wheel guard.", example: "target edge" },
  face: { summary: "The bar meets a flat face, square to the way it approaches.", example: "target face" },
  from: {
    summary: "In a let: its least value. In a ring of holes: the direction of the first one.",
    example: "let tail = 96 mm from 80 mm to 120 mm",
  },
  keeping: {
    summary: "Limits that the aim has to keep, beside the requirements of the file.",
    example: "aim most inertia keeping mass <= 1.6 kg, balance <= G16 by tail, waist",
  },
  least: {
    summary: "The figure is to become as small as the limits allow.",
    example: "aim least mass keeping inertia >= 0.02 kg*m^2 by tail, waist",
  },
  left: {
    summary: "The arc turns left on its way: counter-clockwise.",
    example: "arc (60 mm, 20 mm) radius 160 mm turning left",
  },
  long: {
    summary: "The arc takes the long way round, more than half a circle.",
    example: "arc (60 mm, 20 mm) radius 30 mm turning left long",
  },
  mirror: {
    summary: "The path is one half of the loop, from the axis to the axis, and is reflected in it.",
    example: "outline mirror x { from (60 mm, 0 mm) line (40 mm, 20 mm) line (-60 mm, 0 mm) }",
  },
  most: {
    summary: "The figure is to become as large as the limits allow.",
    example: "aim most bite at 4 m/s keeping mass <= 1.6 kg by tail, waist",
  },
  offset: {
    summary:
      "How far the line of approach is off the spin axis, towards the side to which the struck part of the bar moves; negative for the other side.",
    example: "target edge offset 12 mm",
  },
  radius: {
    summary: "Of an arc: its radius. Of a ring of holes: how far they are from the spin axis.",
    example: "arc (60 mm, 20 mm) radius 160 mm turning left",
  },
  repeat: {
    summary: "The path is one n-th of the loop; the rest is made by turning it about the spin axis.",
    example: "outline repeat 2 { from (60 mm, 0 mm) line (42 mm, 20 mm) line (-60 mm, 0 mm) }",
  },
  right: {
    summary: "The arc turns right on its way: clockwise.",
    example: "arc (60 mm, 20 mm) radius 160 mm turning right",
  },
  ring: {
    summary: "So many equal holes, spread evenly about the spin axis.",
    example: "hole ring 4 at radius 40 mm diameter 6.5 mm from 45 deg",
  },
  round: {
    summary: "Behind a step: rounds the corner at its end with this radius. Behind target: a rounded edge.",
    example: "line (60 mm, 20 mm) round 4 mm",
  },
  through: {
    summary: "A point that the arc passes on its way.",
    example: "arc (60 mm, 20 mm) through (64 mm, 0 mm)",
  },
  to: {
    summary: "The other end of a range, or of a slot.",
    example: "approach 0.5 m/s to 6 m/s",
  },
  turning: {
    summary: "Which way round: left is counter-clockwise, right is clockwise.",
    example: "arc (60 mm, 20 mm) radius 160 mm turning left",
  },
  width: {
    summary: "The width of a slot: the diameter of its round ends.",
    example: "slot (-60 mm, 0 mm) to (-48 mm, 0 mm) width 8 mm",
  },
};

/** The help of an option, or null where the word is none. */
export function optionHelp(word: string): WordHelp | null {
  return Object.hasOwn(OPTION_HELP, word) ? OPTION_HELP[word as OptionWord] : null;
}

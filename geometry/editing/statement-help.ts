/**
 * One line of help and an example for every statement and step, with the snippets that write a whole one. Hovers,
 * completion and reference pages all read this table.
 */
import type { StatementWord } from "../language/parse/parse-statement.ts";
import type { StepWord } from "../language/parse/parse-step.ts";
import { BLOCK_HELP } from "./block-help.ts";

/** A text to insert. */
export interface Snippet {
  /** What it is listed as; begins with the word that it writes. */
  readonly label: string;
  /** A template (see `template.ts`). */
  readonly template: string;
}

export interface WordHelp {
  /** One sentence, as a reader of the file would ask for it. */
  readonly summary: string;
  /** A line of a file that uses the word. */
  readonly example: string;
}

export interface StatementHelp extends WordHelp {
  readonly snippets: readonly Snippet[];
}

export const STATEMENT_HELP: Readonly<Record<StatementWord, StatementHelp>> = {
  ...BLOCK_HELP,
  bar: {
    summary: "Names the bar; the name heads the report and marks the cut file.",
    example: 'bar "Wattlebird one-tooth"',
    snippets: [{ label: "bar", template: 'bar "‹name›"' }],
  },
  thickness: {
    summary: "Thickness of the plate.",
    example: "thickness 12 mm",
    snippets: [{ label: "thickness", template: "thickness ‹12 mm›" }],
  },
  material: {
    summary:
      "What the plate is made of, by its name in the material table: gives density and yield strength.",
    example: "material wear_steel_450",
    snippets: [{ label: "material", template: "material ‹wear_steel_450›" }],
  },
  density: {
    summary: "Density of the plate: for what is not in the table, or in place of the table's value.",
    example: "density 7850 kg/m^3",
    snippets: [{ label: "density", template: "density ‹7850 kg/m^3›" }],
  },
  yield: {
    summary: "Yield strength of the plate, in place of the table's value.",
    example: "yield 1200 MPa",
    snippets: [{ label: "yield", template: "yield ‹1200 MPa›" }],
  },
  let: {
    summary:
      "Names a value, to be used in many places and changed in one. Bounds say how far it may be varied.",
    example: "let tail = 96 mm from 80 mm to 120 mm",
    snippets: [
      { label: "let", template: "let ‹name› = ‹12 mm›" },
      { label: "let with bounds", template: "let ‹name› = ‹96 mm› from ‹80 mm› to ‹120 mm›" },
    ],
  },
  outline: {
    summary:
      "The outer edge, as a closed path. With repeat n the path is one n-th of the loop and is turned about the spin axis; with mirror x or mirror y it is one half.",
    example: "outline { from (60 mm, -20 mm) line (60 mm, 20 mm) line (-60 mm, 0 mm) close }",
    snippets: [
      {
        label: "outline",
        template:
          "outline {\n  from (‹60 mm›, ‹-20 mm›)\n  line (‹60 mm›, ‹20 mm›)\n  line (‹-60 mm›, ‹0 mm›)\n  close\n}",
      },
      {
        label: "outline repeat",
        template:
          "outline repeat 2 {\n  from (‹60 mm›, 0 mm)\n  line (‹42 mm›, ‹20 mm›)\n  line (-‹=1›, 0 mm)\n}",
      },
      {
        label: "outline mirror",
        template:
          "outline mirror x {\n  from (‹60 mm›, 0 mm)\n  line (‹40 mm›, ‹20 mm›)\n  line (‹-60 mm›, 0 mm)\n}",
      },
    ],
  },
  bore: {
    summary: "Round hole on the spin axis, for the axle.",
    example: "bore 22 mm",
    snippets: [{ label: "bore", template: "bore ‹22 mm›" }],
  },
  hole: {
    summary: "A round hole at a point, or a ring of holes about the spin axis.",
    example: "hole (0 mm, 17 mm) diameter 6.5 mm",
    snippets: [
      { label: "hole", template: "hole (‹0 mm›, ‹17 mm›) diameter ‹6.5 mm›" },
      {
        label: "hole ring",
        template: "hole ring ‹4› at radius ‹40 mm› diameter ‹6.5 mm› from ‹45 deg›",
      },
    ],
  },
  slot: {
    summary: "A slot with round ends, between the middles of its two ends.",
    example: "slot (-60 mm, 0 mm) to (-48 mm, 0 mm) width 8 mm",
    snippets: [
      {
        label: "slot",
        template: "slot (‹-60 mm›, ‹0 mm›) to (‹-48 mm›, ‹0 mm›) width ‹8 mm›",
      },
    ],
  },
  cutout: {
    summary: "An inner edge of any shape, as a closed path.",
    example: "cutout { from (-84 mm, -6 mm) line (-74 mm, -6 mm) line (-74 mm, 6 mm) close }",
    snippets: [
      {
        label: "cutout",
        template:
          "cutout {\n  from (‹-84 mm›, ‹-6 mm›)\n  line (‹-74 mm›, ‹-6 mm›)\n  line (‹-74 mm›, ‹6 mm›)\n  close\n}",
      },
    ],
  },
  spin: {
    summary: "Speed of rotation, and its direction as drawn: ccw (counter-clockwise) or cw (clockwise).",
    example: "spin 4200 rpm ccw",
    snippets: [{ label: "spin", template: "spin ‹4200 rpm› ‹ccw|cw›" }],
  },
  approach: {
    summary: "Closing speeds to study, from the slowest to the fastest.",
    example: "approach 0.5 m/s to 6 m/s",
    snippets: [{ label: "approach", template: "approach ‹0.5 m/s› to ‹6 m/s›" }],
  },
  target: {
    summary:
      "What the bar meets: an edge, a flat face or a rounded edge, and how far the line of approach is off the spin axis.",
    example: "target round 5 mm offset 12 mm",
    snippets: [{ label: "target", template: "target ‹edge|face|round 5 mm›" }],
  },
  require: {
    summary: "A figure that the bar has to reach or keep under; checking the file fails where it does not.",
    example: "require mass <= 1.6 kg",
    snippets: [{ label: "require", template: "require ‹mass› ‹<=|>=› ‹1.6 kg›" }],
  },
  balance: {
    summary:
      "Names one or two lets that the tool may move, within their bounds, to bring the centroid to the spin axis.",
    example: "balance by tail, lower",
    snippets: [{ label: "balance by", template: "balance by ‹tail›, ‹lower›" }],
  },
  aim: {
    summary:
      "Says what the bar is to become, which limits it has to keep and which lets may be moved for it, within their bounds.",
    example: "aim most inertia keeping mass <= 1.6 kg by tail, waist",
    snippets: [
      { label: "aim", template: "aim ‹most inertia› keeping ‹mass <= 1.6 kg› by ‹tail›, ‹waist›" },
      { label: "aim for two goals", template: "aim most ‹inertia› and least ‹mass› by ‹tail›, ‹waist›" },
    ],
  },
  variant: {
    summary: "A named set of overrides of lets and settings; everything else is as in the bar itself.",
    example: 'variant "long tail" { thickness 10 mm }',
    snippets: [{ label: "variant", template: 'variant "‹name›" {\n  ‹›\n}' }],
  },
};

export const STEP_HELP: Readonly<Record<StepWord, StatementHelp>> = {
  from: {
    summary: "Where the path starts.",
    example: "from (60 mm, -20 mm)",
    snippets: [{ label: "from", template: "from (‹60 mm›, ‹0 mm›)" }],
  },
  line: {
    summary: "A straight line to a point.",
    example: "line (60 mm, 20 mm) round 4 mm",
    snippets: [{ label: "line", template: "line (‹60 mm›, ‹20 mm›)" }],
  },
  arc: {
    summary:
      "An arc to a point: of a radius (turning left is counter-clockwise), through a third point, or about a centre.",
    example: "arc (60 mm, 20 mm) radius 160 mm turning left",
    snippets: [
      {
        label: "arc with radius",
        template: "arc (‹60 mm›, ‹20 mm›) radius ‹160 mm› turning ‹left|right›",
      },
      { label: "arc through a point", template: "arc (‹60 mm›, ‹20 mm›) through (‹64 mm›, ‹0 mm›)" },
      {
        label: "arc about a centre",
        template: "arc (‹60 mm›, ‹20 mm›) about (‹0 mm›, ‹0 mm›) turning ‹left|right›",
      },
    ],
  },
  spiral: {
    summary:
      "A spiral about the spin axis to a point: its radius changes evenly with the angle, within one turn.",
    example: "spiral (60 mm @ 20 deg) turning left",
    snippets: [{ label: "spiral", template: "spiral (‹60 mm› @ ‹20 deg›) turning ‹left|right›" }],
  },
  close: {
    summary: "A straight line back to the first point.",
    example: "close",
    snippets: [{ label: "close", template: "close" }],
  },
};

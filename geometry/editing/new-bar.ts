/** Bars to start from. */
import type { TextRange } from "../language/text.ts";

export interface NewBarTemplate {
  readonly id: string;
  readonly title: string;
  readonly summary: string;
  /** A whole file that has no problems. */
  readonly text: string;
  /** The name in it, without its quotation marks: what a builder writes first. */
  readonly nameRange: TextRange;
}

const NAME = "New bar";

export const newBarTemplates: readonly NewBarTemplate[] = [
  template(
    "two-tooth",
    "Two teeth",
    "A bar that is balanced by its shape: one half, repeated.",
    `
thickness 12 mm
material wear_steel_450

let reach = 130 mm    # spin axis to the tips
let waist = 26 mm     # half the width of the bar
let face = 18 mm      # depth of a tooth's face

# One half, from tip to tip, counter-clockwise.
outline repeat 2 {
  from (reach, 0 mm)
  line (reach - face, 0 mm) round 3 mm            # the face, square to the way it moves
  line (reach - face - 12 mm, waist) round 8 mm
  line (14 mm - reach, waist) round 4 mm          # along the arm to the back of the other tooth
  line (-reach, 0 mm)                             # relief behind the tip
}

bore 25 mm
hole ring 2 at radius 42 mm diameter 12.5 mm      # drive bolts

spin 4200 rpm ccw
approach 0.5 m/s to 6 m/s
target edge

require mass <= 1.6 kg
require balance <= G6.3
`,
  ),
  template(
    "one-tooth",
    "One tooth",
    "Twice the bite for its speed, and a counterweight to balance it.",
    `
thickness 10 mm
material wear_steel_500

let reach = 125 mm                          # spin axis to the tip
let face = 40 mm                            # depth of the tooth's face
let waist = 24 mm                           # half the width of the arm
let tail = 89.77 mm from 60 mm to 100 mm    # spin axis to the end of the counterweight
let upper = 36 mm                           # half the width of the counterweight, leading side
let lower = 31.34 mm from 24 mm to 60 mm    # the same, trailing side

outline {
  from (reach, 2 mm)                        # the tip
  line (reach - face, 5 mm) round 6 mm      # the face
  line (reach - face - 8 mm, waist) round 10 mm
  line (-18 mm, waist) round 20 mm
  line (-36 mm, upper) round 10 mm
  line (-tail, upper) round 14 mm
  line (-tail, -lower) round 14 mm
  line (-36 mm, -lower) round 10 mm
  line (-18 mm, -waist) round 20 mm
  line (reach - 16 mm, -waist) round 5 mm
  close                                     # relief behind the tip
}

bore 22 mm
hole (36 mm, 0 mm) diameter 10.5 mm         # drive bolts
hole (-36 mm, 0 mm) diameter 10.5 mm

spin 4800 rpm ccw
approach 0.5 m/s to 6 m/s
target edge

require mass <= 1.2 kg
require balance <= G16
`,
  ),
  template(
    "disc",
    "Disc",
    "Nearly round: two teeth whose backs are spirals.",
    `
thickness 8 mm
material ti_6al_4v

let tip = 82 mm     # spin axis to the tips
let rise = 9 mm     # from the root of a face to the next tip, over half a turn

outline repeat 2 {
  from (tip @ 0 deg)
  line (tip - rise @ 0 deg)                 # the face
  spiral (tip @ 180 deg) turning left       # its back, out to the next tip
}

bore 16 mm
hole ring 6 at radius 34 mm diameter 9 mm from 30 deg

spin 7600 rpm ccw
approach 0.5 m/s to 5 m/s
target edge

require mass <= 0.75 kg
require balance <= G6.3
require clean_bite >= 2 m/s
`,
  ),
];

function template(id: string, title: string, summary: string, rest: string): NewBarTemplate {
  const start = 'bar "'.length;
  return {
    id,
    title,
    summary,
    text: `bar "${NAME}"\n${rest}`,
    nameRange: { start, end: start + NAME.length },
  };
}

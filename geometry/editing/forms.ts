/**
 * How each statement and step is written: its parts in order, what each takes and what it is. Parameter help shows a
 * form as it stands here; completion offers what may come next in it. The parser has the last word on what is right.
 */
import { ANGLE, ANGULAR_SPEED, DENSITY, LENGTH, NUMBER, SPEED, STRESS } from "../language/dimension.ts";
import type { StatementWord } from "../language/parse/parse-statement.ts";
import type { StepWord } from "../language/parse/parse-step.ts";
import { aimForms } from "./aim-forms.ts";
import { BLOCK_FORMS } from "./block-help.ts";
import {
  AT_SPEED,
  type Form,
  LIMIT,
  optional,
  type Part,
  part,
  RELATION,
  type Taking,
  value,
} from "./form.ts";

const POINT: Taking = { kind: "point", isFirst: false };
const FIRST_POINT: Taking = { ...POINT, isFirst: true };
const TO = part(
  "",
  POINT,
  "(x, y)",
  "Where it ends: (x, y), (r @ angle) about the spin axis, or by (dx, dy).",
);
const AT = part(
  "",
  FIRST_POINT,
  "(x, y)",
  "The middle of the hole: (x, y) or (r @ angle) about the spin axis.",
);
const TURNING = part(
  "turning",
  { kind: "words", words: ["left", "right"] },
  "turning left|right",
  "Which way round: left is counter-clockwise, right is clockwise.",
);
const CORNER = optional(
  "round|bevel",
  value(LENGTH, "4 mm"),
  "[round r | bevel d]",
  "Rounds or cuts the corner at the end of this step.",
);
const PATH = part(
  "",
  { kind: "path" },
  "{ path }",
  "The steps of the path; before it may stand repeat n, mirror x or mirror y.",
);
const OFFSET = optional(
  "offset",
  value(LENGTH, "12 mm"),
  "[offset d]",
  "How far the line of approach is off the spin axis.",
);
const DIAMETER = part("diameter", value(LENGTH, "6.5 mm"), "diameter d", "The size of the hole.");
const EQUALS = part("", { kind: "equals" }, "=", "Stands between the name and its value.");
const LET_NAME = part("", { kind: "new-name" }, "name", "A new name: letters, digits and _.");
const LET_VALUE = part(
  "",
  value(null, "12 mm"),
  "value",
  "A number with its unit, or a calculation with other lets.",
);

export const STATEMENT_FORMS: Readonly<Record<StatementWord, readonly Form[]>> = {
  ...BLOCK_FORMS,
  bar: form("bar", part("", { kind: "text" }, '"name"', "The name, in quotation marks.")),
  thickness: form("thickness", part("", value(LENGTH, "12 mm"), "length", "Thickness of the plate.")),
  material: form("material", part("", { kind: "material" }, "name", "A name of the material table.")),
  density: form("density", part("", value(DENSITY, "7850 kg/m^3"), "density", "Density of the plate.")),
  yield: form("yield", part("", value(STRESS, "1200 MPa"), "stress", "Yield strength of the plate.")),
  bore: form("bore", part("", value(LENGTH, "22 mm"), "diameter", "Diameter of the hole for the axle.")),
  let: [
    {
      keyword: "let",
      parts: [
        LET_NAME,
        EQUALS,
        LET_VALUE,
        part("from", value(null, "80 mm"), "[from least", "The least value it may be varied to."),
        part("to", value(null, "120 mm"), "to most]", "The greatest value it may be varied to."),
      ],
    },
    ...form("let", LET_NAME, EQUALS, LET_VALUE),
  ],
  outline: [
    ...form("outline", PATH),
    ...form(
      "outline",
      part("repeat", value(NUMBER, "2"), "repeat n", "How many times the path stands around the spin axis."),
      PATH,
    ),
    ...form(
      "outline",
      part(
        "mirror",
        { kind: "words", words: ["x", "y"] },
        "mirror x|y",
        "The axis that the half is reflected in.",
      ),
      PATH,
    ),
  ],
  hole: [
    ...form("hole", AT, DIAMETER),
    ...form(
      "hole",
      part("ring", value(NUMBER, "4"), "ring n", "How many holes."),
      part(
        "at radius",
        value(LENGTH, "40 mm"),
        "at radius r",
        "How far their middles are from the spin axis.",
      ),
      DIAMETER,
      optional("from", value(ANGLE, "45 deg"), "[from angle]", "Direction of the first hole, from +x."),
    ),
  ],
  slot: form(
    "slot",
    part("", FIRST_POINT, "(x, y)", "The middle of one round end."),
    part("to", POINT, "to (x, y)", "The middle of the other round end."),
    part("width", value(LENGTH, "8 mm"), "width w", "Width of the slot: the diameter of its ends."),
  ),
  cutout: form("cutout", part("", { kind: "path" }, "{ path }", "The steps of the path.")),
  spin: form(
    "spin",
    part("", value(ANGULAR_SPEED, "4200 rpm"), "speed", "Speed of rotation."),
    part("", { kind: "words", words: ["ccw", "cw"] }, "ccw|cw", "Counter-clockwise or clockwise, as drawn."),
  ),
  approach: form(
    "approach",
    part("", value(SPEED, "0.5 m/s"), "slowest", "The lowest closing speed to study."),
    part("to", value(SPEED, "6 m/s"), "to fastest", "The highest closing speed to study."),
  ),
  target: [
    ...form(
      "target",
      part("", { kind: "words", words: ["edge", "face"] }, "edge|face", "What the bar meets; or round r."),
      OFFSET,
    ),
    ...form(
      "target",
      part("round", value(LENGTH, "5 mm"), "round r", "A rounded edge of this radius."),
      OFFSET,
    ),
  ],
  require: [
    ...form("require", figure(false), RELATION, LIMIT),
    ...form("require", figure(true), AT_SPEED, RELATION, LIMIT),
  ],
  balance: [
    ...form("balance", part("by", { kind: "let-name" }, "by name", "A let that may be moved.")),
    ...form(
      "balance",
      part("by", { kind: "let-name" }, "by name", "A let that may be moved."),
      part(",", { kind: "let-name" }, ", name", "Another one."),
    ),
  ],
  aim: aimForms([], () => false).slice(0, 1),
  variant: form(
    "variant",
    part("", { kind: "text" }, '"name"', "The name, in quotation marks."),
    part("", { kind: "overrides" }, "{ overrides }", "Lets and settings with their other values."),
  ),
};

export const STEP_FORMS: Readonly<Record<StepWord, readonly Form[]>> = {
  from: form(
    "from",
    part("", FIRST_POINT, "(x, y)", "Where the path starts: (x, y) or (r @ angle) about the spin axis."),
    CORNER,
  ),
  line: form("line", TO, CORNER),
  arc: [
    ...form(
      "arc",
      TO,
      part("radius", value(LENGTH, "160 mm"), "radius r", "Radius of the arc."),
      TURNING,
      optional("long", null, "[long]", "The long way round, more than half a circle."),
      CORNER,
    ),
    ...form("arc", TO, part("through", POINT, "through (x, y)", "A point that the arc passes."), CORNER),
    ...form("arc", TO, part("about", POINT, "about (x, y)", "The centre of the arc."), TURNING, CORNER),
  ],
  spiral: form("spiral", TO, TURNING, CORNER),
  close: form("close", CORNER),
};

export const OVERRIDE_FORM: Form = {
  keyword: "name",
  parts: [EQUALS, part("", { kind: "override" }, "value", "The value of this let in the variant.")],
};

function form(keyword: string, ...parts: readonly Part[]): readonly Form[] {
  return [{ keyword, parts }];
}

function figure(takesSpeed: boolean): Part {
  return part(
    "",
    { kind: "figure", takesSpeed, isLimited: true },
    "figure",
    "What is required, such as mass.",
  );
}

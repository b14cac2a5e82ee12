/** Blocks of settings about what is around the bar; `blocks/` has their tables. */
export const BLOCK_WORDS = ["robot", "opponent", "budget", "event"] as const;
export type BlockWord = (typeof BLOCK_WORDS)[number];

/**
 * The words of the language. Statements, steps and options are plain words; units, functions and constants are
 * reserved and cannot name a let.
 */
export const STATEMENT_WORDS = [
  "bar",
  "thickness",
  "material",
  "density",
  "yield",
  "let",
  "outline",
  "bore",
  "hole",
  "slot",
  "cutout",
  "spin",
  "approach",
  "target",
  "require",
  "balance",
  "aim",
  ...BLOCK_WORDS,
  "variant",
] as const;

/** Statements that may stand but once, in a file or in a variant. */
export const ONCE_WORDS = [
  "bar",
  "thickness",
  "material",
  "density",
  "yield",
  "outline",
  "bore",
  "spin",
  "approach",
  "target",
  "balance",
  "aim",
  ...BLOCK_WORDS,
] as const satisfies readonly (typeof STATEMENT_WORDS)[number][];

export const STEP_WORDS = ["from", "line", "arc", "spiral", "close"] as const;

/** Words that stand inside a statement or step. */
export const OPTION_WORDS = [
  "at",
  "about",
  "and",
  "bevel",
  "by",
  "ccw",
  "cw",
  "diameter",
  "edge",
  "face",
  "keeping",
  "least",
  "left",
  "long",
  "mirror",
  "most",
  "offset",
  "radius",
  "repeat",
  "right",
  "ring",
  "round",
  "through",
  "to",
  "turning",
  "width",
] as const;

export const FUNCTION_NAMES = [
  "sqrt",
  "sin",
  "cos",
  "tan",
  "asin",
  "acos",
  "atan",
  "atan2",
  "hypot",
  "min",
  "max",
  "abs",
  "round",
  "floor",
  "ceil",
] as const;
export type FunctionName = (typeof FUNCTION_NAMES)[number];

export const CONSTANT_NAMES = ["pi"] as const;

/** Every unit name, smallest first within a kind; composite units such as `kg/m^3` are built from these. */
export const UNIT_NAMES = [
  "um",
  "mm",
  "cm",
  "m",
  "km",
  "thou",
  "in",
  "ft", // length
  "mg",
  "g",
  "kg",
  "t",
  "oz",
  "lb", // mass
  "ms",
  "s",
  "min",
  "h", // time
  "deg",
  "rad",
  "turn", // angle
  "rpm",
  "mph", // speeds
  "N",
  "kN",
  "lbf", // force
  "Pa",
  "kPa",
  "MPa",
  "GPa",
  "psi",
  "ksi", // stress
  "J",
  "kJ",
  "Wh", // energy
  "W",
  "kW",
  "hp", // power
  "V",
  "mV",
  "A",
  "mA",
  "ohm",
  "mohm",
  "Ah",
  "mAh", // electricity
] as const;
export type UnitName = (typeof UNIT_NAMES)[number];

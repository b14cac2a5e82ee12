/**
 * Every problem code with one line of explanation. Codes are stable: scripts and the editor rely on them.
 */
export const PROBLEM_CODES = {
  // Reading the text
  "bad-character": "A character that has no meaning in an outline file.",
  "bad-number": "A number that cannot be read or is too large to compute with.",
  "unknown-word": "A word that is not a statement, step or option here.",
  "unexpected-text": "Text that does not belong at this place.",
  "missing-part": "Something a statement needs is not there.",
  "missing-brace": "A block or parenthesis is not closed.",
  "misplaced-statement": "A statement or step that belongs elsewhere.",
  "too-long": "A text longer than the tool reads.",
  "too-deep": "Expressions are nested deeper than the tool follows.",
  "too-many-problems": "More problems than the tool lists; the rest appear once these are mended.",
  "duplicate-statement": "A statement that may stand only once.",
  // Names and values
  "missing-unit": "A dimensional number without its unit.",
  "wrong-unit": "A value of the wrong kind: a length where an angle is needed, and so on.",
  "unknown-unit": "A unit the tool does not know.",
  "reserved-name": "A unit, function or constant name used as the name of a let.",
  "undefined-name": "A name that no let defines.",
  "unused-name": "A let that nothing uses.",
  "duplicate-name": "Two lets or two variants of one name.",
  cycle: "Lets that depend on each other in a circle.",
  "bad-argument": "A function called with too few, too many or impossible arguments.",
  "not-finite": "A value that is not a finite number, such as a division by zero.",
  "out-of-range": "A value outside what makes sense here.",
  "outside-bounds": "A let whose value lies outside its own bounds.",
  "unknown-material": "A material that is not in the table.",
  "unknown-figure": "A requirement on something the tool does not compute.",
  // What a bar needs
  "missing-outline": "The file has no outline.",
  "missing-thickness": "The file has no plate thickness.",
  "missing-material": "The file has neither material nor density.",
  "bore-missing": "The bar has no bore for its axle.",
  // The outline
  "arc-cannot-reach": "An arc whose radius is too small to reach its end.",
  "arc-undefined": "An arc that its points do not define.",
  "centre-off": "The start and the end of an arc are not equally far from its centre.",
  "corner-too-large": "A fillet or bevel larger than the corner allows.",
  "corner-impossible": "A fillet or bevel where there is no corner.",
  "zero-length": "A step that goes nowhere.",
  "spiral-undefined": "A spiral through the spin axis, or a full turn and more.",
  "loop-not-closed": "A loop whose end does not meet its start.",
  "loop-crosses-itself": "A loop that crosses or touches itself.",
  "repeat-does-not-fit": "The end of a repeated path is not its start turned by one share of the circle.",
  "mirror-off-axis": "A mirrored path that does not start and end on the mirror axis, or crosses it.",
  "axis-outside": "The spin axis lies outside the outline.",
  "hole-outside": "A hole that leaves the outline.",
  "holes-touch": "Two holes that touch or overlap.",
  "hole-too-small": "A hole smaller than the plate is thick.",
  "thin-bridge": "Less metal between a hole and an edge than the plate is thick.",
  "too-many-segments": "More segments than a cutting shop or the tool is comfortable with.",
  // Judgement
  "imbalance-over-grade": "The imbalance is over the balance grade.",
  "mass-over-class": "The mass is over the limit that the file sets.",
  "require-failed": "A requirement that the bar does not meet.",
  "target-not-studied": "A target whose bite the tool does not compute.",
  "require-unknown": "A requirement that cannot be checked because its figure could not be computed.",
} as const;

export type ProblemCode = keyof typeof PROBLEM_CODES;

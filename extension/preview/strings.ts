/**
 * Every text of the preview page in English. The host may hand the page a translated copy: same keys, `{0}`, `{1}` …
 * kept as the places of values.
 */
export const PREVIEW_STRINGS = {
  loading: "Waiting for the outline…",
  unnamed: "Unnamed bar",
  nothingToDraw: "Nothing to draw yet: the outline could not be built.",
  stale: "The text has errors: this is the last drawing that worked, with its figures.",
  liveAgain: "The drawing follows the text again.",
  staleShort: "Last good drawing",

  variant: "Variant",
  asWritten: "As written",
  units: "Units",
  millimetres: "mm",
  inches: "in",
  millimetresLong: "Millimetres",
  inchesLong: "Inches",
  exportCutFile: "Export cut file…",

  drawing: "Drawing",
  drawingOf: "Drawing of {0}",
  drawingKeys:
    "Plus and minus zoom, arrow keys move the view, 0 fits the drawing. Tab goes on to the edges and the points.",
  inWords: "The drawing in words",
  zoom: "Zoom",
  zoomIn: "Zoom in",
  zoomOut: "Zoom out",
  fit: "Fit",
  fitLong: "Fit the drawing to the panel",
  show: "Show",
  dimensions: "Dimensions",
  otherVariants: "Other variants",
  points: "Points to drag",
  strikes: "Strikes",
  edges: "Edges",
  edgeKeys: "Arrow keys go from edge to edge, Enter shows the edge in the text.",
  line: "Line, {0} long, at {1}",
  arc: "Arc, radius {0}, over {1}, {2} long",
  circle: "Circle, diameter {0}, middle {1} from the axis",
  pointerAt: "x {0}, y {1}, radius {2}",
  loopOuter: "Outline",
  loopBore: "Bore",
  loopHole: "Hole",
  loopSlot: "Slot",
  loopCutout: "Cutout",
  edgeInLoop: "{0}: {1}",
  spinCcw: "Spins counter-clockwise as drawn",
  spinCw: "Spins clockwise as drawn",
  spinAxis: "Spin axis",
  centroid: "Centroid",
  heavySide: "Heavy side, {0}",
  tipCircle: "Tip circle, radius {0}",
  biteRing: "Deepest bite at {0}: {1}",
  extentWide: "{0} wide",
  extentHigh: "{0} high",
  tipRadius: "tip {0}",
  holeCount: "{0} × ⌀ {1}",
  holeDiameter: "⌀ {0}",
  atRadius: "at radius {0}",

  point: "Point {0}, x {1}, y {2}",
  pointKeys:
    "Arrow keys move it, with Shift by smaller steps. Enter puts it down, Escape puts it back. Page Up and Page Down choose another point.",
  pointOnlyX: "Moves in x only.",
  pointOnlyY: "Moves in y only.",
  movingTo: "Moving to x {0}, y {1}, steps of {2}. Enter or release puts it down, Escape puts it back.",
  movedTo: "Moved to x {0}, y {1}.",
  putBack: "Put back.",
  moveFailed: "Not moved: {0}",

  figures: "Figures",
  keyFigures: "Key figures",
  explain: "Explain the figures",
  heavyAt: "{0}, heavy at {1}",
  requirements: "Requirements",
  met: "met",
  notMet: "not met",
  notKnown: "not known",
  requirementsMet: "{0} of {1} met",

  problems: "Problems",
  noProblems: "No problems",
  problemCount: "Problems: {0}",
  error: "Error",
  warning: "Warning",
  information: "Note",
  lineNumber: "line {0}",

  bite: "Bite against closing speed",
  biteKeys: "Arrow keys read the curve.",
  biteNone: "No bite: it needs an outline, a spin and a target that the bar can reach.",
  againstEdge: "Against an edge",
  againstFace: "Against a flat face",
  againstRound: "Against a rounded edge of radius {0}",
  offsetAhead: "{0}, {1} off the axis, on the side to which the struck part of the bar moves",
  offsetBehind: "{0}, {1} off the axis, on the side from which the struck part of the bar comes",
  closingSpeed: "Closing speed, {0}",
  biteDepth: "Depth of bite, {0}",
  deepest: "Deepest",
  mean: "Mean",
  eightInTen: "Eight strikes in ten",
  ideal: "Ideal",
  idealMeaning: "Ideal: closing speed over teeth times turns a second.",
  square: "Square strikes",
  onTooth: "On a tooth",
  cleanUpTo: "clean up to {0}",
  teethUpTo: "only teeth up to {0}",
  cleanTo: "Clean bite up to {0}.",
  cleanThroughout: "Clean bite at every speed studied.",
  cleanNever: "Clean bite at no speed studied.",
  teethTo: "Only teeth strike up to {0}.",
  teethThroughout: "Only teeth strike, at every speed studied.",
  teethNever: "Something else than teeth strikes at every speed studied.",
  readOut:
    "At {0}: deepest {1}, mean {2}, eight in ten {3} to {4}, ideal {5}, {6} of strikes square, {7} on a tooth",
  readOutPassed: "{0}, {1} pass and meet nothing",
  strikeKinds: "How the strikes land",
  strikesAt: "At {0}:",
  strikesFirst: "What strikes first at {0}",
  strikeSquare: "Square on a tooth",
  strikeSkidding: "Skidding on a tooth",
  strikeOff: "Off the teeth",
  strikeDetail: "Depth {0}, strike angle {1}, radius {2}",
  strikesMore: "{0} more places, {1} of strikes together.",
  strikesPass: "{0} of targets pass and meet nothing.",
  range: "{0} to {1}",
  approach: "One approach, slowed down",
  play: "Play",
  pause: "Pause",
  closeUp: "Close up",
  course: "Course",
  turnLeft: "The bar turns {0} more until contact.",
  startingPhase: "Starting phase",
  approachSpeed: "Closing speed",
  phaseMeaning:
    "The phase is how far the bar has turned from how it is drawn when the target comes within reach.",
  approachMeets: "{0} deep. {1}, strike angle {2}.",
  approachPasses: "The target passes and meets nothing.",
  slowedDown: "Shown {0} times slower than it happens.",
  approachSteps: "Motion is reduced: move the sliders to step through it.",
  corner: "Corner at x {0}, y {1}",
  biteTable: "The curve as a table",
  closing: "Closing",

  cautions: "Cautions",
  cautionShort:
    "Estimates, not a guarantee. Spinning bars kill: guard, lock, spin only in a test box or arena.",
  allCautions: "All cautions",
} as const;

export type PreviewStrings = { readonly [Key in keyof typeof PREVIEW_STRINGS]: string };

/** Put values into the places `{0}`, `{1}` … of a text. A place without a value stays as it is. */
export function fill(text: string, ...values: readonly (string | number)[]): string {
  return text.replace(/\{(\d+)\}/g, (place, index: string) => String(values[Number(index)] ?? place));
}

/** The texts with those of a translation put over them; anything in it that is no text is passed over. */
export function translated(translation: unknown): PreviewStrings {
  if (typeof translation !== "object" || translation === null) return PREVIEW_STRINGS;
  const known = Object.entries(translation).filter(
    ([key, text]) => Object.hasOwn(PREVIEW_STRINGS, key) && typeof text === "string",
  );
  return { ...PREVIEW_STRINGS, ...Object.fromEntries(known) };
}

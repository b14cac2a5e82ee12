/**
 * Every text of the studies page in English. The host hands the page the editor's translations, by their English texts;
 * `{0}`, `{1}` … are the places of values.
 */
export const STUDIES_STRINGS = {
  loading: "Waiting for the outline…",
  studies: "Studies",
  studiesOf: "Studies of {0}",
  working: "Working…",
  workingShare: "Working… {0} %",
  stop: "Stop",
  fault: "This could not be worked out: a fault of the program. It is in the log.",
  refusedEdit: "Nothing was changed: {0}",
  refusedSave: "Nothing was saved: {0}",
  cautions: "Cautions",
  cautionShort:
    "Estimates, not a guarantee. Spinning bars kill: guard, lock, spin only in a test box or arena.",
  allCautions: "All cautions",

  compare: "Compare",
  compareStale: "The text has errors: this is the last comparison that worked.",
  bars: "Bars",
  barsMeaning: "The first file with its variants, and the bars of files that are taken in.",
  shown: "Show {0}",
  reference: "Reference",
  referenceMark: "reference",
  errorCount: "errors: {0}",
  takeIn: "Take in a file…",
  takeOut: "Take out {0}",
  onlyDifferent: "Only what differs",
  nothingDiffers: "Nothing differs.",
  oneBar: "There is one bar only: add a variant to the text, or take in another file.",
  figure: "Figure",
  figures: "Figures",
  comparedFigures: "Figures and requirements, compared with {0}",
  better: "better",
  worse: "worse",
  outlines: "Outlines over each other",
  outlinesNone: "No outline could be built.",
  outlinesOf: "Outlines of {0}, the spin axis of all in one place. The extent of all is {1} by {2}.",
  bite: "Bite against closing speed",
  biteNone: "No bar has a bite: it needs an outline, a spin and a target that the bar can reach.",
  biteMeaning: "At the closing speeds of the reference.",
  biteTable: "The bite as a table",
  deepest: "Deepest",
  mean: "Mean",
  depthShown: "Depth",
  closingSpeed: "Closing speed, {0}",
  deepestBite: "Deepest bite, {0}",
  meanBite: "Mean bite, {0}",
  chartKeys: "Arrow keys read the curves.",
  readAt: "At {0}: {1}",
  readValue: "{0} {1}",

  vary: "Vary a value",
  varyMeaning: "A let of the file goes through a range, two go through a grid; the text stays as it is.",
  varyFirst: "Let",
  varySecond: "and",
  varyNone: "no other",
  varyFrom: "from",
  varyTo: "to",
  varyCount: "values",
  varyBite: "Bite at a closing speed",
  varySpeed: "at",
  workOut: "Work out",
  varyDone: "Worked out.",
  varyNoLets: "There is no let whose value is one number: write let tail = 96 mm and use it in the outline.",
  varyStale: "The text has changed since this was worked out.",
  varyChart: "The figure over the let",
  varyTable: "The values as a table",
  varyKept: "✓ keeps the requirements of the file.",
  varyNoPlate: "no plate",
  saveCsv: "Save as comma-separated values…",
  csvKind: "Comma-separated values",
  csvSummary: "every bar that was worked out",
} as const;

export type StudiesStrings = { readonly [Key in keyof typeof STUDIES_STRINGS]: string };

/** The texts put into another language, by their English texts; what has no translation stays English. */
export function translatedStrings(translations: unknown): StudiesStrings {
  if (typeof translations !== "object" || translations === null) return STUDIES_STRINGS;
  const known = new Map<string, unknown>(Object.entries(translations));
  const texts = Object.entries(STUDIES_STRINGS).map(([key, text]) => {
    const translated = known.get(text);
    return [key, typeof translated === "string" ? translated : text];
  });
  return { ...STUDIES_STRINGS, ...Object.fromEntries(texts) };
}

/**
 * What an editor asks on a key: each should be a millisecond or two, beside one reading of the text. Lenses are left
 * out: they analyse every variant.
 */
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import {
  completionsAt,
  definitionAt,
  foldingRanges,
  handles,
  hoverAt,
  inlayHints,
  movePoint,
  referencesAt,
  renameEdits,
  selectionRanges,
  semanticTokens,
  signatureAt,
  symbols,
} from "../../geometry/editing/editing.ts";
import { syntheticBar } from "../support/synthetic-bar.ts";
import type { BenchCase } from "./harness.ts";

const TEXT = syntheticBar(60);
const SOURCE = readSource(TEXT);
const ANALYSIS = analyse(SOURCE);
const NAME = TEXT.lastIndexOf("tip") + 1;
const IN_STEP = TEXT.lastIndexOf("about");

const AREA = "editing";
const PEER = "one reading of the text";

const FEATURES: Readonly<Record<string, () => unknown>> = {
  completions: () => completionsAt(ANALYSIS, NAME),
  "completions in a step": () => completionsAt(ANALYSIS, IN_STEP),
  hover: () => hoverAt(ANALYSIS, NAME),
  "hover of a step": () => hoverAt(ANALYSIS, TEXT.lastIndexOf("arc") + 1),
  signature: () => signatureAt(ANALYSIS, IN_STEP),
  "inlay hints": () => inlayHints(ANALYSIS, { start: 0, end: TEXT.length }),
  definition: () => definitionAt(SOURCE, NAME),
  references: () => referencesAt(SOURCE, NAME, { includeDeclaration: true }),
  rename: () => renameEdits(SOURCE, NAME, "far"),
  symbols: () => symbols(SOURCE),
  folding: () => foldingRanges(SOURCE),
  selection: () => selectionRanges(SOURCE, NAME),
  "semantic tokens": () => semanticTokens(SOURCE),
  handles: () => handles(ANALYSIS),
  "moving a point": () => movePoint(ANALYSIS, 3, { x: 90, y: 40 }),
};

/** Results are counted by their text, so that nothing can be left out unseen. */
const sizeOf = (result: unknown): number => JSON.stringify(result)?.length ?? 0;

export const cases: readonly BenchCase[] = [
  { area: AREA, name: PEER, inputs: "60 segments", run: () => readSource(TEXT).tree.statements.length },
  ...Object.entries(FEATURES).map(
    ([name, run]): BenchCase => ({ area: AREA, name, peer: PEER, run: () => sizeOf(run()) }),
  ),
];

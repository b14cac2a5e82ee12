/** Every keystroke asks several of these: none may be felt, lenses apart, which analyse every variant. */
import { describe, expect, it } from "vitest";
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

const TEXT = syntheticBar(60);
const SOURCE = readSource(TEXT);
const ANALYSIS = analyse(SOURCE);
const NAME = TEXT.lastIndexOf("tip") + 1;
const IN_STEP = TEXT.lastIndexOf("about");

/** Each takes a millisecond or two at most on a quiet machine. */
const MOST_MS = 5;

/** What 5 ms hold on a quiet machine, in readings of the text: a busy machine makes both slow alike. */
const MOST_READINGS = 6;

interface Timing {
  readonly runMs: number;
  readonly readingMs: number;
}

/** The best of several runs, and of as many readings of the text between them. */
function bestOf(run: () => unknown): Timing {
  const timed = (work: () => unknown): number => {
    const start = performance.now();
    work();
    return performance.now() - start;
  };
  const timings = Array.from({ length: 20 }, () => [timed(run), timed(() => readSource(TEXT))] as const);
  return {
    runMs: Math.min(...timings.map(([runMs]) => runMs)),
    readingMs: Math.min(...timings.map(([, readingMs]) => readingMs)),
  };
}

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

describe("on a bar of 60 segments each is quick:", () => {
  it.each(Object.entries(FEATURES))("%s", (_, run) => {
    expect(run()).not.toBeNull();
    const { runMs, readingMs } = bestOf(run);
    expect(runMs).toBeLessThan(Math.max(MOST_MS, MOST_READINGS * readingMs));
  });
});

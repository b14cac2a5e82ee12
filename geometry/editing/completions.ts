import type { Analysis } from "../analysis/analyse.ts";
import { isBlockWord } from "../language/blocks/blocks.ts";
import type { Dimension } from "../language/quantity.ts";
import type { TextRange } from "../language/text.ts";
import type { Candidate, Completion } from "./completion.ts";
import {
  blockCandidates,
  itemCandidates,
  overrideCandidates,
  settingCandidates,
  stepCandidates,
} from "./completions/item-candidates.ts";
import { letNameCandidates, operandCandidates } from "./completions/name-candidates.ts";
import {
  leadCandidates,
  limitCandidates,
  offsetCandidates,
  startCandidates,
} from "./completions/part-candidates.ts";
import { unitCandidates } from "./completions/unit-candidates.ts";
import { type CursorPlace, clampOffset, cursorPlace } from "./cursor-place.ts";
import { definedName, dimensionOf, limitedFigure, matchesAt } from "./expected-at.ts";
import type { Taking } from "./form.ts";
import type { Expected, FormMatch } from "./match-form.ts";

/** What may be written at an offset, what fits best first; nothing inside comments, strings and numbers. */
export function completionsAt(analysis: Analysis, cursor: number): readonly Completion[] {
  const { text } = analysis.source.tree;
  const offset = clampOffset(text, cursor);
  const place = cursorPlace(text, offset);
  if (place === null || place.isInNumber) return [];
  const candidates =
    place.item.length === 0 ? itemCandidates(analysis, place) : nextCandidates(analysis, place);
  const range = rangeAt(place, offset);
  return placed(distinct(candidates), range, isBehindNumber(place));
}

/** The word that is being typed; a cursor before a word leaves it alone. */
function rangeAt({ typed }: CursorPlace, offset: number): TextRange {
  return typed.start < offset ? typed : { start: offset, end: offset };
}

/** True where the cursor touches a number, so that a unit needs a blank before it. */
function isBehindNumber({ item, typed }: CursorPlace): boolean {
  const last = item.at(-1);
  return typed.start === typed.end && last?.kind === "number" && last.end === typed.start;
}

/** What may follow what stands before the cursor. */
function nextCandidates(analysis: Analysis, place: CursorPlace): readonly Candidate[] {
  const matches = matchesAt(place, analysis.design);
  const inForm = matches.flatMap((match) => formCandidates(match, analysis, place));
  const isComplete = matches.some((match) => match.isComplete);
  return isComplete ? [...inForm, ...nextItems(analysis, place)] : inForm;
}

function formCandidates(
  { expected }: FormMatch,
  analysis: Analysis,
  place: CursorPlace,
): readonly Candidate[] {
  const needsUnit = expected.some((next) => next.kind === "value" && next.end.state === "number");
  return expected.flatMap((next) => {
    const candidates = expectedCandidates(next, analysis, place);
    // A number is more likely to get its unit than to be left without.
    return needsUnit && next.kind !== "value" ? candidates.map(later) : candidates;
  });
}

/** In a path and in a variant another item may stand on the same line. */
function nextItems(analysis: Analysis, place: CursorPlace): readonly Candidate[] {
  if (place.block === "path") return stepCandidates(place);
  if (isBlockWord(place.block)) return blockCandidates(place, place.block).map(later);
  if (place.block !== "variant") return [];
  return [...overrideCandidates(analysis, place), ...settingCandidates(place)].map(later);
}

function later(candidate: Candidate): Candidate {
  return { ...candidate, rank: candidate.rank + 3 };
}

function expectedCandidates(next: Expected, analysis: Analysis, place: CursorPlace): readonly Candidate[] {
  switch (next.kind) {
    case "lead":
      return leadCandidates(next.leads, next.part, place.isFree);
    case "start":
      return takingCandidates(next.taking, next.part.about, analysis, place);
    case "offset":
      return offsetCandidates();
    case "value": {
      const { state, expected, unitBefore } = next.end;
      if (state === "number") return unitCandidates(analysis, expected, "");
      if (state === "value") return [];
      const units = unitBefore === "" ? [] : unitCandidates(analysis, null, unitBefore);
      return [...units, ...operandsOf(analysis, expected, place)];
    }
  }
}

function takingCandidates(
  taking: Taking,
  about: string,
  analysis: Analysis,
  place: CursorPlace,
): readonly Candidate[] {
  if (taking.kind === "let-name") return letNameCandidates(analysis, place.item);
  const isValue = taking.kind === "value" || taking.kind === "override" || taking.kind === "limit";
  if (!isValue) return startCandidates(taking, about, place.isFree);
  const limits = taking.kind === "limit" ? limitCandidates(limitedFigure(place)) : [];
  const kind = dimensionOf(taking, place, analysis.design);
  return [...limits, ...operandsOf(analysis, kind, place)];
}

function operandsOf(
  analysis: Analysis,
  expected: Dimension | null,
  place: CursorPlace,
): readonly Candidate[] {
  return operandCandidates(analysis, { expected, defined: definedName(place), isCalled: place.isCalled });
}

/** Of candidates with one label the first stays: forms that begin alike expect the same. */
function distinct(candidates: readonly Candidate[]): readonly Candidate[] {
  const labels = new Set<string>();
  return candidates.filter(({ label }) => !labels.has(label) && labels.add(label));
}

function placed(
  candidates: readonly Candidate[],
  range: TextRange,
  needsBlank: boolean,
): readonly Completion[] {
  return candidates
    .map((candidate, index) => ({ candidate, index }))
    .sort((a, b) => a.candidate.rank - b.candidate.rank || a.index - b.index)
    .map(({ candidate: { rank, ...completion }, index }) => ({
      ...completion,
      insertText:
        needsBlank && completion.kind === "unit" ? ` ${completion.insertText}` : completion.insertText,
      range,
      sortText: `${rank}${String(index).padStart(3, "0")}`,
    }));
}

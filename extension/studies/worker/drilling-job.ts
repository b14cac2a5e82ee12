import { analyse } from "../../../geometry/analysis/analyse.ts";
import { isBroken } from "../../../geometry/analysis/broken.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import type { Settings } from "../../../geometry/figures/settings.ts";
import { drillCsv } from "../../../geometry/files/drill-csv.ts";
import { drillJson } from "../../../geometry/files/drill-json.ts";
import type { TextEdit } from "../../../geometry/language/text.ts";
import { drillToBalance } from "../../../geometry/study/drilling/drill.ts";
import {
  type DrillWord,
  type DrillWords,
  readDrillRequest,
} from "../../../geometry/study/drilling/drill-words.ts";
import { speaksInches } from "../../../geometry/study/drilling/shop-steps.ts";
import { writeHoles } from "../../../geometry/study/drilling/write-holes.ts";
import { isBoolean, isObject, isString, orNull, shape } from "../../webview/checks.ts";
import { loopsPath } from "../../webview/page/path-data.ts";
import { isSettings } from "../messages.ts";
import type { Job } from "./job.ts";

/** One bar to be drilled, and what is wanted in words. */
export interface DrillingInput {
  readonly text: string;
  readonly variant: string | null;
  readonly settings: Partial<Settings>;
  readonly words: Required<DrillWords>;
  /** What the reader calls each word, for messages. */
  readonly names: Readonly<Partial<Record<DrillWord, string>>>;
}

export interface DrillingResult {
  readonly plan: ReturnType<typeof drillJson>;
  readonly measured: boolean;
  /** Whether the file speaks inches, and so the drills do. */
  readonly inches: boolean;
  /** SVG path data in mm, y down, and least x, least y, greatest x, greatest y, y up; `null` without an outline. */
  readonly outline: {
    readonly path: string;
    readonly boundsMm: readonly [number, number, number, number];
  } | null;
  /** Through holes as lines of the file; `null` where there are none to write. */
  readonly written: {
    readonly edits: readonly TextEdit[];
    readonly statements: readonly string[];
    /** Why they should not be written. */
    readonly problems: readonly string[];
  } | null;
  /** The table as a file. */
  readonly csv: string;
  readonly broken: boolean;
}

const isWord = (value: unknown): value is string | undefined => value === undefined || isString(value);

export const drillingJob: Job<"drilling", DrillingInput, DrillingResult> = {
  kind: "drilling",
  isInput: shape<DrillingInput>({
    text: isString,
    variant: orNull(isString),
    settings: isSettings,
    words: shape<Required<DrillWords>>({
      grade: isWord,
      measured: isWord,
      drills: isWord,
      through: isBoolean,
      floor: isWord,
      radius: isWord,
      angle: isWord,
      holes: isWord,
    }),
    names: (value): value is DrillingInput["names"] =>
      isObject(value) && Object.values(value).every(isString),
  }),
  run: ({ text, variant, settings, words, names }) => {
    const analysis = analyse(readSource(text), { variant, settings });
    const inches = speaksInches(analysis);
    const request = readDrillRequest(words, inches, (word) => names[word] ?? word);
    if (!request.ok) return { refused: request.message };
    const result = drillToBalance(analysis, request.value);
    const { section } = analysis.assessment;
    const { outline } = analysis;
    const isMeasured = request.value.measured != null;
    const holes = result.solved ? result.drilling.holes : [];
    const written =
      request.value.through && !isMeasured && holes.length > 0 ? writeHoles(analysis, holes) : null;
    return {
      result: {
        plan: drillJson(result, section?.maxRadiusMm ?? null),
        measured: isMeasured,
        inches,
        outline:
          outline && section
            ? { path: loopsPath([outline.outer, ...outline.inner]), boundsMm: section.boundsMm }
            : null,
        written: written && {
          edits: written.edits,
          statements: written.statements,
          problems: written.problems.map(({ message }) => message),
        },
        csv: drillCsv(result.solved ? result.drilling.holes : (result.nearest?.holes ?? [])),
        broken: isBroken(analysis),
      },
    };
  },
};

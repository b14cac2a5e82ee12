import { analyse } from "../../../geometry/analysis/analyse.ts";
import { isBroken } from "../../../geometry/analysis/broken.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import type { Settings } from "../../../geometry/figures/settings.ts";
import { toleranceJson } from "../../../geometry/files/tolerance-json.ts";
import { wearJson } from "../../../geometry/files/wear-json.ts";
import { SPREADS } from "../../../geometry/study/tolerance/deviation.ts";
import { toleranceStudy } from "../../../geometry/study/tolerance/tolerance.ts";
import {
  readToleranceRequest,
  type ToleranceWord,
  type ToleranceWords,
} from "../../../geometry/study/tolerance/tolerance-words.ts";
import { WEAR_MODELS, type WearModel, wearStudy } from "../../../geometry/study/wear/wear.ts";
import { readWearSteps } from "../../../geometry/study/wear/wear-words.ts";
import { isObject, isString, oneOf, orNull, shape } from "../../webview/checks.ts";
import { isSettings } from "../messages.ts";
import type { Job } from "./job.ts";

/** One bar, what may be off about it and how it wears, in words. */
export interface AsMadeInput {
  readonly text: string;
  readonly variant: string | null;
  readonly settings: Partial<Settings>;
  readonly tolerance: Required<ToleranceWords>;
  readonly wear: { readonly at: WearModel; readonly teeth: "all" | "one"; readonly by: string };
  /** What the reader calls each word, for messages. */
  readonly names: Readonly<Partial<Record<ToleranceWord | "by", string>>>;
}

/** Either study may say why there is none; the other stands. */
export interface AsMadeResult {
  readonly tolerance: ReturnType<typeof toleranceJson>;
  readonly wear: ReturnType<typeof wearJson>;
  readonly broken: boolean;
}

const isWord = (value: unknown): value is string | undefined => value === undefined || isString(value);

export const asMadeJob: Job<"as-made", AsMadeInput, AsMadeResult> = {
  kind: "as-made",
  isInput: shape<AsMadeInput>({
    text: isString,
    variant: orNull(isString),
    settings: isSettings,
    tolerance: shape<Required<ToleranceWords>>({
      plate: isWord,
      wedge: isWord,
      cut: isWord,
      grade: isWord,
      parts: isWord,
      seed: isWord,
      edges: oneOf("each", "together"),
      spread: oneOf(...SPREADS),
    }),
    wear: shape<AsMadeInput["wear"]>({ at: oneOf(...WEAR_MODELS), teeth: oneOf("all", "one"), by: isString }),
    names: (value): value is AsMadeInput["names"] => isObject(value) && Object.values(value).every(isString),
  }),
  run: ({ text, variant, settings, tolerance, wear, names }) => {
    const analysis = analyse(readSource(text), { variant, settings });
    const request = readToleranceRequest(tolerance, (word) => names[word] ?? word);
    if (!request.ok) return { refused: request.message };
    const steps = wear.by.trim() === "" ? null : readWearSteps(names.by ?? "by", wear.by);
    if (steps && !steps.ok) return { refused: steps.message };
    return {
      result: {
        tolerance: toleranceJson(toleranceStudy(analysis, request.value)),
        wear: wearJson(
          wearStudy(analysis, { model: wear.at, teeth: wear.teeth, ...(steps ? { byMm: steps.value } : {}) }),
        ),
        broken: isBroken(analysis),
      },
    };
  },
};

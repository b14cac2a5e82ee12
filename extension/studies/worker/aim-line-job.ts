import { readSource } from "../../../geometry/analysis/source.ts";
import { isString, shape } from "../../webview/checks.ts";
import type { Job } from "./job.ts";

export interface AimLineInput {
  readonly text: string;
}

export interface AimLine {
  /** What stands behind the word `aim` in the text; `null` where there is no such line. */
  readonly aim: string | null;
}

/** The aim that a text states, as one line. */
export const aimLineJob: Job<"aim-line", AimLineInput, AimLine> = {
  kind: "aim-line",
  isInput: shape<AimLineInput>({ text: isString }),
  run: ({ text }) => {
    const line = readSource(text).tree.statements.find(({ kind }) => kind === "aim");
    return {
      result: {
        aim: line
          ? text
              .slice(line.keyword.end, line.range.end)
              .replace(/#.*|\s+/g, " ")
              .replace(/ +/g, " ")
              .trim()
          : null,
      },
    };
  },
};

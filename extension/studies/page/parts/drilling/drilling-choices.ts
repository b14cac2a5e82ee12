import { isBoolean, isString, shape } from "../../../../webview/checks.ts";

/** What the reader has asked for, in words; empty is as usual. */
export interface DrillingChoices {
  readonly grade: string;
  readonly measured: string;
  readonly drills: string;
  readonly through: boolean;
  readonly floor: string;
  readonly radius: string;
  readonly angle: string;
  readonly holes: string;
}

const FIRST: DrillingChoices = {
  grade: "",
  measured: "",
  drills: "",
  through: false,
  floor: "",
  radius: "",
  angle: "",
  holes: "",
};

const isChoices = shape<DrillingChoices>({
  grade: isString,
  measured: isString,
  drills: isString,
  through: isBoolean,
  floor: isString,
  radius: isString,
  angle: isString,
  holes: isString,
});

export function drillingChoicesOf(kept: unknown): DrillingChoices {
  return isChoices(kept) ? kept : FIRST;
}

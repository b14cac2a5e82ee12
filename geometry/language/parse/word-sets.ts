import {
  CONSTANT_NAMES,
  FUNCTION_NAMES,
  OPTION_WORDS,
  STATEMENT_WORDS,
  STEP_WORDS,
  UNIT_NAMES,
} from "../vocabulary.ts";

export const STATEMENTS: ReadonlySet<string> = new Set(STATEMENT_WORDS);
export const STEPS: ReadonlySet<string> = new Set(STEP_WORDS);
export const KEYWORDS: ReadonlySet<string> = new Set([...STATEMENT_WORDS, ...STEP_WORDS, ...OPTION_WORDS]);
export const UNITS: ReadonlySet<string> = new Set(UNIT_NAMES);
export const FUNCTIONS: ReadonlySet<string> = new Set(FUNCTION_NAMES);
export const CONSTANTS: ReadonlySet<string> = new Set(CONSTANT_NAMES);

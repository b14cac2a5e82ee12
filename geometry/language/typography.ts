/**
 * Characters that word processors, web pages and some keyboards put where an outline file has a plain one. They are
 * reported, with what to write instead, and read as meant.
 */
const REPLACEMENTS: ReadonlyMap<string, string> = new Map([
  ["\u00b0", "deg"], // degree sign
  ["\u00ba", "deg"], // masculine ordinal, mistaken for the degree sign
  ["\u02da", "deg"], // ring above
  ["\u2032", "ft"], // prime
  ["\u2033", "in"], // double prime
  ["\u00d7", "*"],
  ["\u2715", "*"],
  ["\u00b7", "*"], // middle dot
  ["\u22c5", "*"], // dot operator
  ["\u2219", "*"],
  ["\u2217", "*"],
  ["\u00f7", "/"],
  ["\u2044", "/"], // fraction slash
  ["\u2215", "/"],
  ["\u2010", "-"], // hyphen
  ["\u2011", "-"],
  ["\u2012", "-"],
  ["\u2013", "-"], // en dash
  ["\u2014", "-"],
  ["\u2015", "-"],
  ["\u2212", "-"], // minus sign
  ["\u2264", "<="],
  ["\u2265", ">="],
  ["\u00b2", "^2"],
  ["\u00b3", "^3"],
  ["\u00bd", "0.5"],
  ["\u00bc", "0.25"],
  ["\u00be", "0.75"],
  ["\uff08", "("],
  ["\uff09", ")"],
  ["\uff0c", ","],
  ["\uff1d", "="],
  ["[", "("],
  ["]", ")"],
]);

const WORD_REPLACEMENTS: ReadonlyMap<string, string> = new Map([
  ["\u00b5m", "um"], // micro sign
  ["\u03bcm", "um"], // Greek mu
  ["\u03c0", "pi"],
  ["\u2126", "ohm"], // ohm sign
  ["\u03a9", "ohm"], // Greek omega
  ["m\u2126", "mohm"],
  ["m\u03a9", "mohm"],
]);

/** Everything that is written instead of a typographic character or word. */
export const PLAIN_TEXTS: readonly string[] = [...REPLACEMENTS.values(), ...WORD_REPLACEMENTS.values()];

export function isTypographic(character: string): boolean {
  return REPLACEMENTS.has(character);
}

/** What to write instead of a typographic character; null where nothing is known. */
export function plainCharacter(character: string): string | null {
  return REPLACEMENTS.get(character) ?? null;
}

/** What to write instead of a word such as `µm`; null for ordinary words. */
export function plainWord(word: string): string | null {
  return WORD_REPLACEMENTS.get(word) ?? null;
}

/** A character spelled so that it can be read even where it cannot be seen: `'%'`, `U+200B`. */
export function nameCharacter(character: string): string {
  const codePoint = character.codePointAt(0) ?? 0;
  const isVisible = /^[\p{L}\p{N}\p{P}\p{S}]$/u.test(character);
  const code = `U+${codePoint.toString(16).toUpperCase().padStart(4, "0")}`;
  return isVisible ? `'${character}'` : code;
}

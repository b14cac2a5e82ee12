import type { OpponentDesign } from "../../design.ts";
import { type BlockValues, numberOf, settingsOf, textOf, unsaidOf } from "./block-values.ts";

/** What `opponent { … }` says. */
export function opponentOf(values: BlockValues): OpponentDesign {
  const isBraced = bracedOf(values);
  const number = (word: string) => numberOf(values, word, "value");
  return {
    massKg: number("mass"),
    restitution: number("restitution"),
    isBraced,
    closingMPerS: saidOr(values, "closing", 0),
    struckAtMm: number("struck_at"),
    isStruckLevel: settingsOf(values, "struck_at").length === 0,
    contactTimeMs: number("contact_time"),
    unsaid: unsaidOf(values, isBraced === false ? ["mass", "restitution"] : ["restitution"]),
    keyword: values.keyword,
    range: values.range,
  };
}

/** Free where nothing is said; null where something else is said than that it is free or braced. */
function bracedOf(values: BlockValues): boolean | null {
  if (settingsOf(values, "stands").length === 0) return false;
  const word = textOf(values, "stands", "value")?.value;
  return word === "free" || word === "braced" ? word === "braced" : null;
}

/** What is taken where nothing is said; null where what is said is wrong. */
function saidOr(values: BlockValues, word: string, unsaid: number): number | null {
  if (settingsOf(values, word).length === 0) return unsaid;
  return numberOf(values, word, "value")?.value ?? null;
}

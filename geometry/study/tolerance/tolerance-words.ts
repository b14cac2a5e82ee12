import { LENGTH } from "../../language/dimension.ts";
import { found, type Read, Reading, readGrade, readRange, readSize, readWhole, wrong } from "../words.ts";
import { type CutTolerance, cutWithin } from "./cut-tolerance.ts";
import type { Spread } from "./deviation.ts";
import { PLATE_CLASSES, type PlateClass, type PlateTolerance } from "./plate-tolerance.ts";
import { LEAST_PARTS, MOST_PARTS, type ToleranceRequest } from "./tolerance.ts";

/** A request in words; what is left out or empty is as usual. */
export interface ToleranceWords {
  /** `A`, or `-0.2 mm to 0.3 mm`. */
  readonly plate?: string | undefined;
  readonly wedge?: string | undefined;
  /** `1`, or `0.2 mm`. */
  readonly cut?: string | undefined;
  readonly grade?: string | undefined;
  readonly parts?: string | undefined;
  readonly seed?: string | undefined;
  readonly edges: "each" | "together";
  readonly spread: Spread;
}

export type ToleranceWord = Exclude<keyof ToleranceWords, "edges" | "spread">;

const MOST_SEED = 2 ** 32 - 1;

/** @param nameOf what the asker calls a word, for messages */
export function readToleranceRequest(
  words: ToleranceWords,
  nameOf: (word: ToleranceWord) => string,
): Read<ToleranceRequest> {
  const reading = new Reading();
  const of = <T>(word: ToleranceWord, read: (name: string, text: string) => Read<T>): T | null => {
    const text = words[word];
    return text === undefined || text.trim() === "" ? null : reading.take(read(nameOf(word), text));
  };
  const cut = of("cut", readCut);
  const parts = of("parts", (name, text) => readWhole(name, text, LEAST_PARTS, MOST_PARTS));
  const seed = of("seed", (name, text) => readWhole(name, text, 0, MOST_SEED));
  return reading.done({
    plate: of("plate", readPlate) ?? "A",
    ...(cut ? { cut } : {}),
    wedgeMm: of("wedge", (name, text) => readSize(name, text, LENGTH)),
    edges: words.edges,
    spread: words.spread,
    gradeMmPerS: of("grade", readGrade),
    ...(parts === null ? {} : { parts }),
    ...(seed === null ? {} : { seed }),
  });
}

function readPlate(name: string, text: string): Read<PlateClass | PlateTolerance> {
  const known = PLATE_CLASSES.find((one) => one === text.trim().toUpperCase());
  if (known) return found(known);
  const example = "-0.2 mm to 0.3 mm";
  if (!/\bto\b/.test(text))
    return wrong(`${name} is A, B, C, D or limits such as "${example}", not "${text.trim()}".`);
  const limits = readRange(name, text, LENGTH, example);
  if (!limits.ok) return limits;
  const [lowerMm, upperMm] = limits.value;
  if (lowerMm > upperMm) return wrong(`${name}: the lower limit comes first.`);
  return found({ lowerMm, upperMm, withinPlateMm: upperMm - lowerMm, text: "limits as stated" });
}

/** `null` for the class. */
function readCut(name: string, text: string): Read<CutTolerance | null> {
  if (text.trim() === "1") return found(null);
  const limit = readSize(name, text, LENGTH);
  return limit.ok ? found(cutWithin(limit.value)) : limit;
}

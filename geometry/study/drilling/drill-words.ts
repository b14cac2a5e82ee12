import { ANGLE, LENGTH } from "../../language/dimension.ts";
import {
  found,
  type Read,
  Reading,
  readGrade,
  readRange,
  readSize,
  readValue,
  readWhole,
  wrong,
} from "../words.ts";
import { type DrillSize, drillOf } from "./drill-sizes.ts";
import { measuredOfText } from "./measured.ts";
import type { DrillRequest, DrillWindow, HeavySpot } from "./request.ts";

/** A request in words; what is left out or empty is as usual. */
export interface DrillWords {
  readonly grade?: string | undefined;
  /** `2.4 g at 110 mm, 35 deg`. */
  readonly measured?: string | undefined;
  /** `5, 6.5`, `1/4 in, 8 mm`. */
  readonly drills?: string | undefined;
  readonly through: boolean;
  readonly floor?: string | undefined;
  readonly radius?: string | undefined;
  readonly angle?: string | undefined;
  readonly holes?: string | undefined;
}

export type DrillWord = Exclude<keyof DrillWords, "through">;

const MOST_HOLES = 24;

/**
 * What some words ask for.
 * @param inches whether a bare number is in inches
 * @param nameOf what the asker calls a word, for messages
 */
export function readDrillRequest(
  words: DrillWords,
  inches: boolean,
  nameOf: (word: DrillWord) => string,
): Read<DrillRequest> {
  const reading = new Reading();
  const of = <T>(word: DrillWord, read: (name: string, text: string) => Read<T>): T | null => {
    const text = words[word];
    return text === undefined || text.trim() === "" ? null : reading.take(read(nameOf(word), text));
  };
  const drills = of("drills", (name, text) => readDrills(name, text, inches));
  const mostHoles = of("holes", (name, text) => readWhole(name, text, 1, MOST_HOLES));
  const radiusMm = of("radius", (name, text) => readRange(name, text, LENGTH, "40 mm to 90 mm"));
  const angles = of("angle", (name, text) => readRange(name, text, ANGLE, "10 deg to 60 deg"));
  return reading.done({
    gradeMmPerS: of("grade", readGrade),
    measured: of("measured", readMeasured),
    ...(drills ? { drills } : {}),
    through: words.through,
    floorMm: of("floor", (name, text) => readSize(name, text, LENGTH)),
    window: windowOf(radiusMm, angles),
    ...(mostHoles === null ? {} : { mostHoles }),
  });
}

function readMeasured(name: string, text: string): Read<HeavySpot> {
  const read = measuredOfText(text);
  return read.ok ? found(read.heavySpot) : wrong(`${name}: ${read.message}`);
}

function windowOf(
  radiusMm: readonly [number, number] | null,
  angles: readonly [number, number] | null,
): DrillWindow {
  const degrees = (rad: number): number => (rad * 180) / Math.PI;
  return {
    ...(radiusMm ? { radiusMm } : {}),
    ...(angles ? { angleDeg: [degrees(angles[0]), degrees(angles[1])] as const } : {}),
  };
}

/** A drill may be a fraction of an inch, which is no value of a file. */
const FRACTION = /^(\d+)\s*\/\s*(\d+)(?:\s*in)?$/;

function readDrills(name: string, text: string, inches: boolean): Read<readonly DrillSize[]> {
  const drills: DrillSize[] = [];
  for (const word of text.split(",")) {
    const read = readDrill(name, word.trim(), inches);
    if (!read.ok) return read;
    drills.push(read.value);
  }
  return found(drills);
}

/** Far beyond any drill: a mistake of the unit. */
const MOST_DRILL_MM = 100;

function readDrill(name: string, word: string, inches: boolean): Read<DrillSize> {
  const fraction = FRACTION.exec(word);
  const isBare = /^[\d.]+$/.test(word);
  const isInch = fraction !== null || /in$/.test(word) || (isBare && inches);
  const size = fraction
    ? found((25.4 * Number(fraction[1])) / Number(fraction[2]))
    : readValue(name, isBare ? `${word} ${inches ? "in" : "mm"}` : word, LENGTH);
  if (!size.ok) return size;
  if (size.value > 0 && size.value <= MOST_DRILL_MM) return found(drillOf(size.value, isInch));
  return wrong(`${name}: "${word}" is no drill.`);
}

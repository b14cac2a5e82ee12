import { nearestWord } from "../nearest-word.ts";
import { UNIT_NAMES } from "../vocabulary.ts";
import { UNITS } from "./word-sets.ts";

/** Everyday spellings of units, in small letters, and how an outline file writes them. */
const EVERYDAY: ReadonlyMap<string, string> = new Map(
  Object.entries({
    um: "micron microns micrometer micrometre micrometers micrometres",
    mm: "millimeter millimetre millimeters millimetres",
    cm: "centimeter centimetre centimeters centimetres",
    m: "meter metre meters metres",
    km: "kilometer kilometre kilometers kilometres",
    thou: "mil mils thous",
    in: "inch inches ins",
    ft: "foot feet",
    mg: "milligram milligrams",
    g: "gram grams gramme grammes gm gms",
    kg: "kgs kilo kilos kilogram kilograms",
    t: "tonne tonnes",
    oz: "ounce ounces",
    lb: "lbs pound pounds lbm",
    ms: "msec millisecond milliseconds",
    s: "sec secs second seconds",
    min: "mins minute minutes",
    h: "hr hrs hour hours",
    deg: "degree degrees degs",
    rad: "radian radians rads",
    turn: "turns rev revs revolution revolutions",
    "m/s": "mps",
    "km/h": "kmh kph kmph",
    N: "newton newtons",
    "N*m": "nm",
    "lbf*ft": "ftlb ftlbs lbft",
    Pa: "pascal pascals",
    J: "joule joules",
    W: "watt watts",
    hp: "bhp horsepower",
    V: "volt volts",
    A: "amp amps ampere amperes",
    ohm: "ohms",
  }).flatMap(([unit, words]) => words.split(" ").map((word) => [word, unit] as const)),
);

/** A unit with its power written behind it, as in `m3`. */
const GLUED_POWER = /^([A-Za-z]+)([23])$/;

export interface Spelling {
  readonly unit: string;
  /** True where the word can only have meant this. */
  readonly isSure: boolean;
}

/** `m^3` for `m3`; null for a word that is no unit with a power behind it. */
export function gluedPower(word: string): string | null {
  const [, base = "", power = ""] = GLUED_POWER.exec(word) ?? [];
  return UNITS.has(base) ? `${base}^${power}` : null;
}

/** The unit that a word which is none was meant to be, such as `in` for `inches`; null where nothing is near. */
export function unitSpelling(word: string): Spelling | null {
  const sure = EVERYDAY.get(word.toLowerCase()) ?? gluedPower(word);
  if (sure !== null) {
    return { unit: sure, isSure: true };
  }
  const near = nearestWord(word, UNIT_NAMES);
  return near === null ? null : { unit: near, isSure: false };
}

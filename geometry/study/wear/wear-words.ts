import { LENGTH } from "../../language/dimension.ts";
import { found, type Read, readValue, wrong } from "../words.ts";
import { MOST_ROWS } from "./wear.ts";

const EVEN_STEPS = 5;

/** `2 mm`, gone to in even steps; several, `0.5 mm, 1 mm`, are taken as they are. */
export function readWearSteps(name: string, text: string): Read<readonly number[]> {
  const lengths: number[] = [];
  for (const word of text.split(",")) {
    const read = readValue(name, word, LENGTH);
    if (!read.ok) return read;
    if (!(read.value > 0)) return wrong(`${name} is a length of more than 0 mm.`);
    lengths.push(read.value);
  }
  if (lengths.length > MOST_ROWS) return wrong(`${name} takes at most ${MOST_ROWS} lengths.`);
  const [most] = lengths;
  if (lengths.length > 1 || most === undefined) return found(lengths);
  return found(Array.from({ length: EVEN_STEPS }, (_, i) => (most * (i + 1)) / EVEN_STEPS));
}

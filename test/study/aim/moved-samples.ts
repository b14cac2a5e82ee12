/** Samples with bounds for more of their lets than they state themselves. */
import { SAMPLES } from "../../samples/samples.ts";

function sample(file: string): string {
  const found = SAMPLES.find((candidate) => candidate.file === file);
  if (found === undefined) throw new Error(`no sample ${file}`);
  return found.text;
}

/** Gives lets the bounds named, in place of those they have. */
function withBounds(text: string, bounds: Readonly<Record<string, string>>): string {
  return Object.entries(bounds).reduce((changed, [name, range]) => {
    const line = new RegExp(`^(let ${name} = [\\d.]+ [a-z]+)(?: from [^#\\n]*)?`, "m");
    if (!line.test(changed)) throw new Error(`no let ${name}`);
    return changed.replace(line, `$1 from ${range} `);
  }, text);
}

export interface MovedSample {
  readonly file: string;
  readonly text: string;
  readonly aim: string;
}

/** An aim for each sample, with room to move. */
export const MOVED_SAMPLES: readonly MovedSample[] = [
  {
    file: "brass-limpet-one-tooth.bar",
    bounds: { waist: "18 mm to 30 mm", upper: "24 mm to 50 mm" },
    aim: "most inertia keeping mass <= 0.8 kg by tail, lower, upper, waist",
  },
  {
    file: "lantern-crab-s-shape.bar",
    bounds: { reach: "100 mm to 140 mm", hub: "26 mm to 44 mm" },
    aim: "most energy keeping mass <= 1.7 kg by reach, hub",
  },
  {
    file: "little-puffin-print-test.bar",
    bounds: { reach: "25 mm to 45 mm", half: "4.5 mm to 10 mm" },
    aim: "least mass keeping energy >= 0.01 J by reach, half",
  },
  {
    file: "old-bellwether-inch.bar",
    bounds: { reach: "12 in to 18 in", arm: "1.8 in to 3 in", hub: "4 in to 5 in" },
    aim: "most inertia keeping mass <= 45 lb by reach, arm, hub",
  },
  {
    file: "pickled-heron-two-tooth.bar",
    bounds: { reach: "100 mm to 160 mm", waist: "20 mm to 40 mm", face: "8 mm to 30 mm" },
    aim: "most inertia keeping clean_bite >= 3 m/s by reach, waist, face",
  },
  {
    file: "quiet-kettle-disc.bar",
    bounds: { tip: "70 mm to 95 mm", rise: "4 mm to 16 mm" },
    aim: "most energy keeping bite at 2 m/s >= 6 mm by tip, rise",
  },
].map(({ file, bounds, aim }) => ({ file, aim, text: withBounds(sample(file), bounds) }));

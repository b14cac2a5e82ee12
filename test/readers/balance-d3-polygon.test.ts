/** Bars that were balanced by their lets, measured again by a polygon library on a fine flattening. */
import { polygonArea, polygonCentroid } from "d3-polygon";
import { describe, expect, it } from "vitest";
import { readSource } from "../../geometry/analysis/source.ts";
import { balanceBy } from "../../geometry/study/balance-by.ts";
import { SAMPLES } from "../samples/samples.ts";
import { chordsOf } from "../support/chords.ts";

/** On an arc of 20 mm and a quarter turn these leave the chords 24 pm off. */
const CHORDS = 4096;

const ONE_TOOTH = SAMPLES.filter(({ file }) => file.includes("one-tooth"));
const OFF_BALANCE = [
  ["tail", "65"],
  ["lower", "55"],
  ["reach", "112"],
  ["upper", "42"],
] as const;

describe("balanced bars as a polygon library reads them", () => {
  it.each(
    ONE_TOOTH.flatMap(({ file, text }) =>
      OFF_BALANCE.map(([name, value]) => [file, name, value, text] as const),
    ),
  )("%s from %s = %s mm", (_, name, value, sample) => {
    const text = sample.replace(new RegExp(`^(let ${name} = )[\\d.]+`, "m"), `$1${value}`);
    const result = balanceBy(readSource(text), { names: ["tail", "lower"] });
    if (!result.solved) throw new Error(result.message);
    const { outline, design } = result.analysis;
    if (!outline) throw new Error("no outline");
    const loops = [outline.outer, ...outline.inner].map((loop, i) => {
      const points = chordsOf(loop, () => CHORDS);
      const area = Math.abs(polygonArea(points)) * (i === 0 ? 1 : -1);
      const [x, y] = polygonCentroid(points);
      return { area, x: area * x, y: area * y };
    });
    const sum = (key: "area" | "x" | "y") => loops.reduce((total, loop) => total + loop[key], 0);
    const eccentricityMm = Math.hypot(sum("x"), sum("y")) / sum("area");
    expect(eccentricityMm).toBeCloseTo(result.after.eccentricityMm, 6);
    expect(eccentricityMm * (design.spin?.radPerS ?? Number.NaN)).toBeLessThanOrEqual(6.3);
  });
});

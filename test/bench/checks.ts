/** The checks of the outline on ten thousand segments. */
import { bridgesBelow } from "../../geometry/outline/check/bridges.ts";
import { layoutOf } from "../../geometry/outline/check/layout.ts";
import { circle, outlineOf, toothed } from "../support/loops.ts";
import type { BenchCase } from "./harness.ts";

const AREA = "checks";

const outline = outlineOf(toothed(10_000, 130), circle(11), circle(5, [60, 0]));
const { segments } = layoutOf(outlineOf(toothed(5_000, 130), toothed(5_000, 125)));

export const cases: readonly BenchCase[] = [
  {
    area: AREA,
    name: "crossings",
    inputs: "10,000 segments",
    run: () => layoutOf(outline).crossed.size,
  },
  {
    area: AREA,
    name: "bridges along a whole edge",
    inputs: "5,000 segments beside 5,000",
    run: () => bridgesBelow(segments, 12, () => true)[0]?.gap.distanceMm ?? 0,
  },
];

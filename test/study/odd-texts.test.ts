/** Studies of texts that are to break something: they answer or refuse, and what they tell is finite. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { drillJson } from "../../geometry/files/drill-json.ts";
import { toleranceJson } from "../../geometry/files/tolerance-json.ts";
import { wearJson } from "../../geometry/files/wear-json.ts";
import { drillToBalance } from "../../geometry/study/drilling/drill.ts";
import { writeHoles } from "../../geometry/study/drilling/write-holes.ts";
import { cutWithin } from "../../geometry/study/tolerance/cut-tolerance.ts";
import { toleranceStudy } from "../../geometry/study/tolerance/tolerance.ts";
import { wearStudy } from "../../geometry/study/wear/wear.ts";
import { breakingText } from "../fuzz/texts.ts";
import { SAMPLES } from "../samples/samples.ts";

/** Every number of plain data that is none. */
function strangeNumbers(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => strangeNumbers(inner, `${path}.${key}`));
}

const PLATE = { lowerMm: -0.1, upperMm: 0.2, withinPlateMm: 0.1, text: "stated" };

function studiesOf(text: string): unknown {
  const analysis = analyse(readSource(text));
  const radius = analysis.assessment.section?.maxRadiusMm ?? null;
  const measured = { imbalanceGMm: 50, angleDeg: 77 };
  const through = drillToBalance(analysis, { through: true, mostHoles: 2 });
  if (through.solved) writeHoles(analysis, through.drilling.holes);
  return [
    drillJson(drillToBalance(analysis, { mostHoles: 2 }), radius),
    drillJson(drillToBalance(analysis, { measured, mostHoles: 2 }), radius),
    drillJson(through, radius),
    toleranceJson(toleranceStudy(analysis, { parts: 100, plate: PLATE, cut: cutWithin(0.2) })),
    toleranceJson(toleranceStudy(analysis, { parts: 100 })),
    wearJson(wearStudy(analysis, { byMm: [0.3, 5] })),
    wearJson(wearStudy(analysis, { model: "face", teeth: "one", byMm: [0.3, 5] })),
  ];
}

describe("studies", () => {
  it("of odd texts throw nothing and tell no number that is none", () => {
    fc.assert(
      fc.property(breakingText, (text) => {
        expect(strangeNumbers(studiesOf(text))).toEqual([]);
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it.each(SAMPLES.map(({ file, text }) => [file, text]))("of %s neither", (_, text) => {
    expect(strangeNumbers(studiesOf(text))).toEqual([]);
  });
});

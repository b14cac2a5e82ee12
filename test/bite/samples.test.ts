/** The samples as they are handed out, against stepping at their own spin. */
import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { advanceMmPerRad, biteAt, biteProfile } from "../../geometry/bite/bite.ts";
import { SQUARE_RAD } from "./spin.ts";
import { stepBite } from "./stepping.ts";

const SAMPLES = resolve(import.meta.dirname, "../../samples");
const files = readdirSync(SAMPLES).filter((file) => file.endsWith(".bar"));

describe("stepping agrees", () => {
  it("with something: there are samples", () => expect(files.length).toBeGreaterThan(2));

  it.each(files)("on %s", (file) => {
    const { design, outline } = analyse(readSource(readFileSync(resolve(SAMPLES, file), "utf8")));
    if (outline === null || design.spin === null) throw new Error(`${file} has no outline or no spin`);
    const { radPerS, direction } = design.spin;
    const profile = biteProfile(outline.outer, direction);
    for (const closingMPerS of [1, 5]) {
      const bite = biteAt(profile, { closingMPerS, radPerS, squareStrikeRad: SQUARE_RAD });
      const stepped = stepBite(outline.outer, direction, advanceMmPerRad({ closingMPerS, radPerS }));
      expect(Math.abs(bite.maxMm - stepped.maxMm)).toBeLessThan(1e-4 * profile.maxRadiusMm);
      expect(Math.abs(bite.meanMm - stepped.meanMm)).toBeLessThan(1e-4 * profile.maxRadiusMm);
      stepped.shares.forEach((share, segment) => {
        const own = bite.strikes.find(({ place }) => place.index === segment)?.share ?? 0;
        expect(Math.abs(own - share), `share of segment ${segment}`).toBeLessThan(2e-3);
      });
    }
  });
});

import { describe, expect, it } from "vitest";
import { biteProfile } from "../../geometry/bite/bite.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { circle, rectangle } from "../support/loops.ts";
import { envelopeFaults } from "./envelope.ts";
import { randomBar } from "./random-bars.ts";

const ADVANCES = [0.3, 4, 30, 900];
const RAYS = 30;

function expectSound(outer: Loop, direction: "ccw" | "cw"): void {
  const profile = biteProfile(outer, direction);
  for (const advance of ADVANCES) expect(envelopeFaults(profile, advance, RAYS), `${advance}`).toEqual([]);
}

describe("on every ray the lit place is the farthest out", () => {
  it.each([...Array(20).keys()].map((i) => i + 500))("of bar %i", (seed) =>
    expectSound(randomBar(seed), seed % 2 === 0 ? "ccw" : "cw"),
  );
  it("of a rectangle", () => expectSound(rectangle(-130, -24, 130, 24), "ccw"));
  it("of a disc off its centre", () => expectSound(circle(100, [30, 10]), "cw"));
});

import { describe, expect, it } from "vitest";
import { biteProfile } from "../../geometry/bite/bite.ts";
import { adaptiveIntegral } from "../../geometry/bite/quadrature.ts";
import { expectClose } from "../support/close-to.ts";
import { variedBar } from "./random-bars.ts";

describe("halving where needed", () => {
  it("is exact about a root at an end", () => {
    expectClose(
      adaptiveIntegral((x) => Math.sqrt(x), 0, 1, 1e-15),
      2 / 3,
      1e-14,
    );
  });

  it("ends where the function is all rounding", () => {
    let asked = 0;
    const noise = (x: number) => {
      asked++;
      return 1e-8 * ((Math.sin(x * 1e12) * 1e5) % 1);
    };
    adaptiveIntegral(noise, 0, 1e-8, 1e-15);
    expect(asked).toBeLessThan(1000);
  });

  // A sliver of an arc right where it enters the circle that the line of approach touches.
  it("costs no more on a sliver beside the axis", () => {
    const target = { kind: "round", radiusMm: 10.833445378133788, offsetMm: -64.74807373566946 } as const;
    const before = process.cpuUsage().user;
    biteProfile(variedBar(365), "ccw", target);
    expect((process.cpuUsage().user - before) / 1e6).toBeLessThan(3);
  });
});

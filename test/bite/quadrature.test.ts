import { describe, expect, it } from "vitest";
import { adaptiveIntegral } from "../../geometry/bite/quadrature.ts";
import { expectClose } from "../support/close-to.ts";

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
});

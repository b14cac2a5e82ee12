/** Bites that can be worked out by hand. Each formula is derived beside its check. */
import { describe, expect, it } from "vitest";
import { biteProfile } from "../../geometry/bite/bite.ts";
import { expectClose } from "../support/close-to.ts";
import { arc, chain, circle, line, type Pair, polygon, rectangle } from "../support/loops.ts";
import { behind, biteOf, mmPerTurn, offered, SQUARE_RAD } from "./spin.ts";

const TIP = 100;
const ROOT = 40;

/**
 * Slivers: each a radial face up to a point at the tip radius, its back falling to the root within `width`
 * turns; the root between them in a few straight chords. The faces stand at the given places, in turns.
 */
function slivers(faces: readonly number[], width = 0.002): Pair[] {
  return faces.flatMap((face, i) => {
    const next = i + 1 < faces.length ? (faces[i + 1] ?? 1) : 1 + (faces[0] ?? 0);
    const back = face + width;
    const chords = Array.from({ length: 9 }, (_, k) => behind(ROOT, back + ((next - back) * k) / 9));
    return [behind(ROOT, face), behind(TIP, face), ...chords];
  });
}

describe("thin teeth", () => {
  // A ray that just clears one tip meets the next radial face a k-th of a turn later, v/(k·f) farther in: the
  // tips are points, so no width enters. Depth runs evenly from 0 to that over the phases.
  it.each([1, 2, 3, 4])("%i equal ones bite v/(k·f) at most and half of it on average", (k) => {
    const bar = polygon(offered(slivers(Array.from({ length: k }, (_, i) => i / k))));
    for (const speed of [0.1, 1, 3.3]) {
      const bite = biteOf(bar, "ccw", speed);
      expectClose(bite.maxMm, mmPerTurn(speed) / k, 1e-9);
      expectClose(bite.meanMm, mmPerTurn(speed) / (2 * k), 1e-9);
      expectClose(bite.idealMm ?? 0, mmPerTurn(speed) / k, 1e-12);
      expectClose(bite.squareShare, 1, 1e-9);
      expectClose(bite.cleanShare, 1, 1e-9);
    }
  });

  // With gaps γ turns wide the deepest bite belongs to the widest; the mean is Σγ²/2 turns' worth of advance.
  it("uneven ones bite by their gaps", () => {
    const faces = [0, 0.17, 0.45, 0.9];
    const gaps = [0.17, 0.28, 0.45, 0.1];
    const bite = biteOf(polygon(offered(slivers(faces))), "ccw", 2);
    expectClose(bite.maxMm, mmPerTurn(2) * 0.45, 1e-9);
    expectClose(bite.meanMm, (mmPerTurn(2) * gaps.reduce((sum, gap) => sum + gap * gap, 0)) / 2, 1e-9);
  });

  // A land about the axis w turns wide is struck at depth 0 by its share of the phases; what is left of the
  // gap bites.
  it("with a land on top lose its width", () => {
    const [teeth, land, back] = [2, 0.01, 0.01];
    const turns = (share: number) => 2 * Math.PI * share;
    const segments = [1, 0].flatMap((i) => {
      const face = i / teeth;
      return [
        arc([0, 0], ROOT, -turns(face + 1 / teeth), turns(1 / teeth - land - back)),
        line(behind(ROOT, face + land + back), behind(TIP, face + land)),
        arc([0, 0], TIP, -turns(face + land), turns(land)),
        line(behind(TIP, face), behind(ROOT, face)),
      ];
    });
    const gap = 1 / teeth - land;
    const bite = biteOf(chain(segments), "ccw", 2);
    expectClose(bite.maxMm, mmPerTurn(2) * gap, 1e-9);
    expectClose(bite.meanMm, (mmPerTurn(2) * gap * gap * teeth) / 2, 1e-9);
    expectClose(bite.squareShare, gap * teeth, 1e-9);
    expect(bite.idealMm).toBe(mmPerTurn(2) / teeth);
  });
});

describe("discs", () => {
  it("bite nothing when they turn about their centre", () => {
    const bite = biteOf(circle(TIP), "ccw", 3);
    expect(bite).toMatchObject({ maxMm: 0, meanMm: 0, squareShare: 0, idealMm: null });
    expect(bite.strikes).toHaveLength(1);
  });

  // Off centre by e with everything lit: the mean radius over the phases is ∮r dθ/2π, the mean distance of
  // the circle over the angle, (2ρ/π)·E(e/ρ): of the chord −e·cos φ + √(ρ² − e²·sin² φ) the cosine drops out.
  // The deepest is 2e.
  it("off their centre show all of themselves to a fast target", () => {
    const [radius, off] = [TIP, 30];
    for (const direction of ["ccw", "cw"] as const) {
      const bite = biteOf(circle(radius, [0, off]), direction, 60);
      expectClose(bite.maxMm, 2 * off, 1e-9);
      expectClose(bite.meanMm, radius + off - ((2 * radius) / Math.PI) * ellipticE(off / radius), 1e-9);
    }
  });
});

/**
 * Complete elliptic integral of the second kind by the arithmetic-geometric mean (Abramowitz & Stegun
 * 17.6.3–17.6.4, from memory).
 */
function ellipticE(modulus: number): number {
  let [a, b, c, power, sum] = [1, Math.sqrt(1 - modulus * modulus), modulus, 0.5, (modulus * modulus) / 2];
  for (let i = 0; i < 8; i++) {
    [a, b, c] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
    power *= 2;
    sum += power * c * c;
  }
  return (Math.PI / (2 * a)) * (1 - sum);
}

describe("a rectangle", () => {
  const [long, wide] = [130, 24];
  const bar = rectangle(-long, -wide, long, wide);

  // The long sides lead up to two corners at a square angle; the other two corners trail.
  it("has two teeth", () => {
    expect(biteProfile(bar, "ccw").teeth(SQUARE_RAD).teeth).toBe(2);
    expect(biteProfile(bar, "cw").teeth(SQUARE_RAD).teeth).toBe(2);
  });

  // Behind its trailing corner the ray r = R − κ(θ − θ0) meets the long side r = wide/sin(ψ) that runs up to
  // the next leading corner, half a turn on less twice the corner's angle. The end that trails past takes the
  // rest of the phases. Solved here by halving; the deepest strike is the one that clears the trailing
  // corner.
  it("bites from its trailing corner to the long side", () => {
    const reach = Math.hypot(long, wide);
    const corner = Math.atan(wide / long);
    const kappa = mmPerTurn(3) / (2 * Math.PI);
    let [low, high] = [0, Math.PI / 2];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      // The side at the angle `middle` before it meets the leading corner's ray.
      const side = wide / Math.sin(corner + middle);
      const ray = reach - kappa * (Math.PI - 2 * corner - middle);
      if (ray > side) high = middle;
      else low = middle;
    }
    const bite = biteOf(bar, "ccw", 3);
    expectClose(bite.maxMm, reach - wide / Math.sin(corner + low), 1e-9);
    expect(bite.strikes.map(({ place }) => place.index)).toEqual([0, 1, 2, 3]);
    expectClose(
      bite.strikes.reduce((sum, { share }) => sum + share, 0),
      1,
      1e-12,
    );
    // The long side is square all the way up from there: cot(35°)·24 mm from the foot is not reached.
    const onSides = (bite.strikes[0]?.share ?? 0) + (bite.strikes[2]?.share ?? 0);
    expectClose(bite.squareShare, onSides, 1e-12);
    expect(bite.squareShare).toBeLessThan(1);
  });

  it("says where it strikes as drawn", () => {
    // Counter-clockwise the left end moves down: the bottom side strikes near its start, the top near its own
    // start.
    const bite = biteOf(bar, "ccw", 3);
    expect(bite.strikes[0]?.parts[0]?.least).toBe(0);
    expect(bite.strikes[0]?.parts[0]?.most).toBeLessThan(0.2);
    const other = biteOf(bar, "cw", 3);
    expect(other.strikes[0]?.parts[0]?.most).toBe(1);
    expect(other.strikes[0]?.parts[0]?.least).toBeGreaterThan(0.8);
    expectClose(other.maxMm, bite.maxMm, 1e-12);
  });
});

describe("strike angles", () => {
  // A face leaning by ψ at the tip is the line at the distance R·sin ψ from the axis.
  it("are those of the face", () => {
    const lean = 0.4;
    const offset = TIP * Math.sin(lean);
    const rise = (radius: number) => Math.asin(offset / radius);
    // The face seen from the axis: at radius r it stands at the angle asin(offset/r) − lean before the tip.
    const face = behind(70, -(rise(70) - lean) / (2 * Math.PI));
    const bar = polygon(
      offered([face, behind(TIP, 0), behind(60, 0.02), ...[0.2, 0.4, 0.6, 0.8].map((t) => behind(60, t))]),
    );
    const bite = biteOf(bar, "ccw", 1);
    const strike = bite.strikes.find(({ strikeAngleRad }) => strikeAngleRad.least < 0.5);
    expect(strike?.share).toBeCloseTo(1, 9);
    expectClose(strike?.strikeAngleRad.least, lean, 1e-9);
    expectClose(strike?.strikeAngleRad.most, Math.asin(offset / (TIP - bite.maxMm)), 1e-9);
    expect(bite.squareShare).toBeCloseTo(1, 9);
  });
});

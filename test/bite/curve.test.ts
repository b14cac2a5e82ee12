/** The parts under the bite, each against a slow way to the same number. */
import { describe, expect, it } from "vitest";
import { biteProfile } from "../../geometry/bite/bite.ts";
import { aroundAt, type Curve, outwardAt, radiusAt } from "../../geometry/bite/curve.ts";
import { depthSwept } from "../../geometry/bite/depth-swept.ts";
import { type Piece, pieceTurnAt } from "../../geometry/bite/piece.ts";
import { integral } from "../../geometry/bite/quadrature.ts";
import { rootBetween } from "../../geometry/bite/root.ts";
import { expectClose } from "../support/close-to.ts";
import { circle, rectangle } from "../support/loops.ts";
import { randomBar } from "./random-bars.ts";

const pieces: readonly Piece[] = [
  ...[0, 1, 2, 3, 4, 5].flatMap((seed) => biteProfile(randomBar(seed), seed % 2 === 0 ? "ccw" : "cw").pieces),
  ...biteProfile(circle(100, [30, 10]), "ccw").pieces,
  ...biteProfile(circle(100, [99, 1]), "cw").pieces,
  ...biteProfile(circle(100), "cw").pieces,
  ...biteProfile(rectangle(-130, -24, 130, 24), "ccw").pieces,
];

const placesOn = ({ from, to }: Piece): number[] =>
  [0.1, 0.35, 0.6, 0.9].map((share) => from + share * (to - from));
/** Length for each unit of `s`. */
const scaleOf = (curve: Curve): number => (curve.kind === "line" ? 1 : curve.radius);

describe("a piece in polar form", () => {
  it("heads as its radius and angle change", () => {
    for (const piece of pieces) {
      const step = 1e-6 * (piece.to - piece.from);
      for (const s of placesOn(piece)) {
        const length = 2 * step * scaleOf(piece.curve);
        const outward = (radiusAt(piece.curve, s + step) - radiusAt(piece.curve, s - step)) / length;
        const around =
          (radiusAt(piece.curve, s) * (pieceTurnAt(piece, s + step) - pieceTurnAt(piece, s - step))) / length;
        expect(Math.abs(outward - outwardAt(piece.curve, s))).toBeLessThan(1e-6);
        expect(Math.abs(around - aroundAt(piece.curve, s))).toBeLessThan(1e-6);
        expectClose(outwardAt(piece.curve, s) ** 2 + aroundAt(piece.curve, s) ** 2, 1, 1e-9);
      }
    }
  });

  it("runs one way in radius, angle, slope and strike angle", () => {
    for (const { curve, from, to, canTurn } of pieces) {
      const places = Array.from({ length: 41 }, (_, i) => from + ((to - from) * i) / 40);
      const slope = (s: number) => (radiusAt(curve, s) * outwardAt(curve, s)) / aroundAt(curve, s);
      for (const figure of [(s: number) => radiusAt(curve, s), (s: number) => outwardAt(curve, s)]) {
        expectOneWay(places.map(figure));
      }
      if (canTurn) expectOneWay(places.slice(1, -1).map(slope));
      const turning = places.slice(1, -1).map((s) => Math.sign(aroundAt(curve, s)));
      expect(Math.min(...turning)).toBe(Math.max(...turning));
    }
  });

  it("joins the next one, and a full turn later the first", () => {
    for (const seed of [0, 1, 2, 3]) {
      const round = biteProfile(randomBar(seed), "ccw").pieces;
      round.forEach((piece, i) => {
        const next = round[(i + 1) % round.length];
        expectClose(piece.alongTo, next?.alongFrom ?? 0, 1e-12);
        expectClose(pieceTurnAt(piece, piece.from), piece.turnFrom, 1e-12, 1);
      });
      expectClose(round.at(-1)?.turnTo, 2 * Math.PI, 1e-12);
    }
  });

  it("sweeps the depth that a fine sum finds", () => {
    for (const { curve, from, to } of pieces) {
      const rim = 200;
      const rate = (s: number) => {
        const r = radiusAt(curve, s);
        return ((rim - r) * aroundAt(curve, s) * scaleOf(curve)) / r;
      };
      expectClose(depthSwept(curve, rim, from, to), romberg(rate, from, to), 1e-9, rim);
    }
  });
});

function expectOneWay(values: readonly number[]): void {
  const steps = values.slice(1).map((value, i) => value - (values[i] ?? 0));
  const noise = 1e-9 * Math.max(...values.map(Math.abs));
  expect(steps.every((step) => step >= -noise) || steps.every((step) => step <= noise), `${values}`).toBe(
    true,
  );
}

/** Trapezoids, halved and extrapolated. */
function romberg(f: (s: number) => number, from: number, to: number): number {
  let rows = [((f(from) + f(to)) * (to - from)) / 2];
  for (let level = 1; level <= 16; level++) {
    const count = 2 ** level;
    let sum = 0;
    for (let i = 1; i < count; i += 2) sum += f(from + ((to - from) * i) / count);
    const next = [(rows[0] ?? 0) / 2 + (sum * (to - from)) / count];
    for (let k = 1; k <= level; k++) {
      const finer = next[k - 1] ?? 0;
      next.push(finer + (finer - (rows[k - 1] ?? 0)) / (4 ** k - 1));
    }
    rows = next;
  }
  return rows.at(-1) ?? Number.NaN;
}

describe("Gauss–Legendre", () => {
  it("is exact to degree 31", () => {
    for (let degree = 0; degree <= 31; degree++) {
      expectClose(
        integral((x) => x ** degree, 0, 2),
        2 ** (degree + 1) / (degree + 1),
        1e-13,
      );
    }
  });
});

describe("a root", () => {
  it.each<[string, (x: number) => number, number, number, number]>([
    ["of a line", (x) => x - 0.3, 0, 1, 0.3],
    ["of a falling curve", (x) => Math.cos(x) - x, 2, 0, 0.7390851332151607],
    ["with a flat start", (x) => x ** 9 - 1e-9, 0, 1, 0.1],
    ["at an end", (x) => x, 0, 1, 0],
    ["beside a pole", (x) => 1 / (1 - x) - 1e6, 0, 1 - 1e-9, 1 - 1e-6],
  ])("%s is found", (_, f, from, to, root) => expectClose(rootBetween(f, from, to), root, 1e-12, 1));

  it("is the nearer end where there is none", () => {
    expect(rootBetween((x) => x + 1, 0, 1)).toBe(0);
    expect(rootBetween((x) => x - 2, 0, 1)).toBe(1);
  });
});

import { describe, expect, it } from "vitest";
import type { Section } from "../../geometry/figures/section.ts";
import { sectionOf } from "../../geometry/figures/section.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { movedLoop, turnByShare } from "../../geometry/outline/transform.ts";
import { expectClose } from "../support/close-to.ts";
import {
  annulus,
  arc,
  bulgeLoop,
  chain,
  circle,
  circularSegment,
  line,
  loopOf,
  outlineOf,
  type Pair,
  polygon,
  rectangle,
  sector,
  slot,
} from "../support/loops.ts";

const EXACT = 1e-12;

interface Expected {
  readonly area: number;
  readonly centroid: readonly [x: number, y: number];
  /** About the centroid: ∫y² dA, ∫x² dA, ∫xy dA. */
  readonly moments: readonly [xx: number, yy: number, xy: number];
}

/** Area, centroid and both sets of second moments, those about the axis worked out from the expected ones. */
function expectSection(section: Section, { area, centroid: [x, y], moments: [xx, yy, xy] }: Expected): void {
  const sizeMm = Math.sqrt((xx + yy) / area);
  const distanceMm = Math.hypot(x, y);
  expectClose(section.areaMm2, area, EXACT);
  expectClose(section.centroidMm?.x, x, EXACT, sizeMm + distanceMm);
  expectClose(section.centroidMm?.y, y, EXACT, sizeMm + distanceMm);
  expectClose(section.centroidalMomentsMm4?.xx, xx, EXACT);
  expectClose(section.centroidalMomentsMm4?.yy, yy, EXACT);
  expectClose(section.centroidalMomentsMm4?.xy, xy, EXACT, xx + yy);
  const about = section.secondMomentsMm4;
  expectClose(about.xx, xx + area * y * y, EXACT);
  expectClose(about.yy, yy + area * x * x, EXACT);
  expectClose(about.xy, xy + area * x * y, EXACT, xx + yy + area * distanceMm ** 2);
}

const disc = (r: number, centroid: readonly [number, number]): Expected => {
  const moment = (Math.PI * r ** 4) / 4;
  return { area: Math.PI * r * r, centroid, moments: [moment, moment, 0] };
};

/** A disc as `pieces` arcs of equal sweep, the first starting at an odd angle. */
function piecewiseDisc(r: number, pieces: number, centre: readonly [number, number] = [0, 0]): Loop {
  const sweep = (2 * Math.PI) / pieces;
  return chain(Array.from({ length: pieces }, (_, i) => arc(centre, r, 0.3 + i * sweep, sweep)));
}

describe("a disc", () => {
  it.each([
    ["on the axis", 0, 0],
    ["off the axis", 40, -7],
    ["far from the axis", 1e6, -2e6],
  ])("%s is exact as one arc", (_, x, y) => {
    expectSection(sectionOf(outlineOf(circle(11, [x, y]))), disc(11, [x, y]));
  });

  it.each([1, 2, 3, 4, 6, 7, 13, 60, 1000])("in %d arcs is exact", (pieces) => {
    expectSection(sectionOf(outlineOf(piecewiseDisc(50, pieces))), disc(50, [0, 0]));
  });

  it("in two half circles far from the axis is exact", () => {
    const loop = bulgeLoop([
      [3e6 - 5, 1e6, 1],
      [3e6 + 5, 1e6, 1],
    ]);
    expectSection(sectionOf(outlineOf(loop)), disc(5, [3e6, 1e6]));
  });

  it("in one arc clockwise, as a hole, takes its area away from nothing", () => {
    const section = sectionOf({ outer: loopOf([arc([0, 0], 10, 1, -2 * Math.PI)]), inner: [] });
    expectClose(section.areaMm2, -100 * Math.PI, EXACT);
  });
});

describe("other round shapes", () => {
  it("annulus", () => {
    const moment = (Math.PI * (60 ** 4 - 59.9 ** 4)) / 4;
    const area = Math.PI * (60 ** 2 - 59.9 ** 2);
    const expected: Expected = { area, centroid: [0, 0], moments: [moment, moment, 0] };
    expectSection(sectionOf(annulus(60, 59.9)), expected);
  });

  it.each([0.1, 0.9, 1.1, 2, Math.PI, 4, 6])("sector of %d rad", (sweep) => {
    const [r, h] = [35, sweep / 2];
    const area = r * r * h;
    const x = (2 * r * Math.sin(h)) / (3 * h);
    const across = (r ** 4 * (h - Math.sin(h) * Math.cos(h))) / 4;
    const along = (r ** 4 * (h + Math.sin(h) * Math.cos(h))) / 4 - area * x * x;
    expectSection(sectionOf(outlineOf(sector(r, sweep))), {
      area,
      centroid: [x, 0],
      moments: [across, along, 0],
    });
  });

  it("slot with round ends", () => {
    const [half, r] = [30, 8];
    const area = 4 * half * r + Math.PI * r * r;
    const flat = (half * 2 * (2 * r) ** 3) / 12 + (Math.PI * r ** 4) / 4;
    const long = (2 * r * (2 * half) ** 3) / 12 + (Math.PI * r ** 4) / 4 + Math.PI * r * r * half ** 2;
    const withEnds = long + 2 * half * (4 / 3) * r ** 3;
    const section = sectionOf(outlineOf(slot([-half, 0], [half, 0], 2 * r)));
    expectSection(section, { area, centroid: [0, 0], moments: [flat, withEnds, 0] });
    expectClose(section.perimeterMm, 4 * half + 2 * Math.PI * r, EXACT);
  });

  it("half disc turned by any angle keeps the distance of its centroid", () => {
    for (let angle = -7; angle < 7; angle += 0.7) {
      const half = arc([0, 0], 21, angle, Math.PI);
      const { centroidMm } = sectionOf(
        outlineOf(loopOf([half, line([half.to.x, half.to.y], [half.from.x, half.from.y])])),
      );
      expectClose(Math.hypot(centroidMm?.x ?? 0, centroidMm?.y ?? 0), (4 * 21) / (3 * Math.PI), EXACT);
    }
  });
});

describe("shallow arcs", () => {
  /** Leading terms of the handbook formulas for a small half sweep h and half chord a; the next ones are h⁴ smaller. */
  const shallowSegment = (r: number, h: number) => {
    const a = r * Math.sin(h);
    const area = (2 / 3) * a * a * h * (1 + (2 / 15) * h * h);
    const height = ((2 / 15) * a * h * (1 + (5 / 21) * h * h)) / ((2 / 3) * (1 + (2 / 15) * h * h));
    return { a, area, height, across: (2 / 15) * a ** 4 * h * (1 + (4 / 21) * h * h) };
  };

  it.each([
    [1e5, 1e-3],
    [1e7, 1e-5],
    [1e9, 1e-7],
    [3, 1e-3],
  ])("the segment of a circle of %d mm with half sweep %d", (r, h) => {
    const { a, area, height, across } = shallowSegment(r, h);
    // Built at the axis, not about its own centre, so that the coordinates hold its digits.
    const loop = bulgeLoop([
      [0, -a, Math.tan(h / 2)],
      [0, a, 0],
    ]);
    const section = sectionOf(outlineOf(loop));
    expectClose(section.areaMm2, area, EXACT);
    expectClose(section.centroidMm?.x, height, EXACT);
    expectClose(section.secondMomentsMm4.xx, across, EXACT);
    expectClose(section.secondMomentsMm4.yy, (4 / 105) * a ** 4 * h ** 3, 1e-5);
  });

  it("agree on both sides of the change of formula", () => {
    const [under, over] = [0.999999999, 1.000000001].map((sweep) =>
      sectionOf(outlineOf(circularSegment(10, sweep))),
    );
    const slope = 10 ** 2 * Math.sin(0.5) ** 2;
    expectClose((over?.areaMm2 ?? 0) - (under?.areaMm2 ?? 0), slope * 2e-9, 1e-5);
    const ratio = (over?.centroidalMomentsMm4?.yy ?? 0) / (under?.centroidalMomentsMm4?.yy ?? 0);
    expectClose(ratio, 1 + 7 * 2e-9, 3e-9);
  });

  it("of no sweep at all are lines", () => {
    const flat = arc([0, 0], 1e300, 0, 0);
    const straight = chain([{ ...flat, from: { x: 1, y: 0 } }, line([1, 5], [0, 0]), line([0, 0], [1, 0])]);
    expect(sectionOf(outlineOf(straight)).areaMm2).toBe(2.5);
  });
});

describe("a symmetrical bar", () => {
  const half = (turn: 1 | -1) =>
    [
      [turn * 130, turn * 3, 0.1],
      [turn * 104, turn * 16.3, 0],
      [turn * 30.1, turn * 24.7, -0.2],
      [turn * -30.7, turn * 25.1, 0],
    ] as const;
  const bar = outlineOf(
    bulgeLoop([...half(1), ...half(-1)]),
    circle(11),
    circle(3.25, [0, 17]),
    circle(3.25, [0, -17]),
  );

  it("has its centroid on the axis, to rounding", () => {
    const { centroidMm } = sectionOf(bar);
    expect(Math.hypot(centroidMm?.x ?? 1, centroidMm?.y ?? 1)).toBeLessThan(1e-14);
  });

  it("has it to rounding in a thousand segments too", () => {
    const { centroidMm } = sectionOf(outlineOf(piecewiseDisc(100, 1000), circle(11)));
    expect(Math.hypot(centroidMm?.x ?? 1, centroidMm?.y ?? 1)).toBeLessThan(1e-12);
  });
});

describe("extent", () => {
  it("takes the farthest point of an arc, not only its ends", () => {
    const section = sectionOf(outlineOf(sector(30, 2)));
    expectClose(section.maxRadiusMm, 30, EXACT);
    expectClose(section.boundsMm[2], 30, EXACT);
    expectClose(section.boundsMm[3], 30 * Math.sin(1), EXACT);
  });

  it("of an off-centre disc reaches distance plus radius", () => {
    const section = sectionOf(outlineOf(circle(5, [3, 4])));
    expectClose(section.maxRadiusMm, 10, EXACT);
    expect(section.boundsMm).toEqual([-2, -1, 8, 9]);
  });

  it.each([
    ["right", 0, [-20, -20, 25, 20]],
    ["top", 1, [-20, -20, 20, 25]],
    ["left", 2, [-25, -20, 20, 20]],
    ["bottom", 3, [-20, -25, 20, 20]],
  ])("takes in a round ear on the %s alone", (_, quarters, bounds) => {
    const square = bulgeLoop([
      [20, -20, 0],
      [20, -5, 1],
      [20, 5, 0],
      [20, 20, 0],
      [-20, 20, 0],
      [-20, -20, 0],
    ]);
    const section = sectionOf(outlineOf(movedLoop(square, turnByShare(quarters, 4))));
    for (const [side, boundMm] of bounds.entries()) expectClose(section.boundsMm[side], boundMm, EXACT);
    expectClose(section.maxRadiusMm, 20 * Math.SQRT2, EXACT);
  });

  it("is that of the outer loop alone", () => {
    const section = sectionOf(outlineOf(rectangle(-10, -10, 10, 10), circle(3, [20, 0])));
    expect(section.boundsMm).toEqual([-10, -10, 10, 10]);
    expectClose(section.maxRadiusMm, Math.hypot(10, 10), EXACT);
  });
});

describe("the cut length", () => {
  it("counts every edge, holes included", () => {
    const section = sectionOf(outlineOf(rectangle(-50, -10, 50, 10), circle(5), circle(2, [20, 0])));
    expectClose(section.perimeterMm, 240 + 14 * Math.PI, EXACT);
  });
});

describe("a section without area", () => {
  const thereAndBack = polygon([
    [0.1, 0.3],
    [7.7, 3.1],
    [30.3, 11.4],
    [7.7, 3.1],
  ]);

  const onALine = ([1, 17.3, 30.1, 9.2] as const).map((t): Pair => [t * Math.cos(1), 70 + t * Math.sin(1)]);

  it("is told by rounding, not by an area of exactly 0", () => {
    expect(sectionOf(outlineOf(polygon(onALine))).areaMm2).not.toBe(0);
  });

  it.each([
    ["out and back", outlineOf(thereAndBack)],
    ["out and back by other corners", outlineOf(polygon(onALine))],
    ["wholly taken by its hole", outlineOf(circle(20), circle(20))],
    ["of no segments", outlineOf(loopOf([]))],
  ])("%s has no centroid, and no number that is none", (_, outline) => {
    const section = sectionOf(outline);
    expectClose(section.areaMm2, 0, 1e-12, 1000);
    expect(section.centroidMm).toBeNull();
    expect(section.centroidalMomentsMm4).toBeNull();
    const numbers = [...Object.values(section.secondMomentsMm4), ...section.boundsMm, section.maxRadiusMm];
    expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
  });

  it("is not mistaken for a sliver", () => {
    const { centroidMm } = sectionOf(outlineOf(rectangle(0, 0, 1000, 1e-6)));
    expectClose(centroidMm?.x, 500, EXACT);
    expectClose(centroidMm?.y, 5e-7, EXACT);
  });
});

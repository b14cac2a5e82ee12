/**
 * Section properties against published values. "Seen": inputs and result stood in the source; "formula seen": the
 * formula stood in the source, the inputs are chosen and the digits worked out from it; "from memory": as it says.
 */
import { describe, expect, it } from "vitest";
import { principalMoments } from "../../geometry/figures/second-moments.ts";
import { sectionOf } from "../../geometry/figures/section.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { expectClose } from "../support/close-to.ts";
import {
  annulus,
  arc,
  chain,
  circularSegment,
  line,
  loopOf,
  outlineOf,
  polygon,
  rectangle,
  sector,
} from "../support/loops.ts";
import { expectPrinted } from "../support/printed.ts";

const EXACT = 1e-12;
const { PI, sin, sqrt } = Math;
const sectionOfLoop = (loop: Loop) => sectionOf(outlineOf(loop));

/** A value as the source prints it, and what its exact formula gives. */
function expectPublished(actual: number | undefined, printed: string, exact: number): void {
  expectPrinted(actual, printed);
  expectClose(actual, exact, EXACT);
}

describe("polygons in textbooks", () => {
  // Peery, Aircraft Structures (1950), Example 1 of §7.2, in inches. Seen.
  it("Z section", () => {
    const z = sectionOfLoop(
      polygon([
        [-5, 4],
        [-1, 4],
        [-1, -6],
        [5, -6],
        [5, -4],
        [1, -4],
        [1, 6],
        [-5, 6],
      ]),
    );
    const { xx, yy, xy } = z.secondMomentsMm4;
    expectClose(z.areaMm2, 40, EXACT);
    expectPublished(xx, "693.3", 2080 / 3);
    expectPublished(yy, "173.3", 520 / 3);
    expectPublished(xy, "-240", -240);
    const { largestMm4, smallestMm4, axisRad } = principalMoments(z.secondMomentsMm4);
    expectPrinted(largestMm4, "787");
    expectPrinted(smallestMm4, "79.5");
    expectPrinted(largestMm4, "787.1695");
    expectPrinted(smallestMm4, "79.4972");
    // The moment about the axis in that direction is the largest one: the definition of the axis.
    const [c, s] = [Math.cos(axisRad), sin(axisRad)];
    expectClose(xx * c * c + yy * s * s - 2 * xy * s * c, largestMm4, EXACT);
  });

  // Peery, Aircraft Structures (1950), Example 1 of §6.2, in inches. Seen.
  it("I section", () => {
    const i = sectionOfLoop(
      polygon([
        [-1.5, -3],
        [1.5, -3],
        [1.5, -2],
        [0.5, -2],
        [0.5, 2],
        [1.5, 2],
        [1.5, 3],
        [-1.5, 3],
        [-1.5, 2],
        [-0.5, 2],
        [-0.5, -2],
        [-1.5, -2],
      ]),
    );
    expectPublished(i.secondMomentsMm4.xx, "43.3", 130 / 3);
  });

  // Validation case of the open sectionproperties project. Seen.
  it("asymmetric polygon of fourteen corners", () => {
    const section = sectionOfLoop(
      polygon([
        [-10, 0],
        [110, 0],
        [100, 10],
        [55, 10],
        [55, 90],
        [100, 90],
        [110, 100],
        [110, 110],
        [-10, 110],
        [-10, 100],
        [0, 90],
        [45, 90],
        [45, 10],
        [-10, 10],
      ]),
    );
    expectClose(section.areaMm2, 4250, EXACT);
    expectPrinted(section.centroidMm?.x, "49.33333");
    expectPrinted(section.centroidMm?.y, "65.01961");
    const central = section.centroidalMomentsMm4 ?? { xx: 0, yy: 0, xy: 0 };
    expectPrinted(central.xx, "7 705 415");
    expectPrinted(central.yy, "3 842 278");
    expectPrinted(central.xy, "165 472.2");
    const { largestMm4, smallestMm4 } = principalMoments(central);
    expectPrinted(largestMm4, "7 712 490");
    expectPrinted(smallestMm4, "3 835 203");
    expectPrinted(section.secondMomentsMm4.xx, "25 672 500");
    expectPrinted(section.secondMomentsMm4.yy, "14 185 833");
    expectPrinted(section.secondMomentsMm4.xy, "13 797 917");
  });
});

describe("round shapes in handbooks", () => {
  // Formulas seen except the moment about the diameter's own centroid axis, which is from memory.
  it("semicircle, r 30", () => {
    const r = 30;
    const round = arc([0, 0], r, 0, PI);
    const section = sectionOfLoop(loopOf([round, line([round.to.x, round.to.y], [r, 0])]));
    expectPublished(section.areaMm2, "1413.7167", (PI * r * r) / 2);
    expectPublished(section.centroidMm?.y, "12.732395", (4 * r) / (3 * PI));
    expectPublished(section.secondMomentsMm4.xx, "318 086.256", (PI * r ** 4) / 8);
    expectPublished(section.centroidalMomentsMm4?.xx, "88 903.138", (PI / 8 - 8 / (9 * PI)) * r ** 4);
    expectClose(section.centroidalMomentsMm4?.yy, (PI * r ** 4) / 8, EXACT);
  });

  // Formulas seen.
  it("quarter circle, r 30", () => {
    const r = 30;
    const section = sectionOfLoop(
      loopOf([line([0, 0], [r, 0]), arc([0, 0], r, 0, PI / 2), line([0, r], [0, 0])]),
    );
    const central = (PI / 16 - 4 / (9 * PI)) * r ** 4;
    expectPublished(section.areaMm2, "706.85835", (PI * r * r) / 4);
    expectPublished(section.centroidalMomentsMm4?.xx, "44 451.569", central);
    expectPublished(section.centroidalMomentsMm4?.yy, "44 451.569", central);
  });

  // Area seen, the centroid's formula seen.
  it("segment, r 5, 60°", () => {
    const [r, angle] = [5, PI / 3];
    const section = sectionOfLoop(circularSegment(r, angle));
    expectPublished(section.areaMm2, "2.264652", (r * r * (angle - sin(angle))) / 2);
    const centroid = (4 * r * sin(angle / 2) ** 3) / (3 * (angle - sin(angle)));
    expectPublished(section.centroidMm?.x, "4.599677", centroid);
  });

  // Formulas seen.
  it("segment, r 50, 120°", () => {
    const [r, angle] = [50, (2 * PI) / 3];
    const section = sectionOfLoop(circularSegment(r, angle));
    const area = (r * r * (angle - sin(angle))) / 2;
    const centroid = (4 * r * sin(angle / 2) ** 3) / (3 * (angle - sin(angle)));
    const across = (r ** 4 / 8) * (angle - sin(angle) + 2 * sin(angle) * sin(angle / 2) ** 2);
    const along = (r ** 4 / 24) * (3 * angle - 3 * sin(angle) - 2 * sin(angle) * sin(angle / 2) ** 2);
    const { xx, yy } = section.secondMomentsMm4;
    expectPublished(section.areaMm2, "1535.46212", area);
    expectPublished(section.centroidMm?.x, "35.251008", centroid);
    expectPublished(yy, "1 974 537.35", across);
    expectPublished(xx, "621 372.65", along);
    expectPublished(xx + yy, "2 595 910.00", across + along);
    expectPublished(section.centroidalMomentsMm4?.yy, "66 520.565", across - area * centroid ** 2);
  });

  // Formulas seen.
  it("sector, r 50, 120°", () => {
    const [r, angle] = [50, (2 * PI) / 3];
    const section = sectionOfLoop(sector(r, angle));
    expectPublished(section.areaMm2, "2617.99388", (r * r * angle) / 2);
    expectPublished(section.centroidMm?.x, "27.566445", (4 * r * sin(angle / 2)) / (3 * angle));
    expectPublished(section.secondMomentsMm4.xx, "959 663.83", (r ** 4 / 8) * (angle - sin(angle)));
    expectPublished(section.secondMomentsMm4.yy, "2 312 828.52", (r ** 4 / 8) * (angle + sin(angle)));
  });

  // Formulas seen.
  it("annulus, r 50 and 20", () => {
    const section = sectionOf(annulus(50, 20));
    const { xx, yy } = section.secondMomentsMm4;
    expectPublished(section.areaMm2, "6597.34457", PI * (50 ** 2 - 20 ** 2));
    expectPublished(xx + yy, "9 566 149.63", (PI / 2) * (50 ** 4 - 20 ** 4));
  });

  // From memory. An ellipse is no arc: 4000 arcs through it are, to 1e-9.
  it("ellipse, half axes 30 and 20", () => {
    const section = sectionOfLoop(ellipseOfArcs(30, 20, 4000));
    expectClose(section.areaMm2, 600 * PI, 1e-9);
    expectPrinted(section.areaMm2, "1884.95559");
    expectPrinted(section.secondMomentsMm4.xx, "188 495.559");
    expectPrinted(section.secondMomentsMm4.yy, "424 115.008");
  });
});

/** Arcs through three neighbouring points of an ellipse each: the error falls with the fourth power of their number. */
function ellipseOfArcs(a: number, b: number, count: number): Loop {
  const pointAt = (i: number) => [a * Math.cos((PI * i) / count), b * sin((PI * i) / count)] as const;
  return chain(
    Array.from({ length: count }, (_, i) => {
      const [[x0, y0], [x1, y1], [x2, y2]] = [pointAt(2 * i), pointAt(2 * i + 1), pointAt(2 * i + 2)];
      const [ax, ay, bx, by] = [x1 - x0, y1 - y0, x2 - x0, y2 - y0];
      const twice = 2 * (ax * by - ay * bx);
      const [aa, bb] = [ax * ax + ay * ay, bx * bx + by * by];
      const [cx, cy] = [(aa * by - bb * ay) / twice, (bb * ax - aa * bx) / twice];
      const start = Math.atan2(-cy, -cx);
      const sweep = Math.atan2(by - cy, bx - cx) - start;
      return arc([x0 + cx, y0 + cy], Math.hypot(cx, cy), start, sweep < -PI ? sweep + 2 * PI : sweep);
    }),
  );
}

describe("straight shapes in handbooks", () => {
  // From memory.
  it("right triangle, 60 by 30", () => {
    const section = sectionOfLoop(
      polygon([
        [0, 0],
        [60, 0],
        [0, 30],
      ]),
    );
    expectClose(section.areaMm2, 900, EXACT);
    expectClose(section.centroidMm?.x, 20, EXACT);
    expectClose(section.centroidMm?.y, 10, EXACT);
    expectClose(section.centroidalMomentsMm4?.xx, 45_000, EXACT);
    expectClose(section.centroidalMomentsMm4?.yy, 180_000, EXACT);
    expectClose(section.centroidalMomentsMm4?.xy, -45_000, EXACT);
  });

  // From memory: bh³/12 about the centroid, bh³/3 about the base, a⁴/12 about the diagonal of a square.
  it("rectangle, hollow rectangle, and square on its corner", () => {
    const based = sectionOfLoop(rectangle(-20, 0, 20, 50));
    expectClose(based.secondMomentsMm4.xx, (40 * 50 ** 3) / 3, EXACT);
    expectClose(based.centroidalMomentsMm4?.xx, (40 * 50 ** 3) / 12, EXACT);
    const hollow = sectionOf(outlineOf(rectangle(-20, -25, 20, 25), rectangle(-15, -20, 15, 20)));
    expectClose(hollow.secondMomentsMm4.xx, (40 * 50 ** 3 - 30 * 40 ** 3) / 12, EXACT);
    const a = 30;
    const square = sectionOfLoop(regularPolygon(4, a / sqrt(2)));
    expectClose(square.secondMomentsMm4.xx, a ** 4 / 12, EXACT);
  });

  // From memory: area 3√3/2·s², moment 5√3/16·s⁴ about any axis.
  it("regular hexagon", () => {
    const { areaMm2, secondMomentsMm4 } = sectionOfLoop(regularPolygon(6, 14));
    expectClose(areaMm2, ((3 * sqrt(3)) / 2) * 14 ** 2, EXACT);
    expectClose(secondMomentsMm4.xx, ((5 * sqrt(3)) / 16) * 14 ** 4, EXACT);
    expectClose(secondMomentsMm4.yy, ((5 * sqrt(3)) / 16) * 14 ** 4, EXACT);
  });

  // From memory: centroid h(2a + b)/3(a + b) above the base b, moment h³(a² + 4ab + b²)/36(a + b).
  it("trapezium", () => {
    const [top, base, h] = [30, 80, 24];
    const section = sectionOfLoop(
      polygon([
        [0, 0],
        [base, 0],
        [47, h],
        [47 - top, h],
      ]),
    );
    expectClose(section.centroidMm?.y, (h * (2 * top + base)) / (3 * (top + base)), EXACT);
    const moment = (h ** 3 * (top ** 2 + 4 * top * base + base ** 2)) / (36 * (top + base));
    expectClose(section.centroidalMomentsMm4?.xx, moment, EXACT);
  });
});

function regularPolygon(corners: number, radiusMm: number): Loop {
  return polygon(
    Array.from({ length: corners }, (_, i) => {
      const angle = (2 * PI * i) / corners;
      return [radiusMm * Math.cos(angle), radiusMm * sin(angle)] as const;
    }),
  );
}

describe("shapes of several arcs", () => {
  // From memory: area (1 − π/4)r², moment about the tangent (1 − 5π/16)r⁴, centroid 0.2234r from the tangents.
  it("fillet between two tangents", () => {
    const r = 20;
    const section = sectionOfLoop(
      loopOf([line([0, 0], [r, 0]), arc([r, r], r, -PI / 2, -PI / 2), line([0, r], [0, 0])]),
    );
    expectClose(section.areaMm2, (1 - PI / 4) * r * r, EXACT);
    expectClose(section.secondMomentsMm4.xx, (1 - (5 * PI) / 16) * r ** 4, EXACT);
    expectPrinted((section.centroidMm?.x ?? 0) / r, "0.2234");
    expectPrinted((section.centroidMm?.y ?? 0) / r, "0.2234");
  });

  // From memory: 4(R³ − r³)/3π(R² − r²) above the diameter.
  it("half ring", () => {
    const [outer, inner] = [60, 35];
    const ring = chain([
      arc([0, 0], outer, 0, PI),
      line([-outer, 0], [-inner, 0]),
      arc([0, 0], inner, PI, -PI),
      line([inner, 0], [outer, 0]),
    ]);
    const height = (4 * (outer ** 3 - inner ** 3)) / (3 * PI * (outer ** 2 - inner ** 2));
    expectClose(sectionOfLoop(ring).centroidMm?.y, height, EXACT);
  });

  // From memory: two equal circles, each through the other's centre, share r²(2π/3 − √3/2).
  it("lens of two circles", () => {
    const r = 17;
    const lens = chain([arc([0, 0], r, -PI / 3, (2 * PI) / 3), arc([r, 0], r, (2 * PI) / 3, (2 * PI) / 3)]);
    const section = sectionOfLoop(lens);
    expectClose(section.areaMm2, r * r * ((2 * PI) / 3 - sqrt(3) / 2), EXACT);
    expectClose(section.centroidMm?.x, r / 2, EXACT);
  });

  // From memory: the lune of Hippocrates is as large as the triangle it stands on.
  it("lune of Hippocrates", () => {
    const lune = chain([arc([0, 0], 10, 0, PI), arc([0, -10], 10 * sqrt(2), (3 * PI) / 4, -PI / 2)]);
    expectClose(sectionOfLoop(lune).areaMm2, 100, EXACT);
  });

  // From memory: the Reuleaux triangle of width s has area (π − √3)s²/2 and circumference πs.
  it("Reuleaux triangle", () => {
    const s = 33;
    const corners = [0, 1, 2].map((k) => {
      const angle = PI / 2 + (2 * PI * k) / 3;
      return [(s / sqrt(3)) * Math.cos(angle), (s / sqrt(3)) * sin(angle)] as const;
    });
    const section = sectionOfLoop(
      chain(corners.map((corner, k) => arc(corner, s, -PI / 2 - PI / 6 + (2 * PI * k) / 3, PI / 3))),
    );
    expectClose(section.areaMm2, ((PI - sqrt(3)) * s * s) / 2, EXACT);
    expectClose(section.perimeterMm, PI * s, EXACT);
    expectClose(section.centroidMm?.x, 0, EXACT, s);
    expectClose(section.centroidMm?.y, 0, EXACT, s);
    expectClose(section.secondMomentsMm4.xx, section.secondMomentsMm4.yy, EXACT);
  });

  // From memory: Archimedes' arbelos on diameters a and b is as large as the circle on their mean, πab/4.
  it("arbelos", () => {
    const [a, b] = [40, 26];
    const arbelos = chain([
      arc([(a + b) / 2, 0], (a + b) / 2, 0, PI),
      arc([a / 2, 0], a / 2, PI, -PI),
      arc([a + b / 2, 0], b / 2, PI, -PI),
    ]);
    const section = sectionOfLoop(arbelos);
    expectClose(section.areaMm2, (PI * a * b) / 4, EXACT);
    expectClose(section.perimeterMm, PI * (a + b), EXACT);
  });

  // From memory: Archimedes' salinon is as large as the circle on its axis of symmetry.
  it("salinon", () => {
    const [outer, inner] = [50, 18];
    const side = (outer - inner) / 2;
    const salinon = chain([
      arc([0, 0], outer, 0, PI),
      arc([-(outer + inner) / 2, 0], side, PI, -PI),
      arc([0, 0], inner, PI, PI),
      arc([(outer + inner) / 2, 0], side, PI, -PI),
    ]);
    const section = sectionOfLoop(salinon);
    expectClose(section.areaMm2, (PI * (outer + inner) ** 2) / 4, EXACT);
    expect(Math.abs(section.centroidMm?.x ?? 1)).toBeLessThan(1e-13);
  });
});

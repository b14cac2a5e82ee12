import { describe, expect, it } from "vitest";
import { lengthOf, perimeterOf, signedAreaOf } from "../../geometry/outline/segment-geometry.ts";
import { expectClose } from "../support/close-to.ts";
import { expectSound, totalTurn, turnAfter } from "./joins.ts";
import { barText, outerOf, study } from "./study.ts";

const box = (corner: string): string =>
  `outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) ${corner} line (50 mm, 20 mm) line (-50 mm, 20 mm) close }`;

describe("an outline of lines", () => {
  it("is what was written, counter-clockwise, each segment with the step that made it", () => {
    const outer = outerOf(box(""));
    expect(outer.segments.map(({ from }) => [from.x, from.y])).toEqual([
      [-50, -20],
      [50, -20],
      [50, 20],
      [-50, 20],
    ]);
    const text = barText(box(""));
    expect(outer.segments.map(({ source }) => text.slice(source.start, source.end))).toEqual([
      "line (50 mm, -20 mm)",
      "line (50 mm, 20 mm)",
      "line (-50 mm, 20 mm)",
      "close",
    ]);
  });

  it("is turned round silently when it was written clockwise", () => {
    const outer = outerOf(
      "outline { from (-50 mm, -20 mm) line (-50 mm, 20 mm) line (50 mm, 20 mm) line (50 mm, -20 mm) close }",
    );
    expect(signedAreaOf(outer)).toBe(4000);
    expectSound(outer);
  });

  it("is closed by a last step that ends at the start, whether or not close follows", () => {
    const steps = "from (-50 mm, -20 mm) line (50 mm, -20 mm) line (0 mm, 50 mm) line (-50 mm, -20 mm)";
    for (const end of ["", "close"]) {
      const outer = outerOf(`outline { ${steps} ${end} }`);
      expect(outer.segments).toHaveLength(3);
      expect(signedAreaOf(outer)).toBe(3500);
    }
  });

  it("meets its start exactly when the last point is off by less than counts", () => {
    const outer = outerOf(
      "outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) line (0 mm, 50 mm) line (-50.0000005 mm, -20 mm) }",
    );
    expectSound(outer);
    expect(outer.segments).toHaveLength(3);
  });
});

describe("an arc", () => {
  const bulged = (arc: string): string =>
    `outline { from (-30 mm, -40 mm) ${arc} line (30 mm, 40 mm) line (-30 mm, 40 mm) close }`;
  const base = 60 * 80;
  const segment50 = (half: number): number => 2500 * half - 1250 * Math.sin(2 * half);
  const bulge = segment50(Math.asin(30 / 50));

  it.each([
    ["of a radius to the left bulges out", "arc (30 mm, -40 mm) radius 50 mm turning left", base + bulge],
    ["of a radius to the right bulges in", "arc (30 mm, -40 mm) radius 50 mm turning right", base - bulge],
    ["long way round", "arc (30 mm, -40 mm) radius 50 mm turning left long", base + Math.PI * 2500 - bulge],
    ["through a point", "arc (30 mm, -40 mm) through (0 mm, -50 mm)", base + bulge],
    ["through a point on the other side", "arc (30 mm, -40 mm) through (0 mm, -30 mm)", base - bulge],
    ["about a centre", "arc (30 mm, -40 mm) about (0 mm, 0 mm) turning left", base + bulge],
    ["about a centre to the right", "arc (30 mm, -40 mm) about (0 mm, -80 mm) turning right", base - bulge],
    [
      "of half the distance is a half circle",
      "arc (30 mm, -40 mm) radius 30 mm turning left",
      base + Math.PI * 450,
    ],
  ])("%s", (_, arc, area) => {
    const text = bulged(arc);
    const { draft } = study(barText(text));
    const outer = draft?.outer;
    if (!outer) throw new Error("no outline");
    expectClose(signedAreaOf(outer), area, 1e-13);
    expectSound(outer);
  });

  it("of half the distance, to rounding, is a half circle about the middle", () => {
    for (const radius of ["sqrt(2) * 21 mm", "29.698484809834996 mm", "29.69848480983499 mm"]) {
      const outer = outerOf(
        `outline { from (21 mm, -21 mm) arc (-21 mm, 21 mm) radius ${radius} turning left line (-30 mm, -30 mm) close }`,
      );
      expectClose(signedAreaOf(outer), Math.PI * 441 + 1260, 1e-12);
    }
  });

  it("about a centre back to its start is a full turn", () => {
    for (const turning of ["left", "right"]) {
      const outer = outerOf(
        `outline { from (50 mm, 0 mm) arc (50 mm, 0 mm) about (0 mm, 0 mm) turning ${turning} }`,
      );
      expect(outer.segments).toHaveLength(1);
      expect(signedAreaOf(outer)).toBeCloseTo(2500 * Math.PI, 9);
      expectSound(outer);
    }
  });
});

describe("a corner", () => {
  it("of a right angle loses (1 − π/4)r² to a fillet, ½d² to a bevel", () => {
    expectClose(signedAreaOf(outerOf(box("round 10 mm"))), 4000 - (1 - Math.PI / 4) * 100, 1e-14);
    expectClose(signedAreaOf(outerOf(box("bevel 10 mm"))), 4000 - 50, 1e-14);
    expectClose(perimeterOf(outerOf(box("round 10 mm"))), 280 - 20 + 5 * Math.PI, 1e-14);
  });

  it("at the first point is treated on from, on close, or on a last step that ends there", () => {
    const area = 4000 - (1 - Math.PI / 4) * 100;
    const rest = "line (50 mm, -20 mm) line (50 mm, 20 mm) line (-50 mm, 20 mm)";
    for (const path of [
      `from (-50 mm, -20 mm) round 10 mm ${rest} close`,
      `from (-50 mm, -20 mm) ${rest} close round 10 mm`,
      `from (-50 mm, -20 mm) ${rest} line (-50 mm, -20 mm) round 10 mm`,
      `from (-50 mm, -20 mm) ${rest} line (-50 mm, -20 mm) close round 10 mm`,
    ]) {
      const outer = outerOf(`outline { ${path} }`);
      expectClose(signedAreaOf(outer), area, 1e-14);
      expect(outer.segments).toHaveLength(5);
    }
  });

  it("carries the range of its treatment", () => {
    const outer = outerOf(box("round 10 mm"));
    const text = barText(box("round 10 mm"));
    const [fillet] = outer.segments.filter(({ kind }) => kind === "arc");
    expect(text.slice(fillet?.source.start, fillet?.source.end)).toBe("round 10 mm");
  });

  it("may use up its sides: a box rounded by half its height is a stadium, without slivers", () => {
    const outer = outerOf(
      "outline { from (-50 mm, -20 mm) round 20 mm line (50 mm, -20 mm) round 20 mm line (50 mm, 20 mm) round 20 mm line (-50 mm, 20 mm) round 20 mm close }",
    );
    expect(outer.segments.map(({ kind }) => kind)).toEqual(["line", "arc", "arc", "line", "arc", "arc"]);
    expectClose(signedAreaOf(outer), 60 * 40 + Math.PI * 400, 1e-14);
    expectSound(outer);
  });
});

describe("a repeated path", () => {
  it.each([2, 3, 4, 5, 6, 7, 12, 37])("of one line, %i times, is a regular polygon", (n) => {
    const outer = outerOf(
      `outline repeat ${n} { from (40 mm, 0 mm) line (30 mm @ ${180 / n} deg) line (40 mm @ 360 deg / ${n}) }`,
    );
    expectClose(signedAreaOf(outer), n * 40 * 30 * Math.sin(Math.PI / n), 1e-13);
    expect(outer.segments).toHaveLength(2 * n);
    expectSound(outer);
  });

  it("is the same after a turn by one share", () => {
    const outer = outerOf(
      "outline repeat 3 { from (60 mm, 0 mm) arc (25 mm @ 70 deg) radius 60 mm turning right round 5 mm line (60 mm @ 120 deg) round 2 mm }",
    );
    const per = outer.segments.length / 3;
    expect(per).toBe(4);
    for (const [i, segment] of outer.segments.entries()) {
      const next = outer.segments[(i + per) % outer.segments.length];
      expectClose(lengthOf(segment), lengthOf(next ?? segment), 1e-12);
      const [cos, sin] = [Math.cos((2 * Math.PI) / 3), Math.sin((2 * Math.PI) / 3)];
      const { x, y } = segment.from;
      expect(next?.from.x).toBeCloseTo(cos * x - sin * y, 10);
      expect(next?.from.y).toBeCloseTo(sin * x + cos * y, 10);
    }
    expectSound(outer);
  });

  it("treats each joint by the corner of its last step, or of from", () => {
    const n = 6;
    const sharp = n * 0.5 * 1600 * Math.sin(Math.PI / 3);
    // At a corner of turn φ a fillet takes r²(tan(φ/2) − φ/2).
    const taken = n * 9 * (Math.tan(Math.PI / 6) - Math.PI / 6);
    for (const [start, end] of [
      ["", "round 3 mm"],
      ["round 3 mm", ""],
    ]) {
      const outer = outerOf(
        `outline repeat ${n} { from (40 mm, 0 mm) ${start} line (40 mm @ 60 deg) ${end} }`,
      );
      expectClose(signedAreaOf(outer), sharp - taken, 1e-13);
      expect(outer.segments).toHaveLength(2 * n);
    }
  });

  it("keeps quarter turns free of rounding", () => {
    const outer = outerOf("outline repeat 4 { from (40 mm, 0 mm) line (0 mm, 40 mm) }");
    expect(outer.segments.map(({ to }) => [to.x, to.y])).toEqual([
      [0, 40],
      [-40, 0],
      [0, -40],
      [40, 0],
    ]);
  });
});

describe("a mirrored path", () => {
  it.each([
    ["x", "from (60 mm, 0 mm) line (0 mm, 20 mm) line (-60 mm, 0 mm)"],
    ["x", "from (-60 mm, 0 mm) line (0 mm, -20 mm) line (60 mm, 0 mm)"],
    ["y", "from (0 mm, 20 mm) line (60 mm, 0 mm) line (0 mm, -20 mm)"],
  ])("in the %s axis makes the whole rhombus", (axis, path) => {
    const outer = outerOf(`outline mirror ${axis} { ${path} }`);
    expect(signedAreaOf(outer)).toBe(2400);
    expect(outer.segments).toHaveLength(4);
    expectSound(outer);
  });

  it("treats the corners on the axis too, each once", () => {
    const path = (start: string, end: string): string =>
      `outline mirror y { from (0 mm, 20 mm) ${start} line (60 mm, 0 mm) line (0 mm, -20 mm) ${end} }`;
    const turn = 2 * Math.atan(20 / 60);
    const taken = 25 * (Math.tan(turn / 2) - turn / 2);
    expectClose(signedAreaOf(outerOf(path("round 5 mm", ""))), 2400 - taken, 1e-13);
    expectClose(signedAreaOf(outerOf(path("", "round 5 mm"))), 2400 - taken, 1e-13);
    expectClose(signedAreaOf(outerOf(path("round 5 mm", "round 5 mm"))), 2400 - 2 * taken, 1e-13);
  });

  it("treats the corners off the axis on both sides", () => {
    const outer = outerOf(
      "outline mirror x { from (50 mm, 0 mm) line (50 mm, 20 mm) round 4 mm line (-50 mm, 20 mm) line (-50 mm, 0 mm) }",
    );
    expectClose(signedAreaOf(outer), 4000 - 2 * (1 - Math.PI / 4) * 16, 1e-14);
    const arcs = outer.segments.filter(({ kind }) => kind === "arc");
    expect(arcs).toHaveLength(2);
    const ends = arcs.flatMap(({ from, to }) => [from, to]).map(({ x, y }) => [x, Math.abs(y)]);
    expect(ends.sort()).toEqual([
      [46, 20],
      [46, 20],
      [50, 16],
      [50, 16],
    ]);
  });
});

describe("inner loops", () => {
  const square =
    "outline { from (-50 mm, -50 mm) line (50 mm, -50 mm) line (50 mm, 50 mm) line (-50 mm, 50 mm) close }";
  const inner = (rest: string) => study(barText(square, rest)).outline?.inner ?? [];

  it("are one clockwise arc for a round hole, the bore first", () => {
    const [bore, hole] = inner("hole (20 mm, 10 mm) diameter 6 mm\nbore 8 mm");
    expect(bore?.kind).toBe("bore");
    expect(hole?.kind).toBe("hole");
    expect(hole?.segments).toHaveLength(1);
    expect(hole?.segments[0]).toMatchObject({
      kind: "arc",
      centre: { x: 20, y: 10 },
      radiusMm: 3,
      sweepRad: -2 * Math.PI,
      from: { x: 23, y: 10 },
      to: { x: 23, y: 10 },
    });
  });

  it("are two lines and two half circles for a slot", () => {
    const [slot] = inner("slot (10 mm, 10 mm) to (30 mm, 25 mm) width 6 mm");
    expect(slot?.segments.map(({ kind }) => kind)).toEqual(["line", "arc", "line", "arc"]);
    if (!slot) throw new Error("no slot");
    expectClose(signedAreaOf(slot), -(25 * 6 + 9 * Math.PI), 1e-13);
    for (let i = 0; i < 4; i++) expect(Math.abs(turnAfter(slot, i))).toBeLessThan(1e-12);
    expectSound(slot);
  });

  it("are a round hole for a slot that goes nowhere", () => {
    const [slot] = inner("slot (10 mm, 10 mm) to (10 mm, 10 mm) width 6 mm");
    expect(slot).toMatchObject({ kind: "slot", segments: [{ radiusMm: 3, sweepRad: -2 * Math.PI }] });
  });

  it("run clockwise for a cutout, whichever way it was written, its corners treated", () => {
    for (const path of [
      "from (10 mm, 10 mm) line (30 mm, 10 mm) round 4 mm line (30 mm, 30 mm) line (10 mm, 30 mm) close",
      "from (10 mm, 10 mm) line (10 mm, 30 mm) line (30 mm, 30 mm) line (30 mm, 10 mm) round 4 mm close",
    ]) {
      const [cutout] = inner(`cutout { ${path} }`);
      if (!cutout) throw new Error("no cutout");
      expectClose(signedAreaOf(cutout), -(400 - (1 - Math.PI / 4) * 16), 1e-13);
      expect(totalTurn(cutout)).toBeCloseTo(-2 * Math.PI, 10);
      expectSound(cutout);
    }
  });
});

describe("an outline with an error", () => {
  const broken = box("round 60 mm");

  it("is withheld, so that no figure is worked out of half a shape, but can be drawn", () => {
    const { outline, draft } = study(barText(broken));
    expect(outline).toBeNull();
    expect(draft && signedAreaOf(draft.outer)).toBe(4000);
  });

  it("is withheld for a hole that cannot be made as well", () => {
    const { outline, draft } = study(
      barText(box(""), "cutout { from (1 mm, 1 mm) arc (5 mm, 1 mm) radius 1 mm turning left close }"),
    );
    expect(outline).toBeNull();
    expect(draft?.outer.segments).toHaveLength(4);
  });

  it("tells every mistake, not only the first", () => {
    const { problems } = study(
      barText(
        "outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) round 60 mm arc (50 mm, 20 mm) radius 1 mm turning left line (50 mm, 20 mm) }",
      ),
    );
    expect(problems.map(({ code }) => code)).toEqual([
      "arc-cannot-reach",
      "zero-length",
      "loop-not-closed",
      "corner-too-large",
    ]);
  });
});

describe("too many segments", () => {
  it("are doubted over a limit that can be set, and refused where they would not be built in reasonable time", () => {
    const rules = { leastHoleToThickness: 1, leastBridgeToThickness: 1, mostSegments: 4 };
    expect(study(barText(box("")), rules).problems).toMatchObject([
      {
        code: "too-many-segments",
        severity: "warning",
        message: expect.stringMatching(/5 segments, more than 4/),
      },
    ]);
    expect(study(barText(box(""))).problems).toEqual([]);
    const points = Array.from({ length: 200 }, (_, i) => `line (${60 + (i % 2)} mm @ ${(i + 1) / 200} deg)`);
    const long = `outline repeat 360 { from (60 mm, 0 mm) ${points.join(" ")} }`;
    const { problems, draft } = study(barText(long));
    expect(problems).toMatchObject([{ code: "too-many-segments", severity: "error" }]);
    expect(draft).toBeNull();
  });
});

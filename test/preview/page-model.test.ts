/** The parts of the page that need no browser: places, steps, paths, dimensions, the layout of the chart. */
import { area, line } from "d3-shape";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  biteCells,
  biteSentence,
  limitsText,
  targetText,
} from "../../extension/preview/page/chart/bite-text.ts";
import { chartModel } from "../../extension/preview/page/chart/chart-model.ts";
import { layOutDimensions } from "../../extension/preview/page/drawing/dimension-layout.ts";
import { dimensionsOf } from "../../extension/preview/page/drawing/dimension-list.ts";
import { edgeText } from "../../extension/preview/page/drawing/edge-text.ts";
import { touchedPath } from "../../extension/preview/page/drawing/touched-path.ts";
import { firstState, savedState, withView } from "../../extension/preview/page/page-state.ts";
import {
  dragStepMm,
  gridSteps,
  nextOnStep,
  onStep,
  scaleBarMm,
  stepText,
} from "../../extension/preview/page/steps.ts";
import {
  betweenViewports,
  fittedTo,
  panned,
  toPlane,
  toScreen,
  zoomedAbout,
} from "../../extension/preview/page/viewport.ts";
import type { BitePoint } from "../../extension/preview/protocol.ts";
import { fill, PREVIEW_STRINGS, translated } from "../../extension/preview/strings.ts";
import { loopPath, segmentPath } from "../../extension/webview/page/path-data.ts";
import { BITE, bar, CURVE, madeUpView } from "./made-up-view.ts";

const SIZE = { width: 600, height: 400 };
const SEED = { seed: 4_711, numRuns: 200 };
const viewports = fc.record({
  centre: fc.record({
    x: fc.double({ min: -500, max: 500, noNaN: true }),
    y: fc.double({ min: -500, max: 500, noNaN: true }),
  }),
  pxPerMm: fc.double({ min: 0.05, max: 200, noNaN: true }),
  fitted: fc.boolean(),
});
const pixels = fc.record({ x: fc.integer({ min: 0, max: 600 }), y: fc.integer({ min: 0, max: 400 }) });

describe("the viewport", () => {
  it("turns y over: up in the plane is up on the screen", () => {
    const viewport = { centre: { x: 0, y: 0 }, pxPerMm: 2, fitted: false };
    expect(toScreen(viewport, SIZE, { x: 10, y: 10 })).toEqual({ x: 320, y: 180 });
  });

  it("goes to the plane and back", () => {
    fc.assert(
      fc.property(viewports, pixels, (viewport, px) => {
        const back = toScreen(viewport, SIZE, toPlane(viewport, SIZE, px));
        expect(Math.hypot(back.x - px.x, back.y - px.y)).toBeLessThan(1e-6);
      }),
      SEED,
    );
  });

  it("zooms about the point under the pointer", () => {
    fc.assert(
      fc.property(
        viewports,
        pixels,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (viewport, px, factor) => {
          const zoomed = zoomedAbout(viewport, SIZE, factor, px);
          const stays = toScreen(zoomed, SIZE, toPlane(viewport, SIZE, px));
          expect(Math.hypot(stays.x - px.x, stays.y - px.y)).toBeLessThan(1e-6);
          expect(zoomed.fitted).toBe(false);
        },
      ),
      SEED,
    );
  });

  it("pans as a sheet under the hand", () => {
    const viewport = fittedTo([-100, -20, 100, 20], SIZE);
    const moved = panned(viewport, 30, -12);
    const [before, after] = [viewport, moved].map((one) => toScreen(one, SIZE, { x: 5, y: 5 }));
    expect((after?.x ?? 0) - (before?.x ?? 0)).toBeCloseTo(30, 9);
    expect((after?.y ?? 0) - (before?.y ?? 0)).toBeCloseTo(-12, 9);
  });

  it("fits a box wholly into any panel, a small one too", () => {
    const bounds = fc.tuple(
      fc.double({ min: -400, max: 0, noNaN: true }),
      fc.double({ min: -400, max: 0, noNaN: true }),
      fc.double({ min: 1, max: 400, noNaN: true }),
      fc.double({ min: 1, max: 400, noNaN: true }),
    );
    const sizes = fc.record({
      width: fc.integer({ min: 120, max: 2000 }),
      height: fc.integer({ min: 120, max: 1500 }),
    });
    fc.assert(
      fc.property(bounds, sizes, (box, size) => {
        const viewport = fittedTo(box, size);
        for (const corner of [
          { x: box[0], y: box[1] },
          { x: box[2], y: box[3] },
        ]) {
          const { x, y } = toScreen(viewport, size, corner);
          expect(x >= 0 && x <= size.width && y >= 0 && y <= size.height).toBe(true);
        }
        expect(viewport.fitted).toBe(true);
      }),
      SEED,
    );
  });

  it("glides from one place to exactly the other", () => {
    const [from, to] = [fittedTo([0, 0, 10, 10], SIZE), fittedTo([-50, -50, 400, 300], SIZE)];
    expect(betweenViewports(from, to, 1)).toEqual(to);
    expect(betweenViewports(from, to, 0)).toEqual({ ...from, fitted: true });
    expect(betweenViewports(from, to, 0.5).pxPerMm).toBeCloseTo(Math.sqrt(from.pxPerMm * to.pxPerMm), 9);
  });
});

describe("round steps", () => {
  it("keep grid lines apart at every scale, in both systems", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 1000, noNaN: true }),
        fc.constantFrom("mm", "in"),
        (scale, units) => {
          const { minorMm } = gridSteps(scale, units);
          expect(minorMm * scale).toBeGreaterThanOrEqual(11);
          expect(minorMm * scale).toBeLessThan(11 * 4.1);
          const bar = scaleBarMm(scale, units, 130) * scale;
          expect(bar).toBeLessThanOrEqual(130);
          expect(bar).toBeGreaterThan(130 / 4.1);
        },
      ),
      SEED,
    );
  });

  it("are written as a ruler would", () => {
    expect(stepText(50, "mm")).toBe("50 mm");
    expect(stepText(0.05, "mm")).toBe("0.05 mm");
    expect(stepText(6.35, "in")).toBe("1/4 in");
    expect(stepText(127, "in")).toBe("5 in");
    expect(stepText(0.254, "in")).toBe("0.01 in");
  });

  it("let a drag land on numbers without noise, finer with Shift", () => {
    expect(dragStepMm(2, "mm", false)).toBe(1);
    expect(dragStepMm(2, "mm", true)).toBe(0.1);
    expect(dragStepMm(2, "in", false)).toBeCloseTo(1.27, 12);
    expect(onStep(104.48213, 0.1)).toBe(104.5);
    expect(onStep(-0.04, 0.1)).toBe(0);
    expect(onStep(12.69, 1.27)).toBe(12.7);
  });

  it("go on to the next one in a direction", () => {
    expect(nextOnStep(103.2, 1, 5)).toBe(105);
    expect(nextOnStep(103.2, -1, 5)).toBe(100);
    expect(nextOnStep(105, 1, 5)).toBe(110);
    expect(nextOnStep(105, -1, 5)).toBe(100);
    expect(nextOnStep(0.3, 1, 0.1)).toBe(0.4);
    expect(nextOnStep(103.2, 0, 5)).toBe(103.2);
  });
});

describe("paths", () => {
  const source = { start: 0, end: 1 };
  const quarter = {
    kind: "arc" as const,
    from: { x: 10, y: 0 },
    to: { x: 0, y: 10 },
    centre: { x: 0, y: 0 },
    radiusMm: 10,
    startRad: 0,
    sweepRad: Math.PI / 2,
    source,
  };

  it("turn y over and run arcs the way they turn", () => {
    expect(segmentPath({ kind: "line", from: { x: 1, y: 2 }, to: { x: 3, y: -4 }, source })).toBe(
      "M1 -2L3 4",
    );
    expect(segmentPath(quarter)).toBe("M10 0A10 10 0 0 0 0 -10");
    expect(segmentPath({ ...quarter, sweepRad: -1.5 * Math.PI })).toBe("M10 0A10 10 0 1 1 0 -10");
  });

  it("draw a whole circle in two halves", () => {
    const circle = { ...quarter, to: quarter.from, sweepRad: -2 * Math.PI };
    expect(segmentPath(circle)).toBe("M10 0A10 10 0 0 1 -10 0A10 10 0 0 1 10 0");
    expect(loopPath({ segments: [circle] }).endsWith("Z")).toBe(true);
    expect(loopPath({ segments: [] })).toBe("");
  });

  it("follow a point that is dragged: its edges, or its hole as a whole", () => {
    const loops = bar(96);
    expect(touchedPath(loops, { x: 130, y: 0 }, { x: 140, y: 5 })).toContain("M140 -5");
    expect(touchedPath(loops, { x: 42, y: 0 }, { x: 50, y: 1 })).toContain("M55.25 -1A5.25 5.25");
    expect(touchedPath(loops, { x: 77, y: 3 }, { x: 0, y: 0 })).toBe("");
  });

  it("show a rounded corner sharp while its point is dragged", () => {
    // The tail's corner (-96, 26) is rounded by 12 mm: a line along the top, a line down the end.
    expect(touchedPath(bar(96), { x: -96, y: 26 }, { x: -100, y: 30 })).toBe(
      "M24 -26L-100 -30M-100 -30L-96 14",
    );
  });
});

describe("edges in words", () => {
  const [outer, bore] = bar(96);
  const text = (loop = outer, index = 0, units: "mm" | "in" = "mm") => {
    const segment = loop?.segments[index];
    return segment && loop ? edgeText(segment, loop.kind, units, PREVIEW_STRINGS) : "";
  };

  it("say length, angle and radius in the reader's units", () => {
    expect(text()).toBe("Outline: Line, 98.95 mm long, at 166°");
    expect(text(outer, 1)).toMatch(/^Outline: Arc, radius 30 mm, over [\d.]+°, [\d.]+ mm long$/);
    expect(text(bore)).toBe("Bore: Circle, diameter 22 mm, middle 0 mm from the axis");
    expect(text(bore, 0, "in")).toBe("Bore: Circle, diameter 0.866 in, middle 0 in from the axis");
  });
});

describe("dimensions", () => {
  const drawing = madeUpView().drawing;
  const dimensions = drawing ? dimensionsOf(drawing, "mm", PREVIEW_STRINGS) : [];

  it("are the extent, the tip radius and each kind of round hole once", () => {
    expect(dimensions.map(({ label }) => label)).toEqual([
      "226 mm wide",
      "52 mm high",
      "tip 130 mm",
      "⌀ 22 mm",
      "2 × ⌀ 10.5 mm at radius 42 mm",
    ]);
  });

  it("keep the labels of holes apart and inside the panel", () => {
    const viewport = fittedTo([-130, -130, 130, 130], SIZE);
    const laid = layOutDimensions(dimensions, (point) => toScreen(viewport, SIZE, point), 160, SIZE);
    const holes = laid.slice(3);
    expect(new Set(holes.map(({ y }) => y)).size).toBe(holes.length);
    for (const { x, text } of holes) expect(x + text.length * 6.7).toBeLessThanOrEqual(SIZE.width);
  });
});

describe("the layout of the chart", () => {
  const bite = BITE;

  it("puts the clean-bite speed where it stands between the speeds, in either unit", () => {
    for (const units of ["mm", "in"] as const) {
      const model = chartModel(bite, units, SIZE);
      const [first, last] = [CURVE[0], CURVE.at(-1)];
      expect(first && model.xOf(first)).toBeCloseTo(model.left, 6);
      expect(last && model.xOf(last)).toBeCloseTo(model.right, 6);
      expect(model.cleanAt).toBeCloseTo(model.left + ((3.1 - 0.5) / 5.5) * (model.right - model.left), 6);
    }
    expect(chartModel({ ...bite, cleanMPerS: 9 }, "mm", SIZE).cleanAt).toBeNull();
    expect(chartModel({ ...bite, cleanMPerS: null }, "mm", SIZE).cleanAt).toBeNull();
  });

  it("finds the point nearest to the pointer", () => {
    const model = chartModel(bite, "mm", SIZE);
    for (const [index, point] of CURVE.entries()) expect(model.nearest(model.xOf(point) + 1)).toBe(index);
    expect(model.nearest(-50)).toBe(0);
    expect(model.nearest(9999)).toBe(CURVE.length - 1);
  });

  it("leaves out an ideal that is not known, and holds a curve of nothing but zeros", () => {
    const flat = CURVE.map((point) => ({ ...point, maxMm: 0, meanMm: 0, idealMm: null }));
    const model = chartModel({ ...bite, curve: flat, cleanMPerS: null }, "mm", SIZE);
    expect(model.curves.ideal).toBe("");
    expect(model.curves.deepest).not.toContain("NaN");
    expect(chartModel({ ...bite, curve: flat.slice(0, 1) }, "mm", SIZE).curves.deepest).not.toContain("NaN");
  });

  it("draws lines and the band as a library for charts does", () => {
    const model = chartModel(bite, "mm", SIZE);
    const numbers = (path: string | null) => (path?.match(/-?[\d.]+/g) ?? []).map(Number);
    const expectSame = (path: string, peer: string | null) => {
      const [own, its] = [numbers(path), numbers(peer)];
      expect(own).toHaveLength(its.length);
      for (const [i, value] of own.entries()) expect(Math.abs(value - (its[i] ?? 0))).toBeLessThan(0.006);
    };
    const y = (depthMm: number) => model.yOf(depthMm);
    expectSame(model.curves.mean, line<BitePoint>(model.xOf, ({ meanMm }) => y(meanMm))(CURVE));
    expectSame(
      model.band,
      area<BitePoint>(
        model.xOf,
        ({ tenthMm }) => y(tenthMm),
        ({ ninetiethMm }) => y(ninetiethMm),
      )(CURVE),
    );
  });

  it("marks the speed up to which only teeth strike where it is another than the clean one", () => {
    const { left, right, teethOnlyAt } = chartModel(bite, "mm", SIZE);
    expect(teethOnlyAt).toBeCloseTo(left + ((4.2 - 0.5) / 5.5) * (right - left), 6);
    expect(chartModel({ ...bite, teethOnlyMPerS: 3.1 }, "mm", SIZE).teethOnlyAt).toBeNull();
    expect(chartModel({ ...bite, teethOnlyMPerS: null }, "mm", SIZE).teethOnlyAt).toBeNull();
  });

  it("has cells in the reader's units", () => {
    const shares = { squareShare: 0.875, toothShare: 0.95, passedShare: 0 };
    const depths = { maxMm: 25.4, meanMm: 12.7, tenthMm: 2.54, ninetiethMm: 20.32, idealMm: null };
    const point = { closingMPerS: 3, ...depths, ...shares };
    expect(biteCells(point, "mm")).toEqual(["3", "25.4", "12.7", "2.54 – 20.32", "–", "88 %", "95 %"]);
    expect(biteCells(point, "in")).toEqual(["6.711", "1", "0.5", "0.1 – 0.8", "–", "88 %", "95 %"]);
  });
});

describe("the bite in words", () => {
  it("says what it is against, and on which line", () => {
    const text = (kind: "edge" | "face" | "round", radiusMm: number, offsetMm: number) =>
      targetText({ kind, radiusMm, offsetMm }, "mm", PREVIEW_STRINGS);
    expect(text("edge", 0, 0)).toBe("Against an edge.");
    expect(text("face", 0, 7)).toBe("Against a flat face.");
    expect(text("round", 5, 12)).toBe(
      "Against a rounded edge of radius 5 mm, 12 mm off the axis, on the side to which the struck part of the bar moves.",
    );
    expect(text("edge", 0, -3)).toBe(
      "Against an edge, 3 mm off the axis, on the side from which the struck part of the bar comes.",
    );
  });

  it("says up to where the strikes are what they should be", () => {
    const text = (cleanMPerS: number | null, teethOnlyMPerS: number | null) =>
      limitsText({ ...BITE, cleanMPerS, teethOnlyMPerS }, "mm", PREVIEW_STRINGS);
    expect(text(3.1, 4.2)).toBe("Clean bite up to 3.1 m/s. Only teeth strike up to 4.2 m/s.");
    expect(text(3.1, 3.1)).toBe("Clean bite up to 3.1 m/s.");
    expect(text(0, null)).toBe("Clean bite at no speed studied. Only teeth strike, at every speed studied.");
    expect(text(9, 11)).toBe("Clean bite at every speed studied.");
    expect(text(0, 0.2)).toBe(
      "Clean bite at no speed studied. Something else than teeth strikes at every speed studied.",
    );
  });

  it("counts what passes where something does", () => {
    const [point] = CURVE;
    const text = (passedShare: number) =>
      point ? biteSentence({ ...point, passedShare }, "mm", PREVIEW_STRINGS) : "";
    expect(text(0)).not.toContain("pass");
    expect(text(0.25)).toMatch(/ on a tooth, 25 % pass and meet nothing$/);
  });
});

describe("the state of the page", () => {
  const start = { ...firstState(null), viewport: fittedTo([0, 0, 10, 10], SIZE) };
  const shown = withView(start, madeUpView({ version: 5 }), "mm");

  it("drops a view older than the one shown, and takes one as old or newer", () => {
    expect(shown && withView(shown, madeUpView({ version: 4 }), "mm")).toBeNull();
    expect(
      shown && withView(shown, madeUpView({ version: 5, variant: "long tail" }), "mm")?.view?.variant,
    ).toBe("long tail");
    expect(shown && withView(shown, madeUpView({ version: 6 }), "mm")?.view?.version).toBe(6);
  });

  it("keeps zoom and pan on an update, and lets another document start with its own", () => {
    const next = shown && withView(shown, madeUpView({ version: 6 }), "mm");
    expect(next?.viewport).toBe(start.viewport);
    const other =
      shown && withView(shown, madeUpView({ version: 1, documentUri: "file:///other.bar" }), "mm");
    expect(other?.viewport).toBeNull();
    expect(other?.view?.version).toBe(1);
  });

  it("keeps the reader's units until the host asks for others", () => {
    const chosen = shown && { ...shown, units: "in" as const };
    const same = chosen && withView(chosen, madeUpView({ version: 6 }), "mm");
    expect(same?.units).toBe("in");
    expect(same && withView({ ...same, units: "mm" }, madeUpView({ version: 7 }), "in")?.units).toBe("in");
  });

  it("ends a move with the next version of the text, not before", () => {
    const pendingMove = { request: 1, version: 5, handle: 0, to: { x: 1, y: 1 } };
    const moving = shown && { ...shown, pendingMove };
    expect(moving && withView(moving, madeUpView({ version: 5 }), "mm")?.pendingMove).toEqual(pendingMove);
    expect(moving && withView(moving, madeUpView({ version: 6 }), "mm")?.pendingMove).toBeNull();
  });

  it("comes back from what was saved", () => {
    const saved = shown && savedState({ ...shown, units: "in", openSections: ["spin"] });
    expect(saved?.documentUri).toBe("file:///arena/wattlebird.bar");
    const again = firstState(saved ?? null);
    expect(again).toMatchObject({
      units: "in",
      viewport: start.viewport,
      openSections: ["spin"],
      view: null,
    });
  });
});

describe("texts", () => {
  it("take values at their places, signs of patterns among them", () => {
    expect(fill("{1} of {0}", "a$&", 2)).toBe("2 of a$&");
    expect(fill("{0} {1}", "x")).toBe("x {1}");
  });

  it("are replaced by a translation key by key, and by nothing else", () => {
    const texts = translated({ fit: "Einpassen", nobody: "x", zoomIn: 7, __proto__: null });
    expect(texts.fit).toBe("Einpassen");
    expect(texts.zoomIn).toBe(PREVIEW_STRINGS.zoomIn);
    expect(Object.keys(texts)).toEqual(Object.keys(PREVIEW_STRINGS));
    expect(translated("nothing")).toBe(PREVIEW_STRINGS);
  });
});

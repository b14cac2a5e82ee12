import { describe, expect, it } from "vitest";
import { isHostMessage } from "../../extension/preview/messages.ts";
import { drawingAhead } from "../../extension/preview/model.ts";
import { firstState } from "../../extension/preview/page/page-state.ts";
import { shownStrikes } from "../../extension/preview/page/strikes/shown-strikes.ts";
import type { View } from "../../extension/preview/protocol.ts";
import { CAUTIONS } from "../../geometry/files/cautions.ts";
import { drawingOfView } from "./made-up-view.ts";
import { sampleNames, sampleText, showText } from "./sample-view.ts";
import { ONE_TOOTH, TWO_TOOTH } from "./texts.ts";

const SAMPLES = sampleNames();

function replaced(text: string, from: string, to: string): string {
  expect(text).toContain(from);
  return text.replace(from, to);
}

describe("the view of a sample", () => {
  it.each(SAMPLES)("is a whole message with a drawing: %s", (name) => {
    const { view } = showText(sampleText(name)).output;
    expect(isHostMessage({ type: "view", view, units: "mm" })).toBe(true);
    expect(view.stale).toBe(false);
    expect(view.drawing?.loops[0]?.kind).toBe("outer");
    expect(view.cautions).toEqual(CAUTIONS);
  });

  it("survives the way through the wire unchanged", () => {
    const { view } = showText(TWO_TOOTH).output;
    expect(structuredClone(view)).toEqual(view);
    expect(JSON.parse(JSON.stringify(view))).toEqual(view);
  });

  it("has the tips on the tip circle and the size of the bar", () => {
    const drawing = showText(TWO_TOOTH).output.view.drawing;
    expect(drawing?.maxRadiusMm).toBeCloseTo(130, 9);
    expect(drawing?.tips).toHaveLength(2);
    for (const tip of drawing?.tips ?? []) expect(Math.hypot(tip.x, tip.y)).toBeCloseTo(130, 9);
    expect(drawing?.boundsMm[2]).toBeCloseTo(130, 9);
    expect(drawing?.direction).toBe("ccw");
  });

  it("knows a balanced bar, and how far an unbalanced one is from its grade", () => {
    expect(showText(TWO_TOOTH).output.view.drawing).toMatchObject({ balanced: true, imbalanceDeg: null });
    const drawing = showText(replaced(ONE_TOOTH, "let tail = 84 mm", "let tail = 70 mm")).output.view.drawing;
    const { chosen } = showText(replaced(ONE_TOOTH, "let tail = 84 mm", "let tail = 70 mm"));
    expect(chosen.figures.mass["balanceGrade"]).toBeGreaterThan(16);
    expect(drawing?.balanced).toBe(false);
    // G16 is required there.
    expect(drawing?.imbalanceShare).toBeCloseTo(Number(chosen.figures.mass["balanceGrade"]) / 16, 9);
  });

  it("calls finely balanced what balancing by lets would leave as it is: G6.3, or the required grade where finer", () => {
    const limpet = sampleText("brass-limpet-one-tooth");
    const fine = (text: string) => showText(text).output.view.drawing?.finelyBalanced;
    // Its residual is G2.4 at 4800 rpm; a tail a tenth of a millimetre off makes G29.
    expect(fine(limpet)).toBe(true);
    expect(fine(replaced(limpet, "tail = 89.77 mm", "tail = 89.67 mm"))).toBe(false);
    expect(fine(replaced(limpet, "balance <= G16", "balance <= G1"))).toBe(false);
  });

  it("measures against the expected grade where none is required, and says so when nothing is known", () => {
    const free = showText(replaced(ONE_TOOTH, "require balance <= G16", ""));
    expect(free.output.view.drawing?.imbalanceShare).toBeCloseTo(
      Number(free.chosen.figures.mass["balanceGrade"]) / free.chosen.assessment.settings.balanceGrade,
      9,
    );
    const still = showText(
      replaced(replaced(ONE_TOOTH, "require balance <= G16", ""), "spin 4800 rpm ccw", ""),
    );
    expect(still.output.view.drawing).toMatchObject({
      imbalanceShare: null,
      balanced: null,
      direction: null,
    });
  });

  it("carries the bite curve and the clean-bite speed as they are", () => {
    const { chosen, output } = showText(ONE_TOOTH);
    expect(output.view.bite?.cleanMPerS).toBe(chosen.assessment.bite?.clean.closingMPerS);
    expect(output.view.bite?.teethOnlyMPerS).toBe(chosen.assessment.bite?.teethOnly.closingMPerS);
    expect(output.view.bite?.curve).toHaveLength(8);
    for (const [index, point] of output.view.bite?.curve.entries() ?? [])
      expect(chosen.assessment.bite?.curve[index]).toMatchObject(point);
  });

  it("carries what the page needs to find the strikes itself, and none of them", () => {
    const text = replaced(ONE_TOOTH, "target edge", "target round 5 mm offset -12 mm");
    const { bite } = showText(replaced(text, "4800 rpm ccw", "4800 rpm cw")).output.view;
    expect(bite?.target).toEqual({ kind: "round", radiusMm: 5, offsetMm: -12 });
    expect(bite?.direction).toBe("cw");
    expect(bite?.radPerS).toBeCloseTo((4800 * 2 * Math.PI) / 60, 9);
    expect(bite?.squareStrikeRad).toBeCloseTo((35 * Math.PI) / 180, 12);
    expect(JSON.stringify(bite).length).toBeLessThan(3000);
  });

  it.each(["edge", "edge offset 9 mm", "face", "round 5 mm offset -12 mm"])(
    "lets the page find the very strikes that the figures come from: %s",
    (target) => {
      const { chosen, output } = showText(replaced(ONE_TOOTH, "target edge", `target ${target}`));
      const sent: View = JSON.parse(JSON.stringify(output.view));
      const [first, last] = [chosen.assessment.bite?.curve[0], chosen.assessment.bite?.curve.at(-1)];
      for (const [reading, point] of [
        [0, first],
        [7, last],
      ] as const) {
        const shown = shownStrikes({ ...firstState(null), view: sent, reading });
        const share = (kinds: readonly string[]) =>
          (shown?.strikes ?? [])
            .filter(({ kind }) => kinds.includes(kind))
            .reduce((sum, strike) => sum + strike.share, 0);
        expect(share(["square"])).toBeCloseTo(point?.cleanShare ?? -1, 12);
        expect(share(["square", "skidding"])).toBeCloseTo(point?.toothShare ?? -1, 12);
        expect(Math.max(...(shown?.strikes ?? []).map(({ depthMm }) => depthMm.most))).toBe(point?.maxMm);
      }
    },
  );

  it("has no bite for a target that is not studied or without a spin", () => {
    expect(showText(replaced(ONE_TOOTH, "spin 4800 rpm ccw", "")).output.view.bite).toBeNull();
  });
});

describe("variants", () => {
  it("are listed, and those of another shape drawn behind", () => {
    const { view } = showText(TWO_TOOTH).output;
    expect(view.variants).toEqual(["practice speed", "long reach"]);
    // The one that only spins slower would hide behind the bar.
    expect(view.ghosts.map(({ variant }) => variant)).toEqual(["long reach"]);
  });

  it("put the bar as written behind the one that is chosen", () => {
    const { view } = showText(TWO_TOOTH, { variant: "long reach" }).output;
    expect(view.variant).toBe("long reach");
    expect(view.drawing?.maxRadiusMm).toBeCloseTo(142, 9);
    // Once: the practice speed has the same shape as the bar as written.
    expect(view.ghosts.map(({ variant }) => variant)).toEqual([null]);
  });
});

describe("a broken text", () => {
  const half = replaced(TWO_TOOTH, "line (-reach, 0 mm)", "line (-reach, ");

  it("shows the last good drawing with its own figures, marked as stale", () => {
    const good = showText(TWO_TOOTH);
    const { view, lastGood } = showText(half, { lastGood: good.output.lastGood, version: 2 }).output;
    expect(view.stale).toBe(true);
    expect(view.version).toBe(2);
    expect(view.drawing?.loops).toEqual(good.output.view.drawing?.loops);
    expect(view.reports).toEqual(good.output.view.reports);
    expect(view.bite).toEqual(good.output.view.bite);
    expect(view.problems.map(({ code }) => code)).toContain("missing-part");
    expect(lastGood).toBe(good.output.lastGood);
    expect(isHostMessage({ type: "view", view, units: "mm" })).toBe(true);
  });

  it("lets no point be dragged there: the places in the text have moved", () => {
    const good = showText(TWO_TOOTH).output;
    expect(good.view.drawing?.handles.length).toBeGreaterThan(0);
    expect(showText(half, { lastGood: good.lastGood }).output.view.drawing?.handles).toEqual([]);
  });

  it("shows nothing, and is not stale, where nothing has worked yet", () => {
    const { view, lastGood } = showText(half).output;
    expect(view).toMatchObject({ stale: false, drawing: null });
    expect(lastGood).toBeNull();
  });

  it("shows no drawing of another variant", () => {
    const { lastGood } = showText(TWO_TOOTH, { variant: "long reach" }).output;
    expect(showText(half, { lastGood }).output.view).toMatchObject({ stale: false, drawing: null });
  });

  it("is live again with the first text that works", () => {
    const { lastGood } = showText(TWO_TOOTH).output;
    const broken = showText(half, { lastGood }).output;
    const mended = showText(replaced(TWO_TOOTH, "130 mm", "135 mm"), { lastGood: broken.lastGood }).output;
    expect(mended.view.stale).toBe(false);
    expect(mended.view.drawing?.maxRadiusMm).toBeCloseTo(135, 9);
    expect(mended.lastGood?.drawing?.maxRadiusMm).toBeCloseTo(135, 9);
  });

  it.each<[string, string, string]>([
    ["a requirement half typed", "require mass <= 1.4 kg", "require mass <= "],
    ["a spin half typed", "spin 4200 rpm ccw", "spin "],
    ["no thickness", "thickness 12 mm", ""],
    ["a requirement that fails", "require mass <= 1.4 kg", "require mass <= 0.4 kg"],
    ["a hole outside", "hole (42 mm, 0 mm)", "hole (42 mm, 60 mm)"],
    ["a loop that crosses itself", "line (14 mm - reach, waist) round 4 mm", "line (14 mm - reach, -waist)"],
  ])("is not one whose shape stands: %s", (_, from, to) => {
    const { lastGood } = showText(TWO_TOOTH).output;
    const { view } = showText(replaced(TWO_TOOTH, from, to), { lastGood }).output;
    expect(view.stale).toBe(false);
    expect(view.problems.length).toBeGreaterThan(0);
  });

  it.each<[string, string, string]>([
    ["a word that is none", "line (-reach, 0 mm)", "lin (-reach, 0 mm)"],
    ["a name that nobody defines", "let waist = 26 mm", "let waits = 26 mm"],
    ["a fillet that does not fit", "round 8 mm", "round 80 mm"],
    ["a hole half typed", "hole (42 mm, 0 mm) diameter 12.5 mm", "hole (42 mm, "],
    ["nothing at all", TWO_TOOTH, ""],
  ])("is one whose shape does not: %s", (_, from, to) => {
    const { lastGood } = showText(TWO_TOOTH).output;
    expect(showText(replaced(TWO_TOOTH, from, to), { lastGood }).output.view.stale).toBe(true);
  });
});

describe("the place of a problem", () => {
  function placeOf(code: string, text: string) {
    const problem = showText(text).output.view.problems.find((candidate) => candidate.code === code);
    expect(problem, code).toBeDefined();
    return problem;
  }

  it("is the middle of the hole it is told at", () => {
    const problem = placeOf("hole-outside", replaced(TWO_TOOTH, "hole (42 mm, 0 mm)", "hole (42 mm, 60 mm)"));
    expect(problem?.at?.x).toBeCloseTo(42, 9);
    expect(problem?.at?.y).toBeCloseTo(60, 9);
  });

  it("is the crossing of a loop that crosses itself", () => {
    const text = replaced(
      TWO_TOOTH,
      "line (14 mm - reach, waist) round 4 mm",
      "line (14 mm - reach, -waist)",
    );
    const problem = placeOf("loop-crosses-itself", text);
    // The message names one of the two places; the other is its copy, half a turn on.
    const [, x, y] = /\((-?[\d.]+) mm, (-?[\d.]+) mm\)/.exec(problem?.message ?? "") ?? [];
    const sign = Math.sign((problem?.at?.x ?? 0) / Number(x));
    expect(sign * (problem?.at?.x ?? 0)).toBeCloseTo(Number(x), 2);
    expect(sign * (problem?.at?.y ?? 0)).toBeCloseTo(Number(y), 2);
  });

  it("is the spin axis for a bore that is missing, the centroid for an imbalance", () => {
    expect(placeOf("bore-missing", replaced(TWO_TOOTH, "bore 25 mm", ""))?.at).toEqual({ x: 0, y: 0 });
    const light = showText(replaced(TWO_TOOTH, "hole (42 mm, 0 mm)", "hole (36 mm, 0 mm)")).output.view;
    const problem = light.problems.find(({ code }) => code === "imbalance-over-grade");
    expect(problem?.at).toEqual(light.drawing?.centroid);
    expect(problem?.at).not.toBeNull();
  });

  it("is nowhere for what is no part of the shape, and each has its line", () => {
    const problem = placeOf("mass-over-class", replaced(TWO_TOOTH, "<= 1.4 kg", "<= 0.4 kg"));
    expect(problem?.at).toBeNull();
    const line = TWO_TOOTH.split("\n").findIndex((text) => text.startsWith("require mass")) + 1;
    expect(problem?.line).toBe(line);
  });
});

describe("the drawing in words", () => {
  it("names the bar, its size, holes, mass, balance with its heavy side, speed and bite", () => {
    const { view } = showText(replaced(ONE_TOOTH, "let tail = 84 mm", "let tail = 70 mm")).output;
    const description = view.description ?? { mm: "", in: "" };
    expect(description.mm).toMatch(/^Salt Kite: 10 mm plate · .*4800 rpm ccw\./);
    expect(description.mm).toMatch(
      /It measures [\d.]+ × [\d.]+ mm and reaches 125[\d.]* mm from the spin axis\./,
    );
    expect(description.mm).toContain("a bore of 22 mm and 2 holes");
    expect(description.mm).toMatch(/Mass [\d.]+ k?g\./);
    expect(description.mm).toMatch(/Balance G[\d.]+: imbalance [\d.]+ g·mm, heavy side at [\d.]+°\./);
    expect(description.mm).toMatch(/Tip speed [\d.]+ m\/s, energy [\d.]+ J\./);
    expect(description.mm).toMatch(/Clean bite up to [\d.]+ m\/s\. Deepest bite [\d.]+ mm at 6 m\/s\./);
    expect(description.in).toMatch(/Mass [\d.]+ lb\./);
    expect(description.in).toContain("a bore of 0.86614 in");
  });

  it("calls a balanced bar balanced, and leaves out what is not known", () => {
    expect(showText(TWO_TOOTH).output.view.description?.mm).toContain("It is balanced.");
    const bare = "outline { from (10 mm, 10 mm) line (-10 mm, 10 mm) line (0 mm, -12 mm) close }";
    const words = showText(bare).output.view.description?.mm ?? "";
    expect(words).toContain("Unnamed bar.");
    expect(words).toContain("3 lines and 0 arcs");
    expect(words).not.toMatch(/Mass|Balance|speed|bite|hole/);
  });

  it("names the variant", () => {
    const { view } = showText(TWO_TOOTH, { variant: "long reach" }).output;
    expect(view.description?.mm).toContain("variant long reach");
  });
});

describe("the drawing that is sent ahead", () => {
  it("is that of the view", () => {
    const { chosen, output } = showText(ONE_TOOTH);
    expect(drawingAhead(chosen)).toEqual(drawingOfView(output.view).ahead);
  });

  it("is none for a broken text: the last good drawing stays, marked as stale", () => {
    expect(
      drawingAhead(showText(replaced(ONE_TOOTH, "let tail = 84 mm", "let tail = 84")).chosen),
    ).toBeNull();
    expect(drawingAhead(showText('bar "Nothing yet"').chosen)).toBeNull();
  });
});

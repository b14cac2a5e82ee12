import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toSvg } from "../../geometry/files/svg.ts";
import { figuresOf } from "../readers/curve-figures.ts";
import { circle, outlineOf, rectangle } from "../support/loops.ts";
import { HAND_MADE, RANDOM } from "./cut-outlines.ts";
import { curveOf, parseXml } from "./svg-reading.ts";

const SEED = 20_260_104;
const CASES = [...HAND_MADE, ...RANDOM];
const plate = outlineOf(rectangle(-100, -20, 60, 20), circle(10));

function read(svg: string) {
  const root = parseXml(svg);
  const layers = new Map(
    root.children.filter(({ name }) => name === "g").map((g) => [g.attributes["id"] ?? "", g]),
  );
  const curves = (id: string) => (layers.get(id)?.children ?? []).map((child) => curveOf(child, id));
  return { root, layers, outer: curves("CUT_OUTER"), inner: curves("CUT_INNER") };
}

const parseLength = (units: string) => (text: string | undefined) =>
  text?.endsWith(units) ? Number(text.slice(0, -units.length)) : Number.NaN;

describe.each([
  { units: "mm" as const, scale: 1 },
  { units: "in" as const, scale: 25.4 },
])("an SVG in $units", ({ units, scale }) => {
  it.each(CASES)(
    "of $name is well-formed, of true size, and encloses the model's area",
    ({ outline, expected }) => {
      const { root, layers, outer, inner } = read(toSvg(outline, { units, name: "Wattlebird" }));
      const [x0, y0, x1, y1] = expected.boundsMm;
      const size = Math.hypot(x1 - x0, y1 - y0);
      const near = (actual: number | undefined, wanted: number, slack: number) =>
        expect(Math.abs((actual ?? Number.NaN) - wanted), `${actual} for ${wanted}`).toBeLessThanOrEqual(
          slack,
        );
      expect([outer.length, inner.length]).toEqual([1, outline.inner.length]);
      const figures = figuresOf(outer, inner);
      near(figures.area * scale ** 2, expected.areaMm2, 1e-9 * expected.areaMm2);
      // The cross on the spin axis says where the model's origin is on the page.
      const [across, up] = layers.get("MARK")?.children ?? [];
      const axis = { x: Number(up?.attributes["x1"]) * scale, y: -Number(across?.attributes["y1"]) * scale };
      near(figures.centroid[0] * scale - axis.x, expected.centroidMm[0], 1e-9 * size);
      near(figures.centroid[1] * scale - axis.y, expected.centroidMm[1], 1e-9 * size);
      const arm = {
        x: Number(across?.attributes["x2"]) * scale - axis.x,
        y: axis.y + Number(up?.attributes["y1"]) * scale,
      };
      const [width, height] = [root.attributes["width"], root.attributes["height"]].map(parseLength(units));
      near((width ?? Number.NaN) * scale, Math.max(x1, arm.x) - Math.min(x0, -arm.x), 1e-9 * size);
      near((height ?? Number.NaN) * scale, Math.max(y1, arm.y) - Math.min(y0, -arm.y), 1e-9 * size);
    },
  );

  it("is one unit a unit, with hairlines, without fill, transforms, classes or styles", () => {
    const svg = toSvg(plate, { units, name: "Wattlebird" });
    const { root, layers } = read(svg);
    const { width, height, viewBox } = root.attributes;
    expect(width).toMatch(new RegExp(`^[\\d.]+${units}$`));
    expect(viewBox).toBe(`0 0 ${Number.parseFloat(width ?? "")} ${Number.parseFloat(height ?? "")}`);
    expect([...layers.keys()]).toEqual(["CUT_OUTER", "CUT_INNER", "MARK"]);
    for (const layer of layers.values()) {
      expect(layer.attributes["fill"]).toBe("none");
      expect(Number(layer.attributes["stroke-width"]) * scale).toBeCloseTo(0.0254, 9);
    }
    expect(svg).not.toMatch(/transform|class=|style|<script|href/);
    expect(svg).toContain(`one unit is 1 ${units}`);
  });
});

describe("the SVG", () => {
  it("keeps y up: what is above the axis in the model is nearer the top of the page", () => {
    const { root, layers } = read(
      toSvg(outlineOf(rectangle(-50, -20, 50, 30), circle(3, [20, 25])), { units: "mm", name: "W" }),
    );
    const [hole] = layers.get("CUT_INNER")?.children ?? [];
    expect(root.attributes["viewBox"]).toBe("0 0 100 50");
    expect(hole?.attributes).toEqual({ cx: "70", cy: "5", r: "3" });
  });

  it("marks the spin axis with a cross and the part with its name", () => {
    const { layers } = read(toSvg(plate, { units: "mm", name: "Wattlebird" }));
    const [across, up, text] = layers.get("MARK")?.children ?? [];
    expect(across?.attributes).toEqual({ x1: "95", y1: "20", x2: "105", y2: "20" });
    expect(up?.attributes).toEqual({ x1: "100", y1: "25", x2: "100", y2: "15" });
    expect(text?.text).toBe("Wattlebird");
  });

  it("has no empty layer", () => {
    expect([...read(toSvg(outlineOf(circle(20)), { units: "mm", name: "W" })).layers.keys()]).toEqual([
      "CUT_OUTER",
      "MARK",
    ]);
  });

  it("leaves out the leftovers of rounding", () => {
    const leftovers = HAND_MADE.find(({ name }) => name === "a plate with leftovers of rounding");
    if (!leftovers) throw new Error("the case is gone");
    const [outer] = read(toSvg(leftovers.outline, { units: "mm", name: "W" })).outer;
    expect(outer?.kind === "polyline" && outer.vertices).toHaveLength(4);
  });

  it("takes any name as it is, but for what XML does not allow", () => {
    const { root } = read(toSvg(plate, { units: "mm", name: 'A & B <script> "旋風" \u0000\ud800😀' }));
    expect(root.children[0]?.text).toBe('A & B <script> "旋風" 😀');
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (name) => {
        expect(read(toSvg(plate, { units: "mm", name })).root.name).toBe("svg");
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it("is called something even without a name", () => {
    const { root, layers } = read(toSvg(plate, { units: "mm", name: "  " }));
    expect(root.children[0]?.text).toBe("unnamed bar");
    expect(layers.get("MARK")?.children.at(-1)?.text).toBe("unnamed bar");
  });

  it("has the same bytes each time", () => {
    const once = toSvg(plate, { units: "mm", name: "W" });
    expect(toSvg(plate, { units: "mm", name: "W" })).toBe(once);
  });
});

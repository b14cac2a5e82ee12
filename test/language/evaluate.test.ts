import { describe, expect, it } from "vitest";
import { evaluate, variantNames } from "../../geometry/language/evaluate.ts";
import { parse } from "../../geometry/language/parse.ts";
import type { Expression, OutlineStatement } from "../../geometry/language/tree.ts";
import { visitExpressions } from "../../geometry/language/tree-walk.ts";
import { completed, designOf, FIGURES, problemsOf } from "./marked-text.ts";
import { PROMISED } from "./promised-text.ts";

/** The points of the outline or of a cutout, `close` left out. */
function pointsOf(fragment: string, variant: string | null = null) {
  const { outline } = designOf(completed(fragment), variant);
  return (
    outline?.path.steps.flatMap((step) => (step.kind === "close" ? [] : [[step.to.x, step.to.y]])) ?? null
  );
}

describe("the sample of the language", () => {
  const design = designOf(PROMISED);

  it("has no problems, as it stands and in its variant", () => {
    expect(problemsOf(PROMISED)).toEqual([]);
    expect(problemsOf(PROMISED, "long tail")).toEqual([]);
  });
  it("has its settings in the units of the design", () => {
    expect(design.name).toBe("Wattlebird one-tooth");
    expect(design.variant).toBe(null);
    expect(design.thicknessMm?.value).toBe(12);
    expect(design.thicknessMm?.unit).toBe("mm");
    expect(design.material?.name).toBe("wear_steel_450");
    expect(design.densityKgPerM3).toBe(7850);
    expect(design.yieldMPa).toBe(1200);
    expect(design.spin).toEqual({ radPerS: (4200 * 2 * Math.PI) / 60, rpm: 4200, direction: "ccw" });
    expect(design.approach).toEqual({ fromMPerS: 0.5, toMPerS: 6 });
    expect(design.target).toEqual({ kind: "edge", radiusMm: 0, offsetMm: 0 });
  });
  it("has the outline with every point in place", () => {
    const steps = design.outline?.path.steps ?? [];
    expect(steps.map(({ kind }) => kind).join(" ")).toBe("from line arc line line line arc close");
    expect(steps[1]).toMatchObject({ to: { x: 124, y: -22 }, corner: null });
    expect(steps[2]).toMatchObject({
      to: { x: 20, y: -24 },
      shape: { by: "radius", radiusMm: { value: 160, unit: "mm" }, turning: "right", long: false },
    });
    expect(steps[3]).toMatchObject({
      to: { x: -96, y: -24 },
      corner: { kind: "round", sizeMm: { value: 14 } },
    });
    expect(steps[6]).toMatchObject({ shape: { by: "through", through: { x: 70, y: 26 } } });
  });
  it("has the bore first and the ring spelled out", () => {
    expect(design.holes.map(({ kind }) => kind).join(" ")).toBe("bore hole hole hole hole hole slot cutout");
    const ring = design.holes.slice(2, 6).flatMap((hole) => (hole.kind === "hole" ? [hole.centre] : []));
    const side = 40 * Math.SQRT1_2;
    for (const [index, [x, y]] of [
      [1, 1],
      [-1, 1],
      [-1, -1],
      [1, -1],
    ].entries()) {
      expect(ring[index]?.x).toBeCloseTo((x ?? 0) * side, 12);
      expect(ring[index]?.y).toBeCloseTo((y ?? 0) * side, 12);
    }
  });
  it("has its requirements in base units", () => {
    expect(design.requirements.map(({ figure, relation, limit }) => [figure, relation, limit.value])).toEqual(
      [
        ["mass", "<=", 1.6],
        ["balance", "<=", 40],
      ],
    );
  });
  it("has its aim: goals, limits in base units, and names", () => {
    const { aim } = designOf(
      completed(
        "let a = 5 mm from 4 mm to 6 mm\naim most bite at 4 m/s and least mass keeping balance <= G16, mass >= 200 g by a",
      ),
    );
    expect(aim?.goals.map(({ sense, figure, atMPerS }) => [sense, figure, atMPerS])).toEqual([
      ["most", "bite", 4],
      ["least", "mass", null],
    ]);
    expect(aim?.keeping.map(({ figure, relation, limit }) => [figure, relation, limit.value])).toEqual([
      ["balance", "<=", 16],
      ["mass", ">=", 0.2],
    ]);
    expect(aim?.names).toEqual(["a"]);
    expect(designOf(completed("let a = 5 mm\naim least mass by a")).aim).toBeNull();
  });
  it("changes by its variant what the variant says", () => {
    const variant = designOf(PROMISED, "long tail");
    expect(variant.variant).toBe("long tail");
    expect(variant.lets.map(({ name, value }) => [name, value?.value])).toEqual([
      ["reach", 130],
      ["tail", 110],
      ["waist", 24],
    ]);
    expect(variant.outline?.path.steps[3]).toMatchObject({ to: { x: -110, y: -24 } });
    expect(variant.spin).toEqual(design.spin);
    expect(variantNames(parse(PROMISED).tree)).toEqual(["long tail"]);
  });
});

describe("points", () => {
  it("are relative to the last point where `by` says so", () => {
    expect(
      pointsOf("outline { from (60 mm, 0 mm) line by (-10 mm, 20 mm) line by (0 mm, 5 mm) close }"),
    ).toEqual([
      [60, 0],
      [50, 20],
      [50, 25],
    ]);
  });
  it("count from the last point in arcs too, and from the first after `close`", () => {
    const { outline } = designOf(
      completed(`outline { from (60 mm, 0 mm) line (40 mm, 10 mm)
        arc by (-20 mm, 0 mm) through by (-10 mm, 5 mm)
        arc by (-20 mm, 0 mm) about by (-10 mm, 0 mm) turning left
        close }`),
    );
    expect(outline?.path.steps[2]).toMatchObject({
      to: { x: 20, y: 10 },
      shape: { through: { x: 30, y: 15 } },
    });
    expect(outline?.path.steps[3]).toMatchObject({
      to: { x: 0, y: 10 },
      shape: { centre: { x: 10, y: 10 } },
    });
  });
  it("may be polar, and quarter turns are exact", () => {
    expect(
      pointsOf("outline { from (60 mm @ 0 deg) line (60 mm @ 90 deg) line (60 mm @ 180 deg) close }"),
    ).toEqual([
      [60, 0],
      [0, 60],
      [-60, 0],
    ]);
  });
  it("keep every digit of a length", () => {
    expect(
      pointsOf("outline { from (1 in, 0.3 in) line (0.1 mm, 17.35 mm) line (3 cm, 1/3 * 1 mm) close }"),
    ).toEqual([
      [25.4, 7.62],
      [0.1, 17.35],
      [30, 1 / 3],
    ]);
  });
  it("of a slot's end may be relative to its start", () => {
    const { holes } = designOf(completed("slot (30 mm, 0 mm) to by (0 mm, 12 mm) width 8 mm"));
    expect(holes[1]).toMatchObject({ kind: "slot", from: { x: 30, y: 0 }, to: { x: 30, y: 12 } });
  });
});

describe("written units", () => {
  it.each([
    ["bore 0.75 in", "in"],
    ["bore (3/4) in", "in"],
    ["bore 2 cm", "cm"],
    ["bore 10 mm + 12 mm", null],
    ["let b = 22 mm\nbore b", null],
  ])("of %s is %s", (fragment, unit) => {
    const bore = designOf(completed(fragment)).holes[0];
    expect(bore?.kind === "bore" ? bore.diameterMm.unit : "none").toBe(unit);
  });
});

describe("what cannot be evaluated", () => {
  it("leaves the outline null and the rest in place, with only the root cause told", () => {
    const text = completed(
      "let a = 9 mm\noutline { from (nope, 0 mm) line by (a, a) arc by (3 mm, 0 mm) through by (1 mm, 1 mm) close }",
    );
    expect(problemsOf(text).map(({ code }) => code)).toEqual(["undefined-name"]);
    const design = designOf(text);
    expect(design.outline).toBe(null);
    expect(design.thicknessMm?.value).toBe(12);
    expect(design.holes).toHaveLength(1);
  });
  it("tells each root cause once, however often it is used", () => {
    const text = completed(
      "let a = 1 mm + nope\nlet b = a\nhole (a, b) diameter 15 mm\nhole (b, a) diameter 15 mm",
    );
    expect(problemsOf(text).map(({ code }) => code)).toEqual(["undefined-name"]);
    expect(designOf(text).holes).toHaveLength(1);
    expect(designOf(text).lets.map(({ value }) => value)).toEqual([null, null]);
  });
  it("leaves the density null where it is written wrongly, and does not fall back on the material's", () => {
    expect(designOf(completed("material pla\ndensity 0 kg/m^3")).densityKgPerM3).toBe(null);
    expect(designOf(completed("material pla\ndensity 1300 kg/m^3")).densityKgPerM3).toBe(1300);
    expect(designOf(completed("density 7850 kg/m^3"))).toMatchObject({ material: null, yieldMPa: null });
  });
  it("of a target is an edge", () => {
    expect(designOf(completed("target round 3 kg")).target).toEqual({
      kind: "edge",
      radiusMm: 0,
      offsetMm: 0,
    });
    expect(designOf(completed("target round 5 mm offset -12 mm")).target).toEqual({
      kind: "round",
      radiusMm: 5,
      offsetMm: -12,
    });
  });
});

describe("a let that is used on a line that could not be read", () => {
  it("is not called unused", () => {
    for (const line of [
      "hole (waist, 3 mm diameter 5 mm",
      "hole waist 5 5",
      "thickness 12 mm waist",
      "hoole (3 mm, waist) )",
    ]) {
      const codes = problemsOf(completed(`let waist = 24 mm\n${line}`)).map(({ code }) => code);
      expect(codes.length).toBeGreaterThan(0);
      expect(codes, line).not.toContain("unused-name");
    }
  });
  it("is called unused where only a comment or a name in quotes has it", () => {
    const codes = problemsOf(completed('bar "waist"\nlet waist = 24 mm # waist')).map(({ code }) => code);
    expect(codes).toEqual(["unused-name"]);
  });
});

describe("variants", () => {
  const text = completed(`thickness 12 mm
bore 20 mm
let tail = 96 mm from 80 mm to 120 mm
hole (tail, tail/2) diameter 15 mm
material wear_steel_450
density 7900 kg/m^3
spin 4200 rpm ccw
require mass <= 1.6 kg
require bite at 3 m/s >= 5 mm
variant "light" {
  tail = 90 mm
  material al_7075_t6
  thickness 10 mm
  bore 18 mm
  spin 6000 rpm cw
  approach 1 m/s to 5 m/s
  target face
}
variant "heavy" { density 8000 kg/m^3 }
variant "light" { tail = 1 kg }`);

  it("override lets and settings", () => {
    expect(designOf(text, "light")).toMatchObject({
      variant: "light",
      thicknessMm: { value: 10 },
      material: { name: "al_7075_t6" },
      spin: { rpm: 6000, direction: "cw" },
      approach: { fromMPerS: 1, toMPerS: 5 },
      target: { kind: "face" },
      lets: [{ name: "tail", value: { value: 90 }, bounds: { from: { value: 80 }, to: { value: 120 } } }],
      holes: [
        { kind: "bore", diameterMm: { value: 18 } },
        { kind: "hole", centre: { x: 90, y: 45 } },
      ],
    });
  });
  it("take the density along with the material", () => {
    expect(designOf(text).densityKgPerM3).toBe(7900);
    expect(designOf(text, "light").densityKgPerM3).toBe(2810);
    expect(designOf(text, "heavy").densityKgPerM3).toBe(8000);
  });
  it("are named in order, each once, and an unknown one is the bar as it stands", () => {
    const { tree } = parse(text);
    expect(variantNames(tree)).toEqual(["light", "heavy"]);
    expect(designOf(text, "no such variant").holes).toEqual(designOf(text).holes);
  });
  it("report the file's own problems all alike", () => {
    const broken = text.replace("hole (tail", "hole (0");
    const own = problemsOf(broken);
    expect(own.map(({ code }) => code)).toEqual(["missing-unit", "duplicate-name"]);
    expect(problemsOf(broken, "light")).toEqual(own);
    expect(problemsOf(broken, "heavy")).toEqual(own);
    expect(problemsOf(broken, "light")).toEqual(problemsOf(broken, "light"));
  });
  it("report a wrong let of the file even where they override it", () => {
    const broken = completed('let a = 1 mm + 2 kg\ntarget edge offset a\nvariant "v" { a = 3 mm }');
    expect(problemsOf(broken, "v")).toEqual(problemsOf(broken));
    expect(designOf(broken, "v").target.offsetMm).toBe(3);
  });
});

describe("requirements of a variant", () => {
  it("replace those on the same and add others", () => {
    const base = "require mass <= 1.6 kg\nrequire bite at 3 m/s >= 5 mm";
    const { tree } = parse(completed(`${base}\nvariant "v" { thickness 9 mm }`));
    const [first] = parse("require mass <= 1.5 kg").tree.statements;
    const [second] = parse("require bite at 4 m/s >= 5 mm").tree.statements;
    if (first === undefined || second === undefined) throw new Error("these are statements");
    const statements = tree.statements.map((statement) =>
      statement.kind === "variant" ? { ...statement, body: [first, second] } : statement,
    );
    const limits = (variant: string | null) =>
      evaluate({ ...tree, statements }, { variant, figures: FIGURES }).design.requirements.map(
        ({ figure, limit, atMPerS }) => [figure, limit.value, atMPerS],
      );
    expect(limits(null)).toEqual([
      ["mass", 1.6, null],
      ["bite", 5, 3],
    ]);
    expect(limits("v")).toEqual([
      ["bite", 5, 3],
      ["mass", 1.5, null],
      ["bite", 5, 4],
    ]);
  });
});

describe("quantityOf", () => {
  it("gives the value of every expression of a file, for the variant", () => {
    const { tree } = parse(PROMISED);
    for (const [variant, tail] of [
      [null, -96],
      ["long tail", -110],
    ] as const) {
      const { quantityOf } = evaluate(tree, { variant, figures: FIGURES });
      const missing: string[] = [];
      visitExpressions(tree, (expression) => {
        if (quantityOf(expression) === null)
          missing.push(PROMISED.slice(expression.range.start, expression.range.end));
      });
      expect(missing).toEqual([]);
      const outline = tree.statements.find(
        (statement): statement is OutlineStatement => statement.kind === "outline",
      );
      const step = outline?.path?.steps[3];
      const x = step?.kind === "line" ? step.to?.first : null;
      expect(x ? quantityOf(x)?.value : null).toBe(tail);
    }
  });
  it("is null for what has a problem, and reports nothing more", () => {
    const { tree } = parse("let a = 2 mm + nope * 3\n");
    const { quantityOf, problems } = evaluate(tree, { variant: null, figures: FIGURES });
    const before = problems.length;
    const values = new Map<string, number | null>();
    visitExpressions(tree, (expression: Expression) => {
      values.set(
        tree.text.slice(expression.range.start, expression.range.end),
        quantityOf(expression)?.value ?? null,
      );
    });
    expect(Object.fromEntries(values)).toEqual({
      "2 mm + nope * 3": null,
      "2 mm": 2,
      "nope * 3": null,
      nope: null,
      "3": 3,
    });
    expect(problems).toHaveLength(before);
  });
});

describe("large files", () => {
  it("evaluate a chain of ten thousand lets", () => {
    const lets = Array.from({ length: 10_000 }, (_, i) => `let a${i + 1} = a${i} + 1 mm`).reverse();
    const { tree } = parse(completed(`${lets.join("\n")}\nlet a0 = 1 mm\ntarget edge offset a10000`));
    const { design, problems } = evaluate(tree, { variant: null, figures: FIGURES });
    expect(problems).toEqual([]);
    expect(design.target.offsetMm).toBe(10_001);
  });
  it("name every member of a circle of a thousand", () => {
    const lets = Array.from({ length: 1000 }, (_, i) => `let a${i} = a${(i + 1) % 1000} + 1 mm`);
    const problems = problemsOf(completed(`${lets.join("\n")}\ntarget edge offset a7`));
    expect(problems.map(({ code }) => code)).toEqual(["cycle"]);
    for (let i = 0; i < 1000; i++) expect(problems[0]?.message).toContain(`'a${i}'`);
  });
  it("evaluate expressions as deep and as long as the parser lets them be", () => {
    const deep = `${"(".repeat(190)}1 mm${")".repeat(190)}`;
    expect(designOf(completed(`target edge offset ${deep}`)).target.offsetMm).toBe(1);
    expect(designOf(completed(`target edge offset ${"-".repeat(190)}1 mm`)).target.offsetMm).toBe(1);
    const long = Array.from({ length: 900 }, () => "1 mm").join(" + ");
    expect(designOf(completed(`target edge offset ${long}`)).target.offsetMm).toBe(900);
  });
  it("lean to the left as deep as you like", () => {
    const one: Expression = { kind: "number", value: 1, unit: null, range: { start: 0, end: 0 } };
    let sum: Expression = one;
    for (let i = 0; i < 200_000; i++) {
      sum = { kind: "binary", operator: "+", left: sum, right: one, range: { start: 0, end: 0 } };
    }
    const { quantityOf } = evaluate({ text: "", statements: [] }, { variant: null, figures: [] });
    expect(quantityOf(sum)?.value).toBe(200_001);
  });
});

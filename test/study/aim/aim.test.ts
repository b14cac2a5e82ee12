/** Aims on bars: answers that algebra on handbook formulas gives, limits kept in the changed text, what cannot be done. */
import { describe, expect, it } from "vitest";
import { analyse, checkSource } from "../../../geometry/analysis/analyse.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import { applyEdits } from "../../../geometry/language/apply-edits.ts";
import {
  type AimedBar,
  type AimOutcome,
  type AimRequest,
  aimAt,
  freeVariantName,
  searchAim,
  variantBlock,
} from "../../../geometry/study/aim/aim.ts";
import { MOVED_SAMPLES } from "./moved-samples.ts";

const DENSITY = 7850;
const THICKNESS_M = 0.005;
const BORE_M = 0.02;

/** A plate a × b with a hole in its middle; the handbook's polar moments are ab(a² + b²)/12 and πd⁴/32. */
const PLATE = `bar "plate"
thickness 5 mm
density ${DENSITY} kg/m^3
let long = 300 mm from 200 mm to 400 mm   # its length
let wide = 50 mm from 30 mm to 60 mm
outline {
  from (-long / 2, -wide / 2)
  line (long / 2, -wide / 2)
  line (long / 2, wide / 2)
  line (-long / 2, wide / 2)
  close
}
bore 20 mm
`;

const plateMassKg = (a: number, b: number) => DENSITY * THICKNESS_M * (a * b - (Math.PI * BORE_M ** 2) / 4);
const plateInertia = (a: number, b: number) =>
  DENSITY * THICKNESS_M * ((a * b * (a * a + b * b)) / 12 - (Math.PI * BORE_M ** 4) / 32);

/** A ring; the handbook's polar moment is π(R⁴ − r⁴)/2. */
const RING = `bar "ring"
thickness depth
density ${DENSITY} kg/m^3
let r = 90 mm from 70 mm to 100 mm
let hole_size = 60 mm from 30 mm to 170 mm
let depth = 8 mm from 4 mm to 10 mm
outline repeat 2 { from (r, 0 mm) arc (-r, 0 mm) about (0 mm, 0 mm) turning left }
bore hole_size
`;

function found(text: string, request: AimRequest): readonly AimedBar[] {
  const outcome = aimAt(readSource(text), request);
  if (outcome.status !== "found") throw new Error(`${outcome.status}: ${outcome.message}`);
  return outcome.bars;
}

/** A quick search finds these bars as well as any other. */
function best(text: string, aim: string, request: AimRequest = {}): AimedBar {
  const [bar] = found(text, { aim, effort: "quick", ...request });
  if (bar === undefined) throw new Error("no bar");
  return bar;
}

function numberOf({ lets }: AimedBar, name: string): number {
  return Number.parseFloat(lets.find((of) => of.name === name)?.to ?? "");
}

/** What the search itself reached, before the values were rounded. */
function exact(text: string, aim: string): { values: readonly number[]; goals: readonly number[] } {
  const steps = searchAim(readSource(text), { aim });
  let last = steps.next();
  let best = { values: [] as readonly number[], goals: [] as readonly number[] };
  while (last.done !== true) {
    const [first] = last.value.best();
    if (first?.isFeasible) best = first;
    last = steps.next();
  }
  return best;
}

describe("known answers", () => {
  it("most inertia of a plate within a mass: as long as may be, as wide as the mass allows", () => {
    const aim = "most inertia keeping mass <= 0.6 kg by long, wide";
    // By algebra: at a given area the moment grows with the length, so a = 400 mm and b from the mass.
    const b = (0.6 / (DENSITY * THICKNESS_M) + (Math.PI * BORE_M ** 2) / 4) / 0.4;
    const known = plateInertia(0.4, b);
    const reached = exact(PLATE, aim);
    expect(reached.values[0]).toBeCloseTo(400, 5);
    expect(reached.values[1]).toBeCloseTo(1000 * b, 5);
    expect(Math.abs((reached.goals[0] ?? 0) / known - 1)).toBeLessThan(1e-6);
    const bar = best(PLATE, aim);
    expect(Math.abs((bar.goals[0]?.after ?? 0) / known - 1)).toBeLessThan(1e-3);
    expect(bar.goals[0]?.before).toBeCloseTo(plateInertia(0.3, 0.05), 12);
    expect(bar.lets.map(({ name, to, reached: bound }) => [name, to, bound])).toEqual([
      ["long", "400 mm", "most"],
      ["wide", "39 mm", null],
    ]);
    expect(bar.limits).toMatchObject([
      { origin: "aim", relation: "<=", limit: 0.6, holds: true, isReached: true },
    ]);
  });

  it("least mass of a ring that has an inertia: as far out as may be", () => {
    // m = 2I/(R² + r²): R and r as large as they may be, and r⁴ = R⁴ − 2I/(πρt), so that t is the largest too.
    const inertia = 0.00728;
    const r = (0.1 ** 4 - (2 * inertia) / (Math.PI * DENSITY * 0.01)) ** (1 / 4);
    const known = (2 * inertia) / (0.1 ** 2 + r ** 2);
    const aim = `least mass keeping inertia >= ${inertia} kg*m^2 by r, hole_size, depth`;
    const reached = exact(RING, aim);
    expect(Math.abs((reached.goals[0] ?? 0) / known - 1)).toBeLessThan(1e-6);
    const bar = best(RING, aim);
    expect(Math.abs((bar.goals[0]?.after ?? 0) / known - 1)).toBeLessThan(1e-3);
    expect(numberOf(bar, "r")).toBe(100);
    expect(numberOf(bar, "depth")).toBe(10);
    expect(Math.abs(numberOf(bar, "hole_size") / (2000 * r) - 1)).toBeLessThan(1e-3);
  });

  it("keeps the bridge that the checker asks for, which no figure tells", () => {
    // Without the inertia the hole would be as large as may be; the bridge to the edge may not be thinner than the plate.
    const bar = best(RING, "least mass by r, hole_size");
    expect(numberOf(bar, "r") - numberOf(bar, "hole_size") / 2).toBeCloseTo(8, 2);
    expect(numberOf(bar, "r")).toBe(70);
  });

  it("most inertia and least mass of a plate: first shorter, then narrower, along a known line", () => {
    const bars = found(PLATE, { aim: "most inertia and least mass by long, wide" });
    expect(bars).toHaveLength(9);
    const [first, last] = [bars[0], bars.at(-1)];
    expect([first, last].map((bar) => bar?.lets.map(({ to }) => to))).toEqual([
      ["400 mm", "60 mm"],
      ["200 mm", "30 mm"],
    ]);
    for (const { goals } of bars) {
      const [inertia, mass] = goals.map(({ after }) => after ?? 0);
      const area = (mass ?? 0) / (DENSITY * THICKNESS_M) + (Math.PI * BORE_M ** 2) / 4;
      // By algebra: the longest plate of an area has most, so b = 30 mm until a = 400 mm.
      const [a, b] = area < 0.4 * 0.03 ? [area / 0.03, 0.03] : [0.4, area / 0.4];
      expect(Math.abs((inertia ?? 0) / plateInertia(a, b) - 1)).toBeLessThan(1e-3);
    }
    const masses = bars.map(({ goals }) => goals[1]?.after ?? 0);
    expect([...masses].sort((a, b) => b - a)).toEqual(masses);
    expect(Math.max(...masses)).toBeCloseTo(plateMassKg(0.4, 0.06), 9);
  });

  it("least imbalance, which has a kink where it is perfect", () => {
    const lopsided = PLATE.replace("from (-long / 2,", "from (-long / 2 + shift,").replace(
      "line (-long / 2, wide",
      "line (-long / 2 + shift, wide",
    );
    const text = `${lopsided}let shift = 12 mm from -30 mm to 30 mm\n`;
    const bar = best(text, "least imbalance by shift");
    expect(numberOf(bar, "shift")).toBe(0);
    expect(bar.goals[0]?.after).toBeLessThan(1e-9);
  });
});

const [LIMPET = "", LIMPET_AIM = ""] = MOVED_SAMPLES.filter(({ file }) => file.startsWith("brass")).flatMap(
  ({ text, aim }) => [text, aim],
);

describe("what is written", () => {
  it("keeps every limit, and brings no new problem, in the text as it then is", () => {
    const bar = best(LIMPET, LIMPET_AIM);
    const changed = readSource(applyEdits(LIMPET, bar.edits));
    const analysis = analyse(changed);
    expect(analysis.figures.mass["massKg"]).toBeLessThanOrEqual(0.8);
    expect(analysis.figures.mass["balanceGrade"]).toBeLessThanOrEqual(16);
    expect(analysis.figures.mass["inertiaKgM2"]).toBe(bar.goals[0]?.after);
    expect(checkSource(changed).filter(({ severity }) => severity === "error")).toEqual([]);
    expect(bar.limits.map(({ origin, label, holds }) => [origin, label, holds])).toEqual([
      ["aim", "Mass", true],
      ["require", "Mass", true],
      ["require", "Balance", true],
    ]);
  });

  it("changes the numbers of the lets and nothing else, with as few decimals as the limits allow", () => {
    const bar = best(PLATE, "most inertia keeping mass <= 0.65 kg by long, wide");
    expect(bar.edits.map(({ start, end, newText }) => [PLATE.slice(start, end), newText])).toEqual([
      ["300", "400"],
      ["50", "42.18"],
    ]);
    expect(bar.limits[0]?.margin).toBeGreaterThanOrEqual(0);
  });

  it("may be a variant of its own, that is then the very bar", () => {
    const bar = best(LIMPET, LIMPET_AIM);
    const source = readSource(LIMPET);
    const name = freeVariantName(source);
    const text = applyEdits(LIMPET, [variantBlock(source, null, bar.lets, name)]);
    const added = readSource(text);
    expect(added.problems).toEqual([]);
    expect(analyse(added, { variant: name }).figures.mass["inertiaKgM2"]).toBe(bar.goals[0]?.after);
    expect(analyse(added).figures).toEqual(analyse(source).figures);
    expect(freeVariantName(added)).toBe(`${name} 2`);
  });

  it("goes into the variant that was aimed for, and what else that overrides stays", () => {
    const text = `${PLATE}variant "thin" {\n  wide = 45 mm\n  thickness 4 mm\n}\n`;
    const source = readSource(text);
    const bar = best(text, "most inertia keeping mass <= 0.5 kg by long, wide", { variant: "thin" });
    const changed = readSource(applyEdits(text, bar.edits));
    expect(analyse(changed).figures).toEqual(analyse(source).figures);
    const mass = analyse(changed, { variant: "thin" }).figures.mass["massKg"];
    expect(mass).toBeLessThanOrEqual(0.5);
    expect(mass).toBeGreaterThan(0.499);
    const block = variantBlock(source, "thin", bar.lets, "thin best");
    const added = readSource(applyEdits(text, [block]));
    expect(analyse(added, { variant: "thin best" }).figures.mass["massKg"]).toBe(mass);
  });

  it("tells what it would break in other variants", () => {
    const text = `${PLATE}require max_radius <= 205 mm\nvariant "long one" { thickness 12 mm wide = 120 mm }\n`;
    const source = readSource(text);
    expect(checkSource(source).filter(({ severity }) => severity === "error")).toEqual([]);
    const bar = best(text, "most inertia by long");
    expect(bar.elsewhere.map(({ code }) => code)).toEqual(["require-failed"]);
  });

  it("is nothing where the bar is the best already", () => {
    const text = PLATE.replace("let long = 300 mm", "let long = 400 mm").replace(
      "let wide = 50 mm",
      "let wide = 60 mm",
    );
    expect(best(text, "most inertia by long, wide").edits).toEqual([]);
  });

  it("is in the unit of the let", () => {
    const text = PLATE.replace(
      "let wide = 50 mm from 30 mm to 60 mm",
      "let wide = 2 in from 1.2 in to 2.4 in",
    );
    const bar = best(text, "most inertia keeping mass <= 0.6 kg by long, wide");
    expect(bar.lets[1]?.to).toBe("1.535 in");
  });
});

describe("the balance that the checker expects", () => {
  const spinning = `${PLATE.replace(
    "line (long / 2, -wide / 2)",
    "line (long / 2 + shift, -wide / 2)",
  ).replace(
    "line (long / 2, wide / 2)",
    "line (long / 2 + shift, wide / 2)",
  )}let shift = 0 mm from -20 mm to 20 mm\nspin 3000 rpm ccw\n`;

  it("is kept by a bar that keeps it, though neither file nor aim names one", () => {
    const bar = best(spinning, "most inertia by shift");
    expect(bar.limits).toMatchObject([{ origin: "expected", limit: 40, holds: true, isReached: true }]);
    // e = G/ω, and the centroid moves by half the shift, less what the hole counts.
    expect(numberOf(bar, "shift")).toBeCloseTo(0.25, 1);
  });

  it("gives way to a balance that is named", () => {
    const bar = best(spinning, "most inertia keeping balance <= G400 by shift");
    expect(bar.limits.map(({ origin, limit }) => [origin, limit])).toEqual([["aim", 400]]);
    expect(numberOf(bar, "shift")).toBeCloseTo(2.5, 0);
  });
});

describe("an answer", () => {
  it("is the same each time, to the last byte, and another seed comes to the same bar", () => {
    const told = (seed: number) =>
      JSON.stringify(aimAt(readSource(LIMPET), { aim: LIMPET_AIM, seed, effort: "quick" }));
    expect(told(7)).toBe(told(7));
    const inertia = (seed: number) => best(LIMPET, LIMPET_AIM, { seed }).goals[0]?.after ?? 0;
    expect(Math.abs(inertia(8) / inertia(9) - 1)).toBeLessThan(1e-3);
  });

  it("can be had before the end: the best so far", () => {
    const steps = searchAim(readSource(LIMPET), { aim: LIMPET_AIM });
    let next = steps.next();
    for (let i = 0; i < 150 && next.done !== true; i += 1) next = steps.next();
    for (next = steps.next("stop"); next.done !== true; ) next = steps.next();
    expect(next.value).toMatchObject({ status: "found", isStopped: true });
    if (next.value.status !== "found") return;
    expect(next.value.bars).toHaveLength(1);
    expect(next.value.bars[0]?.limits.every(({ holds }) => holds)).toBe(true);
  });

  it("can be had of a search that was given up: its values are rounded and checked", () => {
    const steps = searchAim(readSource(LIMPET), { aim: LIMPET_AIM, effort: "quick" });
    let last = steps.next();
    for (let i = 0; i < 150 && last.done !== true; i += 1) last = steps.next();
    if (last.done === true) throw new Error("over already");
    const values = last.value.best().map((one) => one.values);
    const [bar] = found(LIMPET, { aim: LIMPET_AIM, found: values });
    expect(bar?.limits.every(({ holds }) => holds)).toBe(true);
    for (const [i, { to }] of (bar?.lets ?? []).entries())
      expect(Number.parseFloat(to)).toBeCloseTo(values[0]?.[i] ?? Number.NaN, 1);
  });

  it("measures no more bars than it says", () => {
    const steps = searchAim(readSource(LIMPET), { aim: LIMPET_AIM, effort: "quick" });
    let count = 0;
    let most = 0;
    for (let next = steps.next(); next.done !== true; next = steps.next()) {
      count = Math.max(count, next.value.evaluations);
      most = next.value.most;
    }
    expect(most).toBe(1000);
    expect(count).toBeLessThanOrEqual(most);
  });

  it("is that of the file's own line where none is given", () => {
    const aim = "most inertia keeping mass <= 0.6 kg by long, wide";
    const own = aimAt(readSource(`${PLATE}aim ${aim}\n`), { effort: "quick" });
    expect(own.status === "found" && own.bars[0]?.lets).toEqual(best(PLATE, aim).lets);
    // And another one takes its place.
    const other = best(`${PLATE}aim ${aim} # as it stands\n`, "least mass by wide");
    expect(other.lets.map(({ name, to }) => [name, to])).toEqual([["wide", "30 mm"]]);
  });
});

describe("what cannot be done", () => {
  function infeasible(text: string, aim: string): Extract<AimOutcome, { status: "infeasible" }> {
    const outcome = aimAt(readSource(text), { aim, effort: "quick" });
    if (outcome.status !== "infeasible") throw new Error(outcome.status);
    return outcome;
  }

  it("is told with the limit that is missed and by how much, and the nearest bar", () => {
    const { message, nearest } = infeasible(PLATE, "most inertia keeping mass <= 0.2 kg by long, wide");
    const least = plateMassKg(0.2, 0.03);
    expect(message).toBe(
      "No values within the bounds keep all limits. The nearest is long = 200 mm, wide = 30 mm: " +
        "Mass is 223.2 g, over the limit of 200 g by 23.17 g (12 %).",
    );
    expect(least).toBeCloseTo(0.22317, 5);
    expect(nearest?.limits[0]?.holds).toBe(false);
  });

  it("is told where two limits are at odds", () => {
    const { message } = infeasible(
      PLATE,
      "least mass keeping inertia >= 0.015 kg*m^2, mass <= 0.5 kg by long, wide",
    );
    expect(message).toMatch(
      /(Moment of inertia is .* under the least of 0.015 kg·m²|Mass is .* over the limit of 500 g) by/,
    );
  });

  it.each([
    ["most inertia by lng", "bad-aim", "No let defines 'lng'; did you mean long?"],
    ["most inertia", "bad-aim", "Expected by and the names"],
    ["", "bad-aim", "Expected most or least"],
    ["most beauty by long", "bad-aim", "'beauty' is not a figure that can be aimed at"],
    ["most energy by long", "unknown-figure", "Energy is not known: the file has no spin."],
    ["most mass keeping tip_speed <= 3 m/s by long", "unknown-figure", "Tip speed is not known"],
  ])("%s", (aim, reason, message) => {
    const outcome = aimAt(readSource(PLATE), { aim });
    expect(outcome).toMatchObject({ status: "refused", reason });
    expect(outcome.status === "refused" && outcome.message).toContain(message);
  });

  it("is told of a file without an aim, with errors, or without that variant", () => {
    const reasonOf = (text: string, request: AimRequest) => {
      const outcome = aimAt(readSource(text), request);
      return outcome.status === "refused" ? outcome.reason : outcome.status;
    };
    const aim = "most inertia by long";
    expect(reasonOf(PLATE, {})).toBe("no-aim");
    expect(reasonOf(`${PLATE}aim most by long\n`, {})).toBe("no-aim");
    expect(reasonOf(PLATE.replace("bore 20 mm", "bore 20 mmm"), { aim })).toBe("file-has-errors");
    expect(reasonOf(PLATE.replace("line (long / 2, wide / 2)", "line (long, -wide)"), { aim })).toBe(
      "file-has-errors",
    );
    expect(reasonOf(PLATE, { aim, variant: "none" })).toBe("no-such-variant");
    expect(reasonOf(`${PLATE}variant "v" { long = wide * 6 }\n`, { aim, variant: "v" })).toBe(
      "not-a-literal",
    );
    expect(reasonOf(PLATE.replace("from 200 mm to 400 mm", "from 400 mm to 200 mm"), { aim })).not.toBe(
      "found",
    );
  });
});

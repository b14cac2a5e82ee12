/** What a budget and an event are judged by: messages, severities, and that nothing is said where nothing is wrong. */
import { describe, expect, it } from "vitest";
import { analyse, checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { compare } from "../../geometry/study/compare/compare.ts";

/** 200 × 50 × 10 mm of 7850 kg/m³ less a bore of 20 mm: 760.3 g. */
const BAR = `bar "Wattlebird"
thickness 10 mm
density 7850 kg/m^3
outline { from (100 mm, -25 mm) line (100 mm, 25 mm) line (-100 mm, 25 mm) line (-100 mm, -25 mm) close }
bore 20 mm
spin 3000 rpm ccw
`;

function judged(text: string, bar = BAR): readonly string[] {
  const codes = ["budget-over-limit", "budget-unknown", "budget-counts-bar", "duplicate-part"];
  return checkSource(readSource(`${bar}${text}`))
    .filter(({ code }) => codes.includes(code))
    .map(({ severity, code, message }) => `${severity} ${code} ${message}`);
}

describe("a budget", () => {
  it("within its limit is no problem, also when it is met to the last bit", () => {
    expect(judged('budget { limit 6 kg part "frame" 2.1 kg scale 6 kg }')).toEqual([]);
    const { assessment } = analyse(readSource(BAR));
    const massKg = assessment.mass?.massKg ?? Number.NaN;
    expect(judged(`budget { limit ${massKg + 0.3} kg part "frame" 0.1 kg count 3 }`)).toEqual([]);
  });

  it("over its limit is an error that says by how much, and which spare part would do", () => {
    const spare = 'part "frame" 5.3 kg part "plate" 300 g spare part "flag" 70 g spare part "arm" 1 kg spare';
    expect(judged(`budget { limit 7.4 kg ${spare} }`)).toEqual([
      "error budget-over-limit The robot comes to 7.43 kg (the bar by its outline 760.3 g, its parts 6.67 kg)," +
        ' over the limit of 7.4 kg by 30.34 g (0.41 %). Without "flag" (70 g) it would have 39.66 g to spare.',
    ]);
    expect(judged(`budget { limit 6.2 kg ${spare} }`)[0]).toContain(
      'Without "arm" and "plate" (1.3 kg) it would have 69.66 g to spare.',
    );
    expect(judged(`budget { limit 5 kg ${spare} }`)[0]).toContain(
      "All its spare parts together save only 1.37 kg.",
    );
    expect(judged('budget { limit 5 kg part "frame" 5 kg }')[0]).toContain("as spare, to be told which");
  });

  it("is over where the scale says so, whatever the parts come to", () => {
    expect(judged('budget { limit 6 kg part "frame" 2 kg scale 6.1 kg }')).toEqual([
      "error budget-over-limit The scale reads 6.1 kg, over the limit of 6 kg by 100 g (1.7 %).",
    ]);
  });

  it("cannot be added up without the mass of the bar; a part with a mistake has its own", () => {
    const massless = BAR.replace(/density.*\n/, "");
    expect(judged('budget { limit 6 kg part "frame" 2 kg }', massless)).toEqual([
      "warning budget-unknown The budget cannot be added up: the mass of the bar is not known.",
    ]);
    expect(judged('budget { limit 1 kg part "frame" 2 mm }')).toEqual([]);
  });

  it("doubts a part that seems to be the bar, by its name or by its name and mass", () => {
    const names = (text: string) =>
      judged(text).filter((told) => told.startsWith("warning budget-counts-bar"));
    for (const part of ['"Weapon  Bar" 700 g', '"blade" 2 kg', '"wattlebird" 1 kg', '"bar, machined" 761 g'])
      expect(names(`budget { part ${part} }`), part).toHaveLength(1);
    for (const part of ['"weapon motor" 450 g', '"bar of soap" 90 g', '"frame" 760.3 g', '"crowbar" 760 g'])
      expect(names(`budget { part ${part} }`), part).toEqual([]);
  });

  it("doubts a second part of one name", () => {
    expect(judged('budget { part "wheel" 120 g part "Wheel " 120 g }')).toEqual([
      'warning duplicate-part There is a part "Wheel " already; both count. Several of a kind are written with count.',
    ]);
  });

  it("tells a variant that alone is over", () => {
    const bar = BAR.replace("10 mm", "plate").replace("thickness", "let plate = 10 mm\nthickness");
    expect(
      judged('budget { limit 2.8 kg part "frame" 2 kg }\nvariant "thick" { plate = 12 mm }', bar)[0],
    ).toMatch(/^error budget-over-limit In "thick": The robot comes to 2\.912 kg/);
  });
});

describe("an event", () => {
  const LIMITS = "event { tip_speed <= 30 m/s mass <= 1 kg bite at 3 m/s >= 1 mm spin_down <= 60 s";

  it("is held to like requirements, and says who decides", () => {
    const told = checkSource(readSource(`${BAR}${LIMITS} measured_spin_down 70 s }`)).map(
      ({ severity, code, message }) => `${severity} ${code} ${message}`,
    );
    expect(told).toEqual(
      expect.arrayContaining([
        "error require-failed Tip speed (event) is 32.38 m/s, over the limit of 30 m/s by 2.383 m/s (7.9 %)." +
          " The event's own rules and its inspectors decide.",
        "error require-failed Spin-down (event) is 70 s, over the limit of 60 s by 10 s (17 %)." +
          " The event's own rules and its inspectors decide.",
      ]),
    );
    expect(told.filter((line) => line.includes("(event)"))).toHaveLength(2);
  });

  it("says what it takes to check a spin-down", () => {
    const told = checkSource(readSource(`${BAR}${LIMITS} }`)).filter(
      ({ code }) => code === "require-unknown",
    );
    expect(told.map(({ message }) => message)).toEqual([
      "Spin-down (event) cannot be checked: time it on the robot and write it in the event, such as measured_spin_down 42 s.",
    ]);
  });

  it("keeps the balance that it limits from being judged by the usual grade too", () => {
    const lopsided = BAR.replace(
      "(100 mm, -25 mm) line (100 mm, 25 mm)",
      "(110 mm, -25 mm) line (110 mm, 25 mm)",
    );
    const grades = (text: string) =>
      checkSource(readSource(`${lopsided}${text}`)).filter(({ code }) => code === "imbalance-over-grade");
    expect(grades("").map(({ severity }) => severity)).toEqual(["warning"]);
    expect(grades("event { balance <= G40 }").map(({ severity }) => severity)).toEqual(["error"]);
  });

  it("is compared beside requirements on the same figure", () => {
    const texts = [`${BAR}require mass <= 2 kg\n`, `${BAR}event { mass <= 0.7 kg }\n`];
    const bars = texts.map((text, i) => ({ file: `${i}.bar`, analysis: analyse(readSource(text)) }));
    const rows = compare(bars).requirements;
    expect(
      rows.map(({ figure, ofEvent, cells }) => [figure, ofEvent, cells.map(({ holds }) => holds)]),
    ).toEqual([
      ["mass", false, [true, true]],
      ["mass", true, [false, false]],
    ]);
  });
});

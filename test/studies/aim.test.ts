/** The part of the studies page that searches for the best bar, with its real worker. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { type AimInput, type AimSoFar, aimJob } from "../../extension/studies/worker/aim-job.ts";
import { aimLineJob } from "../../extension/studies/worker/aim-line-job.ts";
import type { Progress } from "../../extension/studies/worker/job.ts";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { THEMES } from "../preview/themes.ts";
import { createStudiesRig, type OpenOptions, type OpenStudies, type StudiesRig } from "./rig.ts";

const PLATE = `bar "plate"
thickness 5 mm
density 7850 kg/m^3
let long = 300 mm from 200 mm to 400 mm
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
const AIM = "most inertia keeping mass <= 0.6 kg by long, wide";
const TWO = "most inertia and least mass by long, wide";
const STATED = `${PLATE}aim ${AIM}   # what for\n`;
const POLL = { timeout: 20_000 };

describe("the job", () => {
  const INPUT: AimInput = {
    text: PLATE,
    variant: null,
    settings: {},
    aim: AIM,
    effort: "quick",
    found: null,
  };

  it("gives the bar as plain data that fits the text, and tells what it has found on the way", async () => {
    const told: Progress[] = [];
    const outcome = await aimJob.run(INPUT, (progress) => told.push(structuredClone(progress)));
    if (!("result" in outcome)) throw new Error(outcome.refused);
    const result = structuredClone(outcome.result);
    const [bar] = result.bars;
    if (bar === undefined) throw new Error("no bar");
    expect(bar.lets.map(({ name, to }) => `${name} = ${to}`)).toEqual(["long = 400 mm", "wide = 39 mm"]);
    expect(bar.limits[0]).toMatchObject({
      label: "Mass",
      relation: "≤",
      holds: true,
      isReached: true,
      limit: { mm: "600 g", in: "1.323 lb" },
    });
    const { massKg } = analyse(readSource(applyEdits(PLATE, bar.edits))).figures.mass;
    expect(massKg).toBeLessThanOrEqual(0.6);
    const last = told.at(-1)?.soFar as AimSoFar;
    expect(last.lets).toEqual([
      { name: "long", unit: "mm" },
      { name: "wide", unit: "mm" },
    ]);
    expect(last.titles[0]).toMatchObject({
      sense: "most",
      label: "Moment of inertia",
      unit: { mm: "kg·m²" },
    });
    expect(told.every(({ done, total }) => done <= total)).toBe(true);
  });

  it("ends a search that was stopped: its values are rounded and checked", async () => {
    const outcome = await aimJob.run({ ...INPUT, found: [[399.1234, 38.4321]] }, () => {});
    const bars = "result" in outcome ? outcome.result.bars : [];
    expect(bars[0]?.lets.map(({ to }) => to)).toEqual(["399.13 mm", "38.44 mm"]);
  });

  it("refuses what is no aim, with the words of the checker", async () => {
    const outcome = await aimJob.run({ ...INPUT, aim: "most inertia by lng" }, () => {});
    expect(outcome).toEqual({ refused: "No let defines 'lng'; did you mean long?" });
  });

  it("finds the line of a text, on one line or several", async () => {
    expect(await aimLineJob.run({ text: STATED }, () => {})).toEqual({ result: { aim: AIM } });
    const folded = STATED.replace(
      "keeping mass <= 0.6 kg",
      "keeping (mass <= 0.6 kg, # so much\n  balance <= G16)",
    );
    expect(await aimLineJob.run({ text: folded }, () => {})).toEqual({
      result: { aim: "most inertia keeping (mass <= 0.6 kg, balance <= G16) by long, wide" },
    });
    expect(await aimLineJob.run({ text: PLATE }, () => {})).toEqual({ result: { aim: null } });
  });
});

describe("the part", () => {
  let rig: StudiesRig;
  let studies: OpenStudies;

  beforeAll(async () => {
    rig = await createStudiesRig();
  }, 60_000);
  afterAll(() => rig.close());
  afterEach(async () => {
    expect(studies.complaints).toEqual([]);
    await studies.page.close();
  });

  async function open(text: string, options: OpenOptions = {}): Promise<OpenStudies> {
    studies = await rig.open(options);
    await studies.show(text);
    await studies.send({ type: "show", part: "aim" });
    await studies.page.locator(".aim-form").waitFor();
    return studies;
  }

  const button = (name: string) => studies.page.getByRole("button", { name, exact: true });
  const status = () => studies.page.locator(".aim .study-status");
  const values = async () =>
    (await studies.page.locator(".aimed-bar table").first().locator("tbody tr").allTextContents()).map(
      (row) => row.trim(),
    );

  async function search(aim: string | null, effort = "quick"): Promise<void> {
    if (aim !== null) await studies.page.getByLabel("What to aim for").fill(aim);
    await studies.page.getByLabel("Effort").selectOption(effort);
    await button("Search").click();
  }

  it("begins with the aim of the text, and follows it until another is typed", async () => {
    await open(STATED);
    const field = studies.page.getByLabel("What to aim for");
    await expect.poll(() => field.inputValue(), POLL).toBe(AIM);
    await studies.show(STATED.replace("0.6 kg", "0.7 kg"));
    await expect.poll(() => field.inputValue(), POLL).toContain("0.7 kg");
    await field.fill("least mass by wide");
    await studies.show(STATED);
    await button("Use the line of the text").click();
    await expect.poll(() => field.inputValue(), POLL).toBe(AIM);
  });

  it("finds the bar, shows it over the bar of the text, and inserts it as a variant", async () => {
    await open(STATED);
    await expect.poll(() => button("Search").isEnabled(), POLL).toBe(true);
    await search(null);
    await studies.page.getByText("Searched to the end. Bars found: 1.").first().waitFor();
    expect(await values()).toEqual([
      expect.stringMatching(/^most: Moment of inertia0\.004538 kg·m²0\.008241 kg·m²\+81\.6 %$/),
      "long300 mm400 mmat its upper bound",
      "wide50 mm39 mm",
    ]);
    expect(await studies.page.locator(".aim-after").getAttribute("d")).toContain("M-200 19.5");
    expect(await studies.page.locator(".aim-before").getAttribute("d")).toContain("M-150 25");
    await studies.page.getByLabel("Variant").fill("stout");
    await button("Insert as a variant").click();
    const [asked] = await studies.said("applyEdits");
    expect(asked).toMatchObject({ version: 1 });
    const changed = applyEdits(STATED, asked?.edits ?? []);
    expect(changed).toBe(`${STATED}\nvariant "stout" {\n  long = 400 mm\n  wide = 39 mm\n}\n`);
    await studies.send({ type: "done", request: asked?.request ?? 0, refused: null });
    // With the variant in it the text is still the one that was searched.
    await studies.show(changed);
    await expect.poll(() => button("Insert as a variant").isEnabled()).toBe(true);
    await studies.show(changed.replace("thickness 5 mm", "thickness 6 mm"));
    await studies.page.getByText("The text has changed since").waitFor();
    expect(await button("Insert as a variant").isDisabled()).toBe(true);
  });

  it("changes the lets themselves", async () => {
    await open(PLATE);
    await search(AIM);
    await button("Change the lets").click();
    const [asked] = await studies.said("applyEdits");
    expect(applyEdits(PLATE, asked?.edits ?? [])).toContain("let wide = 39 mm from");
  });

  it("shows the line of two goals as a chart to choose on by keys, with a table behind", async () => {
    await open(PLATE);
    await search(TWO);
    const chart = studies.page.getByRole("slider");
    await chart.waitFor({ timeout: 30_000 });
    expect(await chart.getAttribute("aria-valuetext")).toMatch(
      /^Bar 1 of 9: most: Moment of inertia .*, least: Mass 929\.\d g$/,
    );
    await chart.focus();
    await studies.page.keyboard.press("End");
    await expect.poll(() => chart.getAttribute("aria-valuetext")).toMatch(/^Bar 9 of 9: .* 223\.\d g$/);
    expect((await values()).slice(2)).toEqual([
      "long300 mm200 mmat its lower bound",
      "wide50 mm30 mmat its lower bound",
    ]);
    await studies.page.locator(".aim summary").click();
    expect(await studies.page.locator("tr.chosen").textContent()).toContain("200 mm30 mm");
    await chart.click({ position: { x: 560, y: 20 } });
    await expect.poll(() => chart.getAttribute("aria-valuenow")).toBe("1");
    await studies.show(PLATE, { units: "in" });
    await expect.poll(() => chart.getAttribute("aria-valuetext")).toContain("Mass 2.0");
  });

  it("stops at once, and rounds and checks the best so far", async () => {
    await open(PLATE);
    await search(TWO, "thorough");
    await expect.poll(() => status().textContent(), POLL).toMatch(/^\d+ of at most \d+ bars measured…$/);
    await expect.poll(() => studies.page.locator(".front-dot").count(), POLL).toBeGreaterThan(2);
    await button("Stop").click();
    await expect
      .poll(() => status().textContent(), POLL)
      .toMatch(/^Stopped: the best so far, rounded and checked\. Bars: \d+\.$/);
    expect(await button("Insert as a variant").isEnabled()).toBe(true);
  });

  it("says what is wrong with an aim, and what cannot be reached by how much", async () => {
    await open(PLATE);
    await search("most inertia by lng");
    await expect.poll(() => status().textContent(), POLL).toBe("No let defines 'lng'; did you mean long?");
    await search("least mass keeping inertia >= 1 kg*m^2 by long, wide");
    await expect
      .poll(() => status().textContent(), POLL)
      .toMatch(/^No values within the bounds keep all limits\. The nearest is long = 400 mm/);
    expect(await studies.page.locator(".aimed-bar").textContent()).toContain("not kept");
    expect(await button("Insert as a variant").isVisible()).toBe(false);
  });

  it("keeps what was typed over a reload", async () => {
    await open(PLATE);
    await studies.page.getByLabel("What to aim for").fill("least mass by wide");
    await studies.page.getByLabel("Effort").selectOption("thorough");
    await expect
      .poll(() => studies.kept())
      .toMatchObject({ parts: { aim: { typed: "least mass by wide", effort: "thorough" } } });
    const state = await studies.kept();
    await studies.page.close();
    await open(PLATE, { state });
    expect(await studies.page.getByLabel("What to aim for").inputValue()).toBe("least mass by wide");
  });

  const axe = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");

  it.each(THEMES)("is clean by axe, in $name", { timeout: 60_000 }, async (theme) => {
    await open(PLATE, { theme });
    await search(TWO);
    await studies.page.getByRole("slider").waitFor({ timeout: 30_000 });
    await studies.page.locator(".aim summary").click();
    await studies.page.evaluate(axe);
    const violations = await studies.page.evaluate(
      "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => id + ' ' + nodes.map(({ html }) => html).join(' | ')))",
    );
    expect(violations).toEqual([]);
  });
});

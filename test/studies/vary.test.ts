/** Varying a value on the studies page, with its real worker. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { THEMES } from "../preview/themes.ts";
import { SAMPLES } from "../samples/samples.ts";
import { createStudiesRig, type OpenOptions, type OpenStudies, type StudiesRig } from "./rig.ts";

const LIMPET = SAMPLES.find(({ file }) => file.startsWith("brass"))?.text ?? "";
const POLL = { timeout: 15_000 };

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

async function openVary(text = LIMPET, options: OpenOptions = {}): Promise<void> {
  studies = await rig.open(options);
  await studies.send({ type: "show", part: "vary" });
  await studies.show(text);
  await studies.page.locator(".vary-form").waitFor();
}

const field = (label: string, nth = 0) => studies.page.getByLabel(label, { exact: true }).nth(nth);
const workOut = () => studies.page.getByRole("button", { name: "Work out" }).click();
const status = () => studies.page.locator(".vary .study-status").textContent();

async function tableRows(): Promise<string[][]> {
  const rows = await studies.page.locator(".vary tbody tr").all();
  return Promise.all(rows.map((row) => row.locator("th, td").allTextContents()));
}

describe("a value that is varied", () => {
  it("is chosen from the lets of the file, with their bounds, and followed by any figure", async () => {
    await openVary();
    expect(await field("Let").locator("option").allTextContents()).toContain("tail = 89.77 mm");
    await field("Let").selectOption("tail");
    expect([await field("from").inputValue(), await field("to").inputValue()]).toEqual(["60 mm", "100 mm"]);
    await field("values").fill("5");
    await field("Figure").selectOption("Balance");
    await workOut();
    await expect.poll(tableRows, POLL).toEqual([
      ["60", "9553.1"],
      ["70", "6235.1"],
      ["80", "3036.2"],
      ["90", "68.284"],
      ["100", "3096.6"],
    ]);
    const chart = studies.page.getByRole("slider");
    await chart.focus();
    await studies.page.keyboard.press("Home");
    expect(await chart.getAttribute("aria-valuetext")).toBe("At tail, mm 60: Balance 9553.1");
    expect(await studies.page.locator(".vary .chart-title").allTextContents()).toEqual([
      "tail, mm",
      "Balance, G",
    ]);
  });

  it("may be two, a line for some values of the second; the Enter key starts it", async () => {
    await openVary();
    await field("Let").selectOption("tail");
    await field("and").selectOption("lower");
    await field("values").fill("3");
    await field("values", 1).fill("9");
    await field("Figure").selectOption("Bite at a closing speed");
    await field("at").fill("4 m/s");
    await field("at").press("Enter");
    await expect.poll(async () => (await tableRows()).length, POLL).toBe(3);
    expect(await studies.page.locator(".vary .legend li").allTextContents()).toHaveLength(7);
    expect((await tableRows())[0]?.slice(0, 2)).toEqual(["60", "no plate"]);
    expect(await studies.page.locator(".vary .chart .series").count()).toBe(7);
  });

  it("is marked where the requirements are kept, and saved as comma-separated values", async () => {
    await openVary();
    await field("Let").selectOption("tail");
    await field("from").fill("89.75 mm");
    await field("to").fill("3.6 in");
    await field("values").fill("2");
    await workOut();
    await expect.poll(tableRows, POLL).toEqual(
      [
        ["89.75", "767.48 ✓"],
        ["91.44", expect.stringMatching(/^776\.\d+$/)],
      ].map((row) => [row[0], expect.anything()]),
    );
    expect((await tableRows())[0]?.[1]).toMatch(/✓$/);
    expect((await tableRows())[1]?.[1]).not.toMatch(/✓$/);
    await studies.page.getByRole("button", { name: "Save as comma-separated values…" }).click();
    await expect.poll(async () => (await studies.said("saveFile")).length).toBe(1);
    const [{ file } = { file: null }] = await studies.said("saveFile");
    expect(file?.name).toBe("heron-tail.csv");
    expect(file?.content.split("\r\n")[0]).toBe("tail_mm,sound,kept,massKg");
  });

  it("says what is wrong with a request, and that the text has changed since", async () => {
    await openVary();
    await field("Let").selectOption("tail");
    await field("from").fill("80");
    await workOut();
    await expect.poll(status, POLL).toContain("'80' has no unit");
    await field("from").fill("80 mm");
    await workOut();
    await expect.poll(async () => (await tableRows()).length, POLL).toBe(41);
    await studies.show(LIMPET.replace("thickness 10 mm", "thickness 8 mm"));
    await expect.poll(status, POLL).toContain("has changed");
    await workOut();
    await expect.poll(status, POLL).toBe("");
  });

  it("can be stopped at once, and leaves no worker", async () => {
    await openVary();
    await field("Let").selectOption("tail");
    await field("values").fill("10000");
    await field("Figure").selectOption("Clean bite up to");
    await workOut();
    await expect.poll(status, POLL).toMatch(/Working… [1-9]/);
    expect(studies.page.workers()).toHaveLength(1);
    await studies.page.getByRole("button", { name: "Stop" }).click();
    await expect.poll(() => studies.page.workers().length, POLL).toBe(0);
    expect(await status()).toBe("");
    expect(await tableRows()).toEqual([]);
  });

  it("keeps what was asked for over a reload", async () => {
    await openVary();
    await field("Let").selectOption("lower");
    await field("to").fill("50 mm");
    await expect.poll(() => studies.kept()).toMatchObject({ part: "vary" });
    const state = await studies.kept();
    await studies.page.close();
    await openVary(LIMPET, { state });
    expect([await field("Let").inputValue(), await field("to").inputValue()]).toEqual(["lower", "50 mm"]);
  });

  it("says what to write where there is nothing to vary", async () => {
    studies = await rig.open();
    await studies.send({ type: "show", part: "vary" });
    await studies.show('bar "Bare"\nthickness 5 mm\n');
    await studies.page.getByText("There is no let whose value is one number").waitFor();
  });

  it.each(THEMES)("axe-core finds nothing in the theme $name", async (theme) => {
    await openVary(LIMPET, { theme });
    await field("and").selectOption("lower");
    await workOut();
    await expect.poll(async () => (await tableRows()).length, POLL).toBeGreaterThan(10);
    await studies.page.locator(".vary summary").click();
    await studies.page.evaluate(
      readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8"),
    );
    const found = await studies.page.evaluate(
      "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => [id, nodes.map(({ target, any }) => [String(target), any[0]?.message])]))",
    );
    expect(found).toEqual([]);
    if (process.env["SHOTS"])
      await studies.page.screenshot({
        path: `${process.env["SHOTS"]}/vary-${theme.name}.png`,
        fullPage: true,
      });
  });
});

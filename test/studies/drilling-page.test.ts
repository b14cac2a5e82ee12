/** The parts for drilling and for the bar as made and worn, in a browser with their real workers. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { THEMES } from "../preview/themes.ts";
import { SAMPLES } from "../samples/samples.ts";
import { createStudiesRig, type OpenOptions, type OpenStudies, type StudiesRig } from "./rig.ts";

const LIMPET = (SAMPLES.find(({ file }) => file.startsWith("brass"))?.text ?? "").replace(
  "let tail = 89.77 mm",
  "let tail = 91 mm",
);
const POLL = { timeout: 15_000 };
const AXE = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");

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

async function open(part: string, text = LIMPET, options: OpenOptions = {}): Promise<OpenStudies> {
  studies = await rig.open(options);
  await studies.send({ type: "show", part });
  await studies.show(text);
  return studies;
}

const fact = async (name: string) =>
  (
    await studies.page
      .locator(".facts > div:visible", {
        has: studies.page.locator("dt", { hasText: new RegExp(`^${name}`) }),
      })
      .first()
      .locator("dd")
      .textContent()
  )?.trim();

async function type(label: string, value: string): Promise<void> {
  await studies.page.getByLabel(label, { exact: true }).fill(value);
  await studies.page.getByLabel(label, { exact: true }).press("Enter");
}

const rows = async (caption: string) => {
  const table = studies.page.getByRole("region", { name: caption, exact: true }).locator("tbody tr");
  return Promise.all((await table.all()).map(async (row) => row.locator("th, td").allTextContents()));
};

const violations = async () => {
  await studies.page.evaluate(AXE);
  return studies.page.evaluate(
    "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => [id, nodes.map(({ target, any }) => [String(target), any[0]?.message])]))",
  );
};

describe("the drilling part", () => {
  it("shows the holes on the outline and as a table, with what they come to and the cautions", async () => {
    await open("drilling");
    await expect.poll(() => rows("Holes to drill"), POLL).not.toEqual([]);
    const found = await rows("Holes to drill");
    expect(found[0]?.[0]).toBe("1");
    expect(found[0]?.[1]).toMatch(/^[\d.]+ mm$/);
    expect(await fact("Now")).toMatch(/^G\d+.* g·mm, heavy at [\d.]+°, as drawn$/);
    expect(await fact("Wanted")).toMatch(/^G16, at most [\d.]+ g·mm$/);
    const grade = Number(/^G([\d.]+)/.exec((await fact("After")) ?? "")?.[1]);
    expect(grade).toBeLessThanOrEqual(16);
    expect(await studies.page.locator(".drill-hole:visible").count()).toBe(found.length);
    expect(await studies.page.getByRole("img").getAttribute("aria-label")).toContain(
      `with ${found.length} holes`,
    );
    await studies.page.getByText("A hole is a notch").waitFor();
  });

  it("balances what a stand measured, and says what is wrong about words", async () => {
    await open("drilling");
    await type("Measured heavy spot", "2.4 g at 110 mm, 190 deg");
    await expect.poll(() => fact("Now"), POLL).toBe("G171, 264 g·mm, heavy at 190°, as measured");
    await type("Drills", "5, x");
    await studies.page.getByText("Drills:").waitFor();
    await type("Drills", "6.5");
    await expect.poll(async () => (await rows("Holes to drill"))[0]?.[1], POLL).toBe("6.5 mm");
    const state = await studies.kept();
    await studies.page.close();
    await open("drilling", LIMPET, { state });
    expect(await studies.page.getByLabel("Drills", { exact: true }).inputValue()).toBe("6.5");
    await expect.poll(() => fact("Now"), POLL).toContain("as measured");
  });

  it("writes through holes into the version that they were made for, and saves the table", async () => {
    await open("drilling");
    await studies.page.getByLabel("Through the plate, as holes of the file").check();
    const write = studies.page.getByRole("button", { name: "Write the holes into the file" });
    await write.click();
    const [asked] = await studies.said("applyEdits");
    expect(asked?.version).toBe(1);
    expect(asked?.edits[0]?.newText).toMatch(/^\nhole \([\d.]+ mm @ [\d.]+ deg\) diameter [\d.]+ mm/);
    await studies.page.getByRole("button", { name: "Save the table…" }).click();
    const [saved] = await studies.said("saveFile");
    expect(saved?.file.name).toBe("holes.csv");
    expect(saved?.file.content).toMatch(/^hole,drill,radius_mm.*\r\n1,[\d.]+ mm,/);
  });

  it("keeps what worked while the text is broken, and says where nothing is to be drilled", async () => {
    await open("drilling");
    await expect.poll(() => rows("Holes to drill"), POLL).not.toEqual([]);
    await studies.show(LIMPET.replace("line (reach - face, 5 mm)", "line (reach - face, "));
    await studies.page.getByText("this is the last that worked").waitFor();
    expect(await rows("Holes to drill")).not.toEqual([]);
    await studies.show(LIMPET.replace("let tail = 91 mm", "let tail = 89.77 mm"));
    await studies.page.getByText("nothing to drill").waitFor();
  });
});

describe("the part for the bar as made and worn", () => {
  it("shows the distribution as a picture with words and as a table, and where it is from", async () => {
    await open("as-made");
    await expect.poll(() => rows("So many parts have no more than"), POLL).toHaveLength(3);
    const [grade] = await rows("So many parts have no more than");
    const values = (grade ?? []).slice(2).map(Number);
    expect([...values].sort((a, b) => a - b)).toEqual(values);
    expect(await studies.page.getByRole("img").getAttribute("aria-label")).toMatch(
      /^How many of 5000 parts have which grade/,
    );
    expect(await studies.page.locator(".histogram-bar").count()).toBe(24);
    expect(await rows("Where the imbalance comes from")).toHaveLength(4);
    expect(await fact("Within G16")).toMatch(/% of the parts/);
    expect(await fact("Plate")).toContain("EN 10029:1991 class A");
    await type("Cut", "0.05 mm");
    await expect.poll(() => fact("Cut"), POLL).toBe("±0.05 mm on every dimension");
    await studies.page.getByLabel("Spread").selectOption("limits at two sigma");
    await type("Parts", "3");
    await studies.page.getByText("Parts is a whole number from 100").waitFor();
  });

  it("shows a row for each wear", async () => {
    await open("as-made");
    await expect.poll(() => rows("A row for each wear"), POLL).toHaveLength(6);
    await studies.page.getByLabel("Worn", { exact: true }).selectOption("face ground back");
    await type("Worn by", "0.5 mm, 1 mm, 500 mm");
    await expect.poll(() => rows("A row for each wear"), POLL).toHaveLength(4);
    const table = await rows("A row for each wear");
    expect(table.map(([by]) => by)).toEqual(["0", "0.5", "1", "500"]);
    expect(table[3]?.[1]).toBe("no sound bar left");
    await studies.page.getByText("moves into the metal, parallel to itself").waitFor();
  });

  it("tells of either study why there is none", async () => {
    await open("as-made", LIMPET.replace("thickness 10 mm", "thickness 60 mm"));
    await studies.page.getByText("The table of ISO 9013").waitFor();
    await expect.poll(() => rows("A row for each wear"), POLL).toHaveLength(6);
  });
});

describe("everybody can use them", () => {
  it.each(THEMES)("axe-core finds nothing in the theme $name", async (theme) => {
    await open("drilling", LIMPET, { theme });
    await expect.poll(() => rows("Holes to drill"), POLL).not.toEqual([]);
    expect(await violations()).toEqual([]);
    await studies.send({ type: "show", part: "as-made" });
    await expect.poll(() => rows("A row for each wear"), POLL).toHaveLength(6);
    expect(await violations()).toEqual([]);
  });

  it("nothing is wider than a narrow page but tables in their own room", async () => {
    await open("drilling", LIMPET, { width: 320 });
    await expect.poll(() => rows("Holes to drill"), POLL).not.toEqual([]);
    const width = () => studies.page.evaluate<number>("document.documentElement.scrollWidth");
    expect(await width()).toBeLessThanOrEqual(320);
    await studies.send({ type: "show", part: "as-made" });
    await expect.poll(() => rows("A row for each wear"), POLL).toHaveLength(6);
    expect(await width()).toBeLessThanOrEqual(320);
  });
});

/** The studies page in a browser with its real worker. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { THEMES } from "../preview/themes.ts";
import { SAMPLES } from "../samples/samples.ts";
import { createStudiesRig, fileOf, type OpenOptions, type OpenStudies, type StudiesRig } from "./rig.ts";

const HERON = SAMPLES.find(({ file }) => file.startsWith("pickled"))?.text ?? "";
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

async function open(options: OpenOptions = {}): Promise<OpenStudies> {
  studies = await rig.open(options);
  return studies;
}

async function openCompared(options: OpenOptions = {}, text = HERON): Promise<OpenStudies> {
  await open(options);
  await studies.show(text);
  await studies.page.locator(".compared-figures td").first().waitFor();
  return studies;
}

/** The texts of a row of the table. */
async function rowOf(label: string): Promise<string[]> {
  const row = studies.page.locator(".comparison tr", {
    has: studies.page.getByRole("rowheader", { name: label, exact: true }),
  });
  return (await row.first().locator("td").allTextContents()).map((text) => text.trim());
}

const columns = async () =>
  (await studies.page.locator(".compared-figures thead th").allTextContents()).slice(1);

describe("the comparison", () => {
  it("asks for the document, and shows the bar and its variants", async () => {
    await openCompared();
    expect(await studies.said("ready")).toEqual([{ type: "ready", others: [] }]);
    expect(await studies.page.locator("h1").textContent()).toBe("Studies of heron.bar");
    expect(await columns()).toEqual(["as written (reference)", "practice speed", "long reach"]);
    expect(await rowOf("Mass")).toEqual(["1.051 kg", "1.051 kg", "1.169 kg+11.2 % ▼ worse"]);
    expect(await rowOf("Energy")).toEqual(["502 J", "92.2 J-81.6 % ▼ worse", "670.6 J+33.6 % ▲ better"]);
    expect(await rowOf("Mass at most 1.4 kg")).toEqual([
      "met by 348.5 g",
      "met by 348.5 g",
      expect.stringContaining("met by 231"),
    ]);
  });

  it("lays the outlines over each other as true arcs", async () => {
    await openCompared();
    const paths = await studies.page
      .locator(".overlay-picture .series")
      .evaluateAll((found) => found.map((path) => path.getAttribute("d") ?? ""));
    expect(paths).toHaveLength(3);
    for (const path of paths) expect(path).toMatch(/^M.*A[\d.]+ [\d.]+ 0 [01] [01] /);
    const label = await studies.page.getByRole("img").getAttribute("aria-label");
    expect(label).toContain("as written, practice speed, long reach");
    expect(label).toContain("284 mm by 52 mm");
  });

  it("draws a curve of the bite for each bar, to be read by keys, with a table behind", async () => {
    await openCompared();
    const chart = studies.page.getByRole("slider");
    await expect.poll(() => chart.locator(".series").count()).toBe(3);
    await chart.focus();
    await studies.page.keyboard.press("End");
    const told = await chart.getAttribute("aria-valuetext");
    expect(told).toBe("At 6 m/s: as written 38.91 mm, practice speed 81.85 mm, long reach 39.36 mm");
    await studies.page.locator("input[value=mean]").check();
    await expect.poll(() => chart.getAttribute("aria-valuetext")).toContain("as written 19.91 mm");
    await studies.page.locator("summary").click();
    expect(await rowOf("at 6 m/s")).toEqual(["19.91 mm", "41.58 mm+109 %", "20.07 mm+0.79 %"]);
  });

  it("follows the text, and the units of the settings", async () => {
    await openCompared();
    await studies.show(HERON.replace("thickness 12 mm", "thickness 15 mm"));
    await expect.poll(() => rowOf("Mass"), POLL).toContain("1.314 kg");
    await studies.show(HERON, { units: "in" });
    await expect.poll(() => rowOf("Mass"), POLL).toContain("2.318 lb");
    expect(await studies.page.locator(".chart-title").allTextContents()).toEqual([
      "Closing speed, mph",
      "Deepest bite, in",
    ]);
  });

  it("keeps what worked while the text is broken", async () => {
    await openCompared();
    await studies.show(HERON.replace("line (-reach, 0 mm)", "line (-reach, "));
    await studies.page.getByText("this is the last comparison that worked").waitFor();
    expect(await rowOf("Mass")).toEqual(["1.051 kg", "1.051 kg", expect.stringContaining("1.169 kg")]);
    await studies.show(HERON.replace("thickness 12 mm", "thickness 15 mm"));
    await expect.poll(() => rowOf("Mass"), POLL).toContain("1.314 kg");
    await expect.poll(() => studies.page.locator(".study-status").isVisible()).toBe(false);
  });

  it("takes another reference, leaves bars out, shows only what differs, and keeps all that", async () => {
    await openCompared();
    await studies.page.getByLabel("Reference").selectOption("long reach");
    await expect.poll(columns, POLL).toEqual(["long reach (reference)", "as written", "practice speed"]);
    expect((await rowOf("Mass"))[1]).toBe("1.051 kg-10.1 % ▲ better");
    await studies.page.getByRole("checkbox", { name: "practice speed" }).uncheck();
    await expect.poll(columns, POLL).toEqual(["long reach (reference)", "as written"]);
    await studies.page.getByLabel("Only what differs").check();
    await expect.poll(() => rowOf("Spin")).toEqual([]);
    expect(await rowOf("Mass")).toHaveLength(2);
    const state = await studies.kept();
    expect(state).toMatchObject({ documentUri: "file:///bars/heron.bar", part: "compare" });
    await studies.page.close();
    await openCompared({ state });
    await expect.poll(columns, POLL).toEqual(["long reach (reference)", "as written"]);
    expect(await studies.page.getByLabel("Only what differs").isChecked()).toBe(true);
  });

  it("takes in other files, and asks the host to take them out", async () => {
    await openCompared();
    await studies.page.getByRole("button", { name: "Take in a file…" }).click();
    expect(await studies.said("pickOthers")).toHaveLength(1);
    await studies.send({ type: "others", files: [fileOf("limpet.bar", LIMPET)] });
    await expect.poll(columns, POLL).toContain("limpet.bar");
    await studies.page.getByRole("button", { name: "Take out limpet.bar" }).click();
    expect(await studies.said("dropOther")).toEqual([{ type: "dropOther", uri: "file:///bars/limpet.bar" }]);
    expect(await studies.kept()).toMatchObject({ others: ["file:///bars/limpet.bar"] });
  });

  it("hands the host a table to save, and says where that is refused", async () => {
    await openCompared();
    await studies.page.getByRole("button", { name: "Save as comma-separated values…" }).click();
    const [{ request, file } = { request: 0, file: null }] = await studies.said("saveFile");
    expect(file).toMatchObject({ name: "pickled-heron-two-tooth-compared.csv" });
    expect(file?.content).toMatch(/^figure,value: as written,value: practice speed,/);
    await studies.send({ type: "done", request, refused: "the disk is full" });
    await studies.page.getByRole("alert").getByText("Nothing was saved: the disk is full").waitFor();
  });

  it("says what to do where there is one bar only", async () => {
    await openCompared({}, LIMPET);
    await studies.page.getByText("add a variant to the text, or take in another file").waitFor();
  });

  it("speaks the editor's language", async () => {
    await openCompared({ translations: { worse: "schlechter", "Only what differs": "Nur Unterschiede" } });
    await studies.page.getByLabel("Nur Unterschiede").waitFor();
    expect((await rowOf("Mass"))[2]).toBe("1.169 kg+11.2 % ▼ schlechter");
  });
});

describe("the page's own workers", () => {
  it("are one for a part, and none before there is work", async () => {
    await open();
    await studies.page.locator("h1").waitFor();
    expect(studies.page.workers()).toHaveLength(0);
    await studies.show(HERON);
    await studies.page.locator(".compared-figures td").first().waitFor();
    for (let i = 0; i < 5; i += 1) await studies.show(HERON.replace("12 mm", `${13 + i} mm`));
    await expect.poll(() => rowOf("Mass"), POLL).toContain("1.49 kg");
    expect(studies.page.workers()).toHaveLength(1);
    expect(studies.page.workers()[0]?.url()).toMatch(/^blob:/);
  });

  it("tell the host of a fault, and the reader that there was one", async () => {
    await open({ worker: "throw new Error('made to fail')" });
    await studies.show(HERON);
    await studies.page.getByText("a fault of the program").waitFor();
    const [fault] = await studies.said("fault");
    expect(fault?.reason).toContain("made to fail");
  });

  it("may not be fetched from anywhere else", async () => {
    await open();
    const refused = await studies.page.evaluate(
      "fetch('https://elsewhere.test/x').then(() => false, () => true)",
    );
    expect(refused).toBe(true);
    expect(studies.takeComplaints().join()).toMatch(/Content Security Policy/);
  });
});

describe("everybody can use it", () => {
  const axe = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
  const violations = async () => {
    await studies.page.evaluate(axe);
    return studies.page.evaluate(
      "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => [id, nodes.map(({ target, any }) => [String(target), any[0]?.message])]))",
    );
  };

  it.each(THEMES)("axe-core finds nothing in the theme $name", async (theme) => {
    await open({ theme });
    await studies.send({ type: "others", files: [fileOf("limpet.bar", LIMPET)] });
    await studies.show(HERON);
    await studies.page.locator(".compared-figures td").first().waitFor();
    await studies.page.locator("summary").click();
    expect(await violations()).toEqual([]);
  });

  it("every control is reached by the Tab key", async () => {
    await openCompared();
    const reached = new Set<string>();
    for (let i = 0; i < 20; i += 1) {
      await studies.page.keyboard.press("Tab");
      reached.add(
        String(
          await studies.page.evaluate(
            "document.activeElement.textContent.trim() || document.activeElement.getAttribute('aria-label') || document.activeElement.parentElement.textContent.trim()",
          ),
        ),
      );
    }
    for (const name of [
      "Take in a file…",
      "Only what differs",
      "All cautions",
      "The bite as a table",
      "Deepest",
    ])
      expect([...reached]).toContain(name);
  });
});

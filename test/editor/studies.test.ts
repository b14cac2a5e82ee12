import { readFileSync } from "node:fs";
import type { Frame, FrameLocator } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { SAMPLES } from "../samples/samples.ts";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { HERON } from "./samples.ts";
import { acceptPlace } from "./save-dialog.ts";
import type { ThemeName } from "./workbench.ts";

const LIMPET = SAMPLES.find(({ file }) => file.startsWith("brass-limpet"))?.text ?? "";
const AXE = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const ROUNDS = 10;
const KEPT_MS = 5000;
const NO_PROBLEMS = { errors: 0, warnings: 0 };

describe("the studies panel", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({
      files: {
        "heron.bar": HERON,
        "limpet.bar": LIMPET,
        ".vscode/settings.json": '{ "barwright.developer": true }',
      },
      open: "heron.bar",
    });
  });

  afterAll(() => editor?.close());

  beforeEach(() => editor.startAfresh("heron.bar", HERON, NO_PROBLEMS));

  /** Opens the comparison of the active editor, and waits until it is there. */
  async function openComparison(): Promise<FrameLocator> {
    await editor.runCommand("Barwright: Compare Variants");
    const frame = editor.previewFrame();
    await frame.locator(".compared-figures td").first().waitFor({ timeout: 60_000 });
    return frame;
  }

  async function frameOf(locator: FrameLocator): Promise<Frame> {
    const handle = await locator.locator("body").elementHandle();
    const frame = await handle?.ownerFrame();
    if (!frame) throw new Error("The panel has no frame.");
    return frame;
  }

  const massOf = async (frame: FrameLocator) => {
    const row = frame.locator(".compared-figures tr", {
      has: frame.getByRole("rowheader", { name: "Mass", exact: true }),
    });
    return (await row.locator("td").allTextContents()).map((text) => text.trim());
  };

  /** Workers made from blobs in another origin than the editor's: those of the panel. */
  const ownWorkers = () =>
    editor.page
      .workers()
      .map((worker) => worker.url())
      .filter((url) => url.startsWith("blob:") && !url.includes(new URL(editor.page.url()).host));

  const panelTab = () => editor.page.locator(".tab", { hasText: "Studies heron.bar" });

  async function closePanel(): Promise<void> {
    const tab = panelTab();
    await tab.hover();
    await tab.locator(".codicon-close").click();
    await tab.waitFor({ state: "detached" });
  }

  it("shows the figures of the variants, their outlines and their bites over each other", async () => {
    const frame = await openComparison();
    expect(await massOf(frame)).toEqual(["1.051 kg", "1.051 kg", "1.169 kg+11.2 % ▼ worse"]);
    await expect.poll(() => frame.locator(".overlay-picture .series").count()).toBe(3);
    await expect.poll(() => frame.getByRole("slider").locator(".series").count()).toBe(3);
  });

  it("follows the text as it is typed", async () => {
    const frame = await openComparison();
    await editor.openFile("heron.bar");
    await editor.replaceText(HERON.replace("thickness 12 mm", "thickness 10 mm"));
    await expect.poll(() => massOf(frame)).toContain("876.2 g");
  });

  it("takes in another file by the picker, and follows it too", async () => {
    const frame = await openComparison();
    await frame.getByRole("button", { name: "Take in a file…" }).click();
    const row = editor.paletteRows().filter({ hasText: "limpet.bar" });
    await row.first().click();
    await editor.page.keyboard.press("Enter");
    await frame.getByRole("columnheader", { name: "limpet.bar" }).first().waitFor();
    expect((await massOf(frame)).at(-1)).toContain("767.6 g");
    await frame.getByRole("button", { name: "Take out limpet.bar" }).click();
    await expect.poll(() => massOf(frame)).toHaveLength(3);
  });

  it("saves the table where one says", async () => {
    const frame = await openComparison();
    await frame.getByRole("button", { name: "Save as comma-separated values…" }).click();
    expect(await acceptPlace(editor, ".csv")).toMatch(/pickled-heron-two-tooth-compared\.csv$/);
    await editor.page.locator(".notification-list-item", { hasText: "figures side by side" }).waitFor();
    expect(await editor.readSavedFile("pickled-heron-two-tooth-compared.csv")).toMatch(
      /^figure,value: as written,.*\r\n/,
    );
  });

  it.each<ThemeName>(["Light Modern", "Dark Modern", "Dark High Contrast", "Light High Contrast"])(
    "axe-core finds nothing in %s",
    async (theme) => {
      await editor.setTheme(theme);
      const frame = await openComparison();
      await editor.screenshot(`studies-${theme.replaceAll(" ", "-")}`);
      const inside = await frameOf(frame);
      expect(editor.takeFaults()).toEqual([]);
      await inside.evaluate(AXE);
      const found = await inside.evaluate(
        "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => String(target))]))",
      );
      expect(found).toEqual([]);
      // axe-core sets a style that the page's policy refuses; what is not refused would be the page's own.
      expect(editor.takeFaults().filter((fault) => !fault.includes("Applying inline style"))).toEqual([]);
    },
  );

  it("leaves no worker, no page and no listener when it is closed", async () => {
    for (let round = 0; round < ROUNDS; round += 1) {
      await openComparison();
      expect(ownWorkers()).toHaveLength(1);
      await closePanel();
    }
    await expect.poll(() => editor.page.locator("iframe.webview").count()).toBe(0);
    await expect.poll(ownWorkers).toEqual([]);
    await editor.runCommand("Barwright: Show Live Counts (for Developers)");
    const counts = editor.page.locator(".notification-list-item", { hasText: "studies" });
    await expect.poll(() => counts.textContent()).toContain("previews 0, studies 0, listeners 0");
  });

  it("comes back after a reload with what was chosen", async () => {
    const frame = await openComparison();
    await frame.getByLabel("Reference").selectOption("long reach");
    await frame.getByRole("columnheader", { name: "long reach (reference)" }).first().waitFor();
    await editor.openFile("heron.bar");
    await editor.save();
    // The editor keeps every five seconds what is open and what its pages keep.
    await editor.page.waitForTimeout(2 * KEPT_MS);
    await editor.page.reload();
    await panelTab().click({ timeout: 60_000 });
    await editor
      .previewFrame()
      .getByRole("columnheader", { name: "long reach (reference)" })
      .first()
      .waitFor({ timeout: 60_000 });
  }, 180_000);

  it("makes no error in the editor", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

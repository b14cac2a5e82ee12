import { readdir } from "node:fs/promises";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { figuresOf } from "../readers/curve-figures.ts";
import { readWithEzdxf } from "../readers/dxf-readers.ts";
import { SAMPLES } from "../samples/samples.ts";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { openPreview } from "./preview-view.ts";
import { lineOf } from "./samples.ts";
import { acceptPlace } from "./save-dialog.ts";

const LIMPET = SAMPLES.find(({ file }) => file.startsWith("brass-limpet"))?.text ?? "";
const OFF = LIMPET.replace("let tail = 89.77 mm", "let tail = 70 mm");
const ONE_ERROR = { errors: 1, warnings: 0 };

describe("balancing by lets", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({ files: { "limpet.bar": OFF }, open: "limpet.bar" });
  });

  afterAll(() => editor?.close());

  beforeEach(async () => {
    for (const name of await readdir(editor.folder))
      if (name !== "limpet.bar") await editor.removeOnDisk(name);
    await editor.startAfresh("limpet.bar", OFF, ONE_ERROR);
  });

  it("tells above the statement what would change, and a click writes it", async () => {
    await editor.moveCursor(lineOf(OFF, "balance by"), 1);
    expect(await editor.waitForLens("Balance: tail")).toContain("tail 70 mm → 89.");
    await editor.page.locator(".codelens-decoration a", { hasText: "Balance: tail" }).first().click();
    await editor.waitForProblems({ errors: 0, warnings: 0 });
    expect(await editor.waitForLens("Balanced by tail, lower")).toMatch(/: G\d/);
  });

  it("mends an imbalance by a quick fix that is told with its values", async () => {
    await editor.moveCursor(lineOf(OFF, "require balance"), 3);
    await editor.page.locator(".squiggly-error").first().waitFor();
    const titles = await editor.quickFixTitles();
    const title = titles.find((text) => text.includes("Balance by tail, lower: tail = 89.")) ?? "";
    expect(title, titles.join("; ")).not.toBe("");
    await editor.quickFix(title);
    await editor.waitForProblems({ errors: 0, warnings: 0 });
  });

  it("takes the heavy side's arrow away, and the cut file has its centroid on the axis, as another reader finds", async () => {
    const preview = await openPreview(editor);
    const arrow = preview.frame.locator(".heavy");
    await preview.frame.locator(".heavy.over-grade").waitFor({ state: "visible" });

    await editor.page.locator(".codelens-decoration a", { hasText: "Balance: tail" }).first().click();
    await arrow.waitFor({ state: "hidden" });
    await editor.waitForProblems({ errors: 0, warnings: 0 });

    await editor.runCommand("Barwright: Export Cut File…");
    await acceptPlace(editor, ".dxf");
    const name = "brass-limpet-one-tooth.dxf";
    await editor.page.locator(".notification-list-item", { hasText: `${name} written` }).waitFor();
    const drawing = readWithEzdxf(editor.folder).get(name);
    expect([drawing?.errors, drawing?.fixes]).toEqual([[], []]);
    const on = (layer: string) => drawing?.curves.filter((curve) => curve.layer === layer) ?? [];
    const { centroid, area } = figuresOf(on("CUT_OUTER"), on("CUT_INNER"));
    expect(area).toBeGreaterThan(5000);
    // G6.3 at 4800 rpm: e = G/ω, by the definition of the grades in ISO 21940-11. Before it was 12 mm.
    expect(Math.hypot(...centroid)).toBeLessThan(6.3 / ((4800 * 2 * Math.PI) / 60));
  });

  it("makes no error in the editor", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

import { readdir } from "node:fs/promises";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { readWithEzdxf } from "../readers/dxf-readers.ts";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { openPreview } from "./preview-view.ts";
import { HERON } from "./samples.ts";
import { acceptPlace } from "./save-dialog.ts";

describe("exporting", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({ files: { "heron.bar": HERON }, open: "heron.bar" });
  });

  afterAll(() => editor?.close());

  beforeEach(async () => {
    for (const name of await readdir(editor.folder))
      if (name !== "heron.bar") await editor.removeOnDisk(name);
    await editor.startAfresh("heron.bar", HERON);
  });

  const rows = () => editor.paletteRows();
  const notice = (text: string) => editor.page.locator(".notification-list-item", { hasText: text });
  it("asks which variant, writes its cut file, and another reader finds no fault in it", async () => {
    await editor.runCommand("Barwright: Export Cut File…");
    await rows().filter({ hasText: "As written" }).waitFor();
    await rows().filter({ hasText: "long reach" }).click();
    expect(await acceptPlace(editor, ".dxf")).toMatch(/pickled-heron-two-tooth-long-reach\.dxf$/);
    await notice("pickled-heron-two-tooth-long-reach.dxf written").waitFor();
    const drawing = readWithEzdxf(editor.folder).get("pickled-heron-two-tooth-long-reach.dxf");
    expect([drawing?.errors, drawing?.fixes]).toEqual([[], []]);
    expect(drawing?.insUnits).toBe(4);
    expect(drawing?.curves.length).toBe(4);
    // 142 mm from the axis on both sides, as the variant says.
    expect((drawing?.greatest[0] ?? 0) - (drawing?.least[0] ?? 0)).toBeCloseTo(284, 3);
  });

  it("never replaces a file unasked", async () => {
    await editor.writeOnDisk("pickled-heron-two-tooth.dxf", "not to be lost");
    await editor.runCommand("Barwright: Export Cut File…");
    await rows().filter({ hasText: "As written" }).click();
    await acceptPlace(editor, ".dxf");
    const dialog = editor.page.locator(".quick-input-widget");
    await expect.poll(() => dialog.textContent()).toContain("already exists");
    // Once leads back to the place, twice out of it.
    await editor.clearAway();
    await dialog.waitFor({ state: "hidden" });
    expect(await editor.readSavedFile("pickled-heron-two-tooth.dxf")).toBe("not to be lost");
  });

  it("refuses a broken outline and says why", async () => {
    await editor.replaceText(HERON.replace("bore 25 mm", "bore 25"));
    await editor.waitForProblems({ errors: 1, warnings: 0 });
    const before = await readdir(editor.folder);
    await editor.runCommand("Barwright: Export Cut File…");
    await rows().filter({ hasText: "As written" }).click();
    await notice("Nothing was exported: line 21").waitFor();
    expect(await readdir(editor.folder)).toEqual(before);
    // The editor tells the console of each message of an error.
    expect(editor.takeFaults().filter((fault) => !fault.includes("Nothing was exported"))).toEqual([]);
  });

  it("writes the other formats", async () => {
    await editor.runCommand("Barwright: Export As…");
    await rows().filter({ hasText: "Report, Markdown" }).click();
    await rows().filter({ hasText: "As written" }).click();
    await acceptPlace(editor, ".md");
    await notice("pickled-heron-two-tooth.md written").waitFor();
    expect(await editor.readSavedFile("pickled-heron-two-tooth.md")).toContain("Spinning bars kill");
  });

  it("exports from the preview the variant that it shows", async () => {
    const preview = await openPreview(editor);
    await preview.frame.locator("select").selectOption({ label: "practice speed" });
    await preview.waitForFigure("Tip speed", "24.5");
    await preview.frame.getByRole("button", { name: "Export cut file…" }).click();
    expect(await acceptPlace(editor, ".dxf")).toMatch(/two-tooth-practice-speed\.dxf$/);
    await notice("pickled-heron-two-tooth-practice-speed.dxf written").waitFor();
    expect(await readdir(editor.folder)).toContain("pickled-heron-two-tooth-practice-speed.dxf");
  });

  it("makes no error in the editor", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

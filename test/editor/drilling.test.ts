/** Drilling in the real editor: the holes of the panel written into the file, as one step to undo. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { SAMPLES } from "../samples/samples.ts";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";

const LIMPET = (SAMPLES.find(({ file }) => file.startsWith("brass-limpet"))?.text ?? "").replace(
  "let tail = 89.77 mm",
  "let tail = 91 mm",
);

describe("drilling in the studies panel", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({ files: { "limpet.bar": LIMPET }, open: "limpet.bar" });
  });

  afterAll(() => editor?.close());

  it("writes through holes into the file, with which the bar is balanced", async () => {
    await editor.runCommand("Barwright: Plan Drilling");
    const frame = editor.previewFrame();
    await frame.getByLabel("Through the plate, as holes of the file").check({ timeout: 60_000 });
    await frame.getByRole("button", { name: "Write the holes into the file" }).click();
    await frame.getByText("nothing to drill").waitFor({ timeout: 30_000 });
    await editor.openFile("limpet.bar");
    await editor.save();
    await expect
      .poll(() => editor.readSavedFile("limpet.bar"))
      .toMatch(/\nhole \([\d.]+ mm @ [\d.]+ deg\) diameter [\d.]+ mm/);
    const saved = await editor.readSavedFile("limpet.bar");
    // Lines were put in, and nothing else was touched.
    expect(saved.replace(/\nhole \([\d.]+ mm @.*/g, "")).toBe(LIMPET);
  });

  it("shows wear and tolerance beside", async () => {
    await editor.openFile("limpet.bar");
    await editor.runCommand("Barwright: Wear and Tolerance");
    const frame = editor.previewFrame();
    await frame.locator(".histogram-bar").first().waitFor({ timeout: 60_000 });
    await frame.getByRole("region", { name: "A row for each wear" }).waitFor();
  });

  it("makes no error in the editor", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";

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
aim most inertia and least mass by long, wide
`;
const WAIT = { timeout: 60_000 };

describe("aiming for the best bar", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({ files: { "plate.bar": PLATE }, open: "plate.bar" });
  });

  afterAll(() => editor?.close());

  beforeEach(() => editor.startAfresh("plate.bar", PLATE, { errors: 0, warnings: 0 }));

  it("leads from the line to the panel, tells how far it is, stops at once, and takes a bar into the text", async () => {
    await editor.waitForLens("Aim: search for this bar");
    await editor.page.locator(".codelens-decoration a", { hasText: "Aim: search" }).first().click();
    const frame = editor.previewFrame();
    const button = (name: string) => frame.getByRole("button", { name, exact: true });
    const status = frame.locator(".aim .study-status");
    await expect
      .poll(() => frame.getByLabel("What to aim for").inputValue(), WAIT)
      .toContain("most inertia and least mass");

    await frame.getByLabel("Effort").selectOption("thorough");
    await button("Search").click();
    await expect.poll(() => status.textContent(), WAIT).toMatch(/^\d+ of at most \d+ bars measured…$/);
    await expect.poll(() => frame.locator(".front-dot").count(), WAIT).toBeGreaterThan(2);
    await button("Stop").click();
    await expect
      .poll(() => status.textContent(), WAIT)
      .toMatch(/^Stopped: the best so far, rounded and checked/);

    await frame.getByLabel("Variant").fill("trade");
    await button("Insert as a variant").click();
    await editor.openFile("plate.bar");
    await editor.waitForEditorText('variant "trade" {');
    await editor.waitForProblems({ errors: 0, warnings: 0 });
    await editor.page.keyboard.press("Control+z");
    await expect.poll(() => editor.editorText(), WAIT).not.toContain("variant");
    expect(await editor.editorText()).toContain("aim most inertia");
  });

  it("makes no error in the editor", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Frame } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { openPreview, type PreviewView } from "./preview-view.ts";
import type { ThemeName } from "./workbench.ts";

const AXE = readFileSync(resolve(import.meta.dirname, "../../node_modules/axe-core/axe.min.js"), "utf8");

describe("a bar that is not saved yet", () => {
  let editor: Editor;
  let preview: PreviewView;

  beforeAll(async () => {
    editor = await openEditor({
      files: { "notes.txt": "Nothing here.\n" },
      viewport: { width: 1500, height: 900 },
    });
    await editor.runCommand("Barwright: New Bar…");
    await editor.page
      .locator(".quick-input-list .monaco-list-row", { hasText: "balanced by its shape" })
      .click();
    await editor.waitForEditorText('bar "New bar"');
    preview = await openPreview(editor);
  });

  afterAll(() => editor?.close());

  it("is live", async () => {
    await editor.typeText("Tin Plover");
    await expect.poll(() => preview.title.textContent(), { timeout: 10_000 }).toBe("Tin Plover");
  });

  const themes: readonly ThemeName[] = [
    "Dark Modern",
    "Dark High Contrast",
    "Light High Contrast",
    "Light Modern",
  ];
  it.each(themes)("shows a page that axe-core finds no fault in: %s", async (theme) => {
    await editor.setTheme(theme);
    await editor.page.waitForTimeout(500);
    await editor.screenshot(`editor ${theme}`);
    expect(await faultsOf(await preview.frameOf())).toEqual([]);
  });

  it("goes on being live when it is saved under a name", async () => {
    await editor.page.keyboard.press("Control+1");
    await editor.page.keyboard.press("Control+s");
    const box = editor.page.locator('.quick-input-widget input[type="text"]');
    await expect.poll(() => box.inputValue(), { timeout: 15_000 }).toMatch(/bars\//);
    await box.fill("/bars/plover.bar");
    await box.press("Enter");
    await editor.page.locator('.tab[data-resource-name="plover.bar"]').first().waitFor();
    await editor.moveCursor(1, 'bar "Tin Plover'.length + 1);
    await editor.typeText(" two");
    await expect.poll(() => preview.title.textContent(), { timeout: 10_000 }).toBe("Tin Plover two");
    expect(await editor.page.locator(".tab", { hasText: "Preview plover.bar" }).count()).toBe(1);
  });

  it("makes no error in the editor", () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

/** What axe-core finds, without rules for whole pages: the frame is a part of one. */
async function faultsOf(frame: Frame): Promise<unknown> {
  await frame.evaluate(AXE);
  return frame.evaluate(
    "axe.run(document.body, { preload: false, rules: { region: { enabled: false } } }).then(({ violations }) =>" +
      " violations.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)]))",
  );
}

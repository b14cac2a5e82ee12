import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Frame } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { openPreview, type PreviewView } from "./preview-view.ts";
import { FOCUSED_TEXT, type ThemeName } from "./workbench.ts";

const AXE = readFileSync(resolve(import.meta.dirname, "../../node_modules/axe-core/axe.min.js"), "utf8");

/** What the editor calls the kind of each theme to a webview. */
const KINDS: Readonly<Record<ThemeName, RegExp>> = {
  "Dark Modern": /\bvscode-dark\b/,
  "Dark High Contrast": /\bvscode-high-contrast(?!-light)\b/,
  "Light High Contrast": /\bvscode-high-contrast-light\b/,
  "Light Modern": /\bvscode-light\b/,
};
const THEMES = Object.keys(KINDS) as ThemeName[];

describe("a bar that is not saved yet", () => {
  let editor: Editor;
  let preview: PreviewView;

  beforeAll(async () => {
    editor = await openEditor({
      files: { "notes.txt": "Nothing here.\n" },
      viewport: { width: 1500, height: 900 },
    });
    await editor.runCommand("Barwright: New Bar…");
    await editor.paletteRows().filter({ hasText: "balanced by its shape" }).click();
    await editor.waitForEditorText('bar "New bar"');
    preview = await openPreview(editor);
  });

  afterAll(() => editor?.close());

  it("is live", async () => {
    await editor.moveCursor(1, 'bar "'.length + 1);
    await editor.page.keyboard.press("Shift+End");
    await editor.typeText('Tin Plover"');
    await expect.poll(() => preview.title.textContent()).toBe("Tin Plover");
  });

  it.each(THEMES)("shows a page that axe-core finds no fault in: %s", async (theme) => {
    await editor.setTheme(theme);
    const frame = await preview.frameOf();
    await expect.poll(() => frame.locator("body").getAttribute("class")).toMatch(KINDS[theme]);
    // A colour that is half way to its new one has half the contrast.
    await expect.poll(() => frame.evaluate("document.getAnimations().length")).toBe(0);
    await editor.screenshot(`editor ${theme}`);
    expect(await faultsOf(frame)).toEqual([]);
  });

  it("goes on being live when it is saved under a name", async () => {
    await editor.page.keyboard.press("Control+1");
    await editor.page.locator(FOCUSED_TEXT).waitFor();
    const box = await editor.openPalette("Control+s");
    await expect.poll(() => box.inputValue()).toMatch(/bars\//);
    await box.fill("/bars/plover.bar");
    await box.press("Enter");
    await editor.page.locator('.tab[data-resource-name="plover.bar"]').first().waitFor();
    await editor.moveCursor(1, 'bar "Tin Plover'.length + 1);
    await editor.typeText(" two");
    await expect.poll(() => preview.title.textContent()).toBe("Tin Plover two");
    await expect.poll(() => editor.page.locator(".tab", { hasText: "Preview plover.bar" }).count()).toBe(1);
  });

  it("makes no error in the editor", { retry: 0 }, () => {
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

import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { HERON, lineOf } from "./samples.ts";

const FACE = lineOf(HERON, "line (reach - face,");
const SETTINGS = ".vscode/settings.json";
const END = HERON.split("\n").length;

describe("writing an outline", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({ files: { "heron.bar": HERON, [SETTINGS]: "{}" }, open: "heron.bar" });
    await editor.page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  });

  afterAll(() => editor?.close());

  beforeEach(() => editor.startAfresh("heron.bar", HERON));

  it("shows the figures above the bar and each variant", async () => {
    await editor.moveCursor(1, 1);
    expect(await editor.waitForLens("kg")).toMatch(/kg · G\d.* m\/s tip/);
    await expect.poll(() => editor.page.locator(".codelens-decoration a").count()).toBe(3);
  });

  it("shows what expressions are worth", async () => {
    await editor.moveCursor(FACE, 1);
    expect(await editor.waitForInlay("112 mm")).toContain("= 112 mm");
  });

  it("marks a misspelt word and mends it", async () => {
    await editor.moveCursor(FACE, "  line (reach - face, 0 mm) r".length + 1);
    await editor.page.keyboard.press("Delete");
    await editor.waitForEditorText("0 mm) rund 3 mm");
    await editor.waitForProblems({ errors: 1, warnings: 0 });
    await editor.page.locator(".squiggly-error").first().waitFor();
    const [first] = await editor.quickFixTitles();
    expect(first).toContain("round");
    await editor.quickFix(first ?? "");
    await editor.waitForEditorText("0 mm) round 3 mm");
    await editor.waitForProblems({ errors: 0, warnings: 0 });
  });

  it("mends all that is safe at once", async () => {
    const curly = HERON.replace('"Pickled Heron two-tooth"', "\u201cPickled Heron two-tooth\u201d");
    await editor.replaceText(curly.replace("let waist = 26 mm", "let waist = 2 \u00d7 13 mm"));
    await editor.waitForProblems({ errors: 2, warnings: 0 });
    await editor.runCommand("Barwright: Make All Safe Fixes");
    await editor.waitForEditorText("let waist = 2 * 13 mm");
    await editor.waitForEditorText('bar "Pickled Heron two-tooth"');
    await editor.waitForProblems({ errors: 0, warnings: 0 });
  });

  it("offers what can come next", async () => {
    await editor.moveCursor(END, 1);
    await editor.typeText("material w");
    await editor.page.keyboard.press("Control+Space");
    const rows = editor.page.locator(".suggest-widget.visible .monaco-list-row");
    await rows.filter({ hasText: "wear_steel_450" }).first().waitFor();
    await editor.page.keyboard.press("Escape");
  });

  it("offers units right behind a number as one types", async () => {
    await editor.moveCursor(END, 1);
    await editor.typeText("bore 22 ");
    const rows = editor.page.locator(".suggest-widget.visible .monaco-list-row");
    await rows.filter({ hasText: /^mm/ }).first().waitFor();
    await editor.page.keyboard.press("Escape");
  });

  it("tells what a name is worth", async () => {
    expect(await editor.hover(FACE, "  line (re".length)).toContain("130 mm");
  });

  it("shows how a statement goes on", async () => {
    await editor.moveCursor(END, 1);
    await editor.typeText("slot ");
    await editor.page.keyboard.press("Escape");
    await editor.runCommand("Trigger Parameter Hints");
    const hint = editor.page.locator(".parameter-hints-widget.visible .signature");
    await expect.poll(() => hint.textContent()).toContain("width");
    await editor.page.keyboard.press("Escape");
  });

  it("renames a let everywhere", async () => {
    await editor.moveCursor(FACE, "  line (re".length);
    await editor.page.keyboard.press("F2");
    const box = editor.page.locator(".rename-box input");
    await box.waitFor();
    await box.fill("span");
    await box.press("Enter");
    await editor.waitForEditorText("let span = 130 mm");
    await editor.waitForEditorText('variant "long reach" { span = 142 mm }');
    await editor.waitForProblems({ errors: 0, warnings: 0 });
  });

  it("leads from a name to its let", async () => {
    await editor.moveCursor(FACE, "  line (re".length);
    await editor.page.keyboard.press("F12");
    await expect.poll(editor.cursorPlace).toContain(`Ln ${lineOf(HERON, "let reach")},`);
  });

  it("lays the text out", async () => {
    await editor.replaceText(HERON.replace("  line (-reach, 0 mm)", "line ( -reach,0 mm )"));
    await editor.runCommand("Format Document");
    await editor.waitForEditorText("  line (-reach, 0 mm)");
  });

  it("lists what stands in the file", async () => {
    const input = await editor.openPalette("Control+Shift+O");
    await input.fill("@long");
    await editor.paletteRows().filter({ hasText: "long reach" }).first().waitFor();
    await editor.page.keyboard.press("Escape");
  });

  it("follows the settings as they change", async () => {
    try {
      await editor.writeOnDisk(SETTINGS, '{ "barwright.units": "in", "barwright.hints.values": false }');
      expect(await editor.waitForLens("lb")).toContain("mph tip");
      await editor.inlays().first().waitFor({ state: "detached" });
    } finally {
      await editor.writeOnDisk(SETTINGS, "{}");
    }
    await editor.waitForLens("kg");
    await editor.waitForInlay("112 mm");
  });

  it("puts the report on the clipboard", async () => {
    await editor.runCommand("Barwright: Copy Report");
    await editor.page.locator(".statusbar-item", { hasText: "The report is on the clipboard." }).waitFor();
    const report = String(await editor.page.evaluate("navigator.clipboard.readText()"));
    expect(report).toMatch(/^# Pickled Heron two-tooth/);
    expect(report).toContain("Spinning bars kill");
  });

  it("starts a new bar from a template, unsaved, with its name selected", async () => {
    await editor.runCommand("Barwright: New Bar…");
    await editor.paletteRows().filter({ hasText: "One tooth" }).click();
    await editor.waitForEditorText('bar "New bar"');
    await expect.poll(editor.cursorPlace).toContain("(7 selected)");
    await editor.typeText("Tin Plover");
    await editor.waitForEditorText('bar "Tin Plover"');
    expect(await editor.languageId()).toBe("bar");
    await editor.waitForLens("768 g");
    await editor.waitForProblems({ errors: 0, warnings: 0 });
  });

  it("makes no error in the editor", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

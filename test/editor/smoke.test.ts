import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";

const FIRST = 'bar "Wicker Gull"\n\nthickness 8 mm\n';
const SECOND = 'bar "Tin Plover"\n\nthickness 6 mm\n';

describe("the workbench with the extension", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({
      files: { "wicker-gull.bar": FIRST, "parts/tin-plover.bar": SECOND, "notes.txt": "Not an outline.\n" },
      open: "wicker-gull.bar",
    });
  });

  afterAll(() => editor?.close());

  it("opens the folder and shows its files", async () => {
    const rows = editor.page.locator(".explorer-folders-view .monaco-list-row");
    await expect.poll(() => rows.allTextContents()).toEqual(["parts", "notes.txt", "wicker-gull.bar"]);
  });

  it("knows an outline file by its ending, and nothing else", async () => {
    await editor.openFile("wicker-gull.bar");
    await expect.poll(editor.languageId).toBe("bar");
    await editor.openFile("notes.txt");
    await expect.poll(editor.languageId).toBe("plaintext");
  });

  it("opens a file in a folder below by its name", async () => {
    await editor.openFile("tin-plover.bar");
    await editor.waitForEditorText(SECOND);
  });

  it("writes to the disk on save and not before", async () => {
    await editor.openFile("wicker-gull.bar");
    await editor.replaceText(FIRST);
    await editor.save();
    await editor.moveCursor(3, 11);
    await editor.typeText("1");
    await editor.waitForEditorText("thickness 18 mm");
    await expect.poll(editor.isDirty).toBe(true);
    expect(await editor.readSavedFile("wicker-gull.bar")).toBe(FIRST);
    await editor.save();
    expect(await editor.readSavedFile("wicker-gull.bar")).toBe(FIRST.replace("8 mm", "18 mm"));
    expect(await editor.isDirty()).toBe(false);
  });

  it("shows what another program writes to an open file", async () => {
    await editor.openFile("tin-plover.bar");
    await editor.writeOnDisk("parts/tin-plover.bar", SECOND.replace("6 mm", "9 mm"));
    await editor.waitForEditorText("thickness 9 mm");
    await expect.poll(editor.isDirty).toBe(false);
  });

  it("shows a file that another program adds, and no longer one that it removes", async () => {
    const row = (name: string) => editor.page.locator(`.explorer-folders-view [aria-label^="${name}"]`);
    await editor.writeOnDisk("added.bar", FIRST);
    await row("added.bar").waitFor();
    await editor.removeOnDisk("added.bar");
    await row("added.bar").waitFor({ state: "detached" });
  });

  it("makes no error and asks nothing of another machine", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });

  it("would notice an error and a request to another machine", async () => {
    await editor.page.evaluate("fetch('http://elsewhere.invalid/').catch(() => console.error('no answer'))");
    const seen: string[] = [];
    await expect.poll(() => seen.push(...editor.takeFaults()) && seen.join("\n")).toContain("no answer");
    expect(seen.join("\n")).toContain("outside: http://elsewhere.invalid/");
  });
});

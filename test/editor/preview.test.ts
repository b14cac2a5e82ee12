import type { Locator } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { openPreview, type PreviewView, viewPreview } from "./preview-view.ts";
import { HERON, lineOf } from "./samples.ts";
import { FOCUSED_TEXT } from "./workbench.ts";

const PLATE = lineOf(HERON, "thickness");
const HOLE = lineOf(HERON, "hole (42 mm");

describe("the preview", () => {
  let editor: Editor;
  let preview: PreviewView;

  beforeAll(async () => {
    editor = await openEditor({
      files: { "heron.bar": HERON },
      open: "heron.bar",
      viewport: { width: 1500, height: 900 },
    });
  });

  afterAll(() => editor?.close());

  beforeEach(async () => {
    await editor.startAfresh("heron.bar", HERON);
    preview = await openPreview(editor);
    await choose("As written");
    await preview.waitForFigure("Mass", "1.051 kg");
    await preview.staleBadge.waitFor({ state: "hidden" });
    // To choose in the preview takes the focus there, where keys and commands mean something else.
    await focusText();
  });

  const focusText = async () => {
    await editor.page.keyboard.press("Control+1");
    await editor.page.locator(FOCUSED_TEXT).waitFor();
  };
  /** The line of the cursor, also while the focus is in the preview. */
  const cursorLine = () => editor.page.locator(".line-numbers.active-line-number").first().textContent();
  const focusIsInText = () => editor.page.locator(FOCUSED_TEXT).count();
  const choose = (label: string) => preview.frame.locator("select").selectOption({ label });
  const previewTab = () => editor.page.locator(".tab", { hasText: "Preview heron.bar" });
  /** Puts another file in front of the preview, and the cursor back into the text. */
  const coverPreview = async () => {
    await previewTab().click();
    await editor.runCommand("File: New Untitled Text File");
    await preview.title.waitFor({ state: "detached" });
    await focusText();
  };

  it("shows the bar as it stands", async () => {
    await expect.poll(() => preview.title.textContent()).toBe("Pickled Heron two-tooth");
    await expect.poll(() => preview.edges.count()).toBeGreaterThan(10);
  });

  it("follows each key, and never takes the focus", async () => {
    await editor.moveCursor(PLATE, "thickness 12".length + 1);
    await editor.page.keyboard.press("Backspace");
    await editor.typeText("0");
    await preview.waitForFigure("Mass", "876.2 g");
    await editor.typeText("0");
    await preview.waitForFigure("Mass", "8.762 kg");
    expect(await focusIsInText()).toBe(1);
    await editor.waitForEditorText("thickness 100 mm");
  });

  it("lights up the edges of the place of the cursor", async () => {
    await editor.moveCursor(HOLE, 3);
    await expect.poll(() => preview.frame.locator(".edge.marked").count()).toBe(1);
    await editor.moveCursor(PLATE, 1);
    await expect.poll(() => preview.frame.locator(".edge.marked").count()).toBe(0);
  });

  it("leads from an edge to its text", async () => {
    await editor.moveCursor(1, 1);
    // The hole at (42 mm, 0 mm): by keyboard, since points lie over edges.
    const hole = preview.frame.locator(".edge[aria-label*='Hole']").first();
    await hole.focus();
    await hole.press("Enter");
    await expect.poll(cursorLine).toBe(String(HOLE));
    // The long edge at the top, by a click.
    const { x, y } = await middleOf(preview.frame.locator(".edge[aria-label*='208.49 mm']").first());
    await editor.page.mouse.click(x, y);
    await expect.poll(cursorLine).toBe(String(lineOf(HERON, "line (14 mm - reach")));
  });

  it("moves a point in the text, to be undone in one step", async () => {
    const handle = preview.frame.locator(".handles > [aria-label*='42']").first();
    const { x, y } = await middleOf(handle);
    await editor.page.mouse.move(x, y);
    await editor.page.mouse.down();
    await editor.page.mouse.move(x + 10, y + 5, { steps: 4 });
    await editor.page.mouse.move(x + 20, y + 10, { steps: 4 });
    await editor.page.mouse.up();
    await focusText();
    await expect.poll(() => editor.editorText()).not.toContain("hole (42 mm, 0 mm)");
    const moved = /hole \(([\d.]+) mm, (-?[\d.]+) mm\) diameter/.exec(await editor.editorText());
    expect(Number(moved?.[1])).toBeGreaterThan(43);
    expect(Number(moved?.[2])).toBeLessThan(-0.5);
    await editor.moveCursor(PLATE, 1);
    await editor.page.keyboard.press("Control+z");
    await editor.waitForEditorText("hole (42 mm, 0 mm) diameter");
  });

  it("keeps the last drawing, marked as such, while the text is broken", async () => {
    const edges = await preview.edges.count();
    await editor.moveCursor(lineOf(HERON, "from (reach"), 100);
    await editor.typeText(" arc (");
    await preview.staleBadge.waitFor({ state: "visible" });
    expect(await preview.edges.count()).toBe(edges);
    await editor.page.keyboard.press("Escape");
    await editor.replaceText(HERON);
    await preview.staleBadge.waitFor({ state: "hidden" });
  });

  it("shows another variant, and says in the text what it is worth there", async () => {
    await choose("long reach");
    await preview.waitForFigure("Largest radius", "142");
    await focusText();
    await editor.waitForInlay("124 mm");
    await choose("As written");
    await preview.waitForFigure("Largest radius", "130");
    await focusText();
    await editor.waitForInlay("112 mm");
  });

  it("keeps zoom and place when the text changes", async () => {
    const plane = preview.frame.locator(".plane");
    const scale = async () => (await plane.getAttribute("transform")) ?? "";
    const showAll = async () => {
      await preview.frame.locator("button", { hasText: "Fit" }).click();
      return settled(scale);
    };
    const fitted = await showAll();
    await preview.frame.locator("button[aria-label='Zoom in']").click();
    await preview.frame.locator("button[aria-label='Zoom in']").click();
    await expect.poll(scale).not.toBe(fitted);
    const before = await settled(scale);
    await focusText();
    await editor.moveCursor(PLATE, "thickness 12".length + 1);
    await editor.typeText("0");
    await preview.waitForFigure("Mass", "10.51");
    expect(await scale()).toBe(before);
    expect(await showAll()).toBe(fitted);
  });

  it("shows the bite: its spread, what strikes on the outline, one approach, and follows the target", async () => {
    const { frame } = preview;
    expect(await frame.locator(".chart .chart-band").getAttribute("d")).toMatch(/^M[\d.]+ [\d.]+L.*Z$/);
    await expect.poll(() => frame.locator(".strikes .strike-square").count()).toBeGreaterThan(1);
    expect(await frame.locator(".bite-target").textContent()).toBe("Against an edge.");
    // A section stays as its reader left it.
    if (!(await frame.locator(".approach").isVisible()))
      await frame.locator("summary", { hasText: "One approach" }).click();
    await expect.poll(() => frame.locator(".approach-words").textContent()).toMatch(/ mm deep\. /);
    const before = await frame.locator(".approach-words").textContent();
    await frame.getByLabel("Starting phase").fill("200");
    await expect.poll(() => frame.locator(".approach-words").textContent()).not.toBe(before);
    await frame.locator(".approach-words .link").click();
    await expect.poll(cursorLine).not.toBe("1");
    await focusText();
    await editor.replaceText(HERON.replace("target edge", "target round 5 mm offset 12 mm"));
    await expect
      .poll(() => frame.locator(".bite-target").textContent())
      .toContain("radius 5 mm, 12 mm off the axis");
  });

  it("shows the cautions in full", async () => {
    await preview.frame.getByRole("button", { name: "All cautions" }).click();
    const dialog = editor.page.locator(".monaco-dialog-box");
    await expect.poll(() => dialog.textContent()).toContain("Spinning bars kill");
    await editor.page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
  });

  it("is one a document: opening again shows the same panel", async () => {
    await coverPreview();
    await editor.runCommand("Barwright: Open Preview Beside");
    await preview.title.waitFor();
    await expect.poll(() => previewTab().count()).toBe(1);
    await expect.poll(focusIsInText).toBe(1);
  });

  it("follows what another program writes", async () => {
    await editor.runCommand("File: Revert File");
    await expect.poll(editor.isDirty).toBe(false);
    await editor.writeOnDisk("heron.bar", HERON.replace("thickness 12 mm", "thickness 6 mm"));
    await preview.waitForFigure("Mass", "525.7 g");
    await editor.writeOnDisk("heron.bar", HERON);
    await preview.waitForFigure("Mass", "1.051 kg");
  });

  it("draws what it missed while it was hidden", async () => {
    await coverPreview();
    await editor.moveCursor(PLATE, "thickness 12".length + 1);
    await editor.typeText("0");
    await previewTab().click();
    await preview.waitForFigure("Mass", "10.51");
  });

  it("comes back after a reload", async () => {
    await editor.save();
    await editor.page.reload();
    // The editor keeps every few seconds what is open: it may remember what was in front of the preview before.
    await previewTab().click({ timeout: 60_000 });
    const restored = viewPreview(editor);
    await restored.edges.first().waitFor({ state: "attached", timeout: 90_000 });
    await restored.waitForFigure("Mass", "1.051 kg");
    await expect.poll(() => restored.title.textContent()).toBe("Pickled Heron two-tooth");
  }, 180_000);

  it("makes no error in the editor", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

/** What is read once it stays the same: a glide takes 160 ms, its steps a frame each. */
async function settled(read: () => Promise<string>): Promise<string> {
  let [before, now] = ["", await read()];
  while (now !== before) {
    await new Promise((resolve) => setTimeout(resolve, 250));
    [before, now] = [now, await read()];
  }
  return now;
}

async function middleOf(part: Locator): Promise<{ x: number; y: number }> {
  const box = await part.boundingBox();
  if (!box) throw new Error("It is not in view.");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

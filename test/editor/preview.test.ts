import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { openPreview, type PreviewView, viewPreview } from "./preview-view.ts";
import { HERON, lineOf } from "./samples.ts";

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
    preview = await openPreview(editor);
  });

  afterAll(() => editor?.close());

  beforeEach(async () => {
    await editor.page.keyboard.press("Escape");
    await focusText();
    await editor.replaceText(HERON);
    await preview.waitForFigure("Mass", "1.051 kg");
  });

  const focusText = async () => {
    await editor.page.keyboard.press("Control+1");
    await editor.page.locator(".editor-instance .monaco-editor.focused").waitFor();
  };
  /** The line of the cursor, also while the focus is in the preview. */
  const cursorLine = () => editor.page.locator(".line-numbers.active-line-number").first().textContent();
  const focusIsInText = () => editor.page.locator(".editor-instance .monaco-editor.focused").count();

  it("shows the bar as it stands", async () => {
    expect(await preview.title.textContent()).toBe("Pickled Heron two-tooth");
    expect(await preview.edges.count()).toBeGreaterThan(10);
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
    const edge = preview.frame.locator(".edge[aria-label*='208.49 mm']").first();
    const box = await edge.boundingBox();
    if (!box) throw new Error("The edge is not in view.");
    await editor.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await expect.poll(cursorLine).toBe(String(lineOf(HERON, "line (14 mm - reach")));
  });

  it("moves a point in the text, to be undone in one step", async () => {
    const handle = preview.frame.locator(".handles > [aria-label*='42']").first();
    const box = await handle.boundingBox();
    if (!box) throw new Error("The point is not in view.");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
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
    const choose = (label: string) => preview.frame.locator("select").selectOption({ label });
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
    await preview.frame.locator("button[aria-label='Zoom in']").click();
    await preview.frame.locator("button[aria-label='Zoom in']").click();
    const scale = async () => (await preview.frame.locator(".plane").getAttribute("transform")) ?? "";
    await expect.poll(async () => (await scale()) === (await settledScale(scale))).toBe(true);
    const before = await scale();
    await focusText();
    await editor.moveCursor(PLATE, "thickness 12".length + 1);
    await editor.typeText("0");
    await preview.waitForFigure("Mass", "10.51");
    expect(await scale()).toBe(before);
    await preview.frame.locator("button", { hasText: "Fit" }).click();
  });

  it("shows the cautions in full", async () => {
    await preview.frame.getByRole("button", { name: "All cautions" }).click();
    const dialog = editor.page.locator(".monaco-dialog-box");
    await expect.poll(() => dialog.textContent()).toContain("Spinning bars kill");
    await editor.page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
  });

  it("is one a document: opening again shows the same panel", async () => {
    await editor.runCommand("Barwright: Open Preview Beside");
    await editor.page.waitForTimeout(300);
    expect(await editor.page.locator(".tab", { hasText: "Preview heron.bar" }).count()).toBe(1);
    expect(await focusIsInText()).toBe(1);
  });

  it("follows what another program writes", async () => {
    await editor.save();
    await editor.writeOnDisk("heron.bar", HERON.replace("thickness 12 mm", "thickness 6 mm"));
    await preview.waitForFigure("Mass", "525.7 g");
    await editor.writeOnDisk("heron.bar", HERON);
    await preview.waitForFigure("Mass", "1.051 kg");
  });

  it("draws what it missed while it was hidden", async () => {
    await editor.page.locator(".tab", { hasText: "Preview heron.bar" }).click();
    await editor.runCommand("File: New Untitled Text File");
    await preview.title.waitFor({ state: "detached" });
    await editor.page.locator(".tab", { hasText: "heron.bar" }).first().click();
    await editor.openFile("heron.bar");
    await editor.moveCursor(PLATE, "thickness 12".length + 1);
    await editor.typeText("0");
    await editor.page.locator(".tab", { hasText: "Preview heron.bar" }).click();
    await preview.waitForFigure("Mass", "10.51");
  });

  it("comes back after a reload", async () => {
    await editor.save();
    await editor.page.reload();
    const restored = viewPreview(editor);
    await restored.edges.first().waitFor({ state: "attached", timeout: 90_000 });
    await restored.waitForFigure("Mass", "1.051 kg");
    expect(await restored.title.textContent()).toBe("Pickled Heron two-tooth");
  }, 150_000);

  it("makes no error in the editor", () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

async function settledScale(scale: () => Promise<string>): Promise<string> {
  await new Promise((resolve) => setTimeout(resolve, 250));
  return scale();
}

import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { viewPreview } from "./preview-view.ts";
import { HERON } from "./samples.ts";

const ROUNDS = 100;

describe("opening and closing the preview many times", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({
      files: { "heron.bar": HERON, ".vscode/settings.json": '{ "barwright.developer": true }' },
      open: "heron.bar",
    });
  });

  afterAll(() => editor?.close());

  it(`leaves nothing behind after ${ROUNDS} times`, async () => {
    const tab = editor.page.locator(".tab", { hasText: "Preview heron.bar" });
    for (let round = 0; round < ROUNDS; round += 1) {
      await editor.page.locator('.editor-actions a[aria-label^="Open Preview Beside"]').first().click();
      await tab.waitFor();
      // Some are closed while they load, some when they are drawn.
      if (round % 10 === 0) await viewPreview(editor).edges.first().waitFor({ state: "attached" });
      await tab.hover();
      await tab.locator(".codicon-close").click();
      await tab.waitFor({ state: "detached" });
    }
    await expect.poll(() => editor.page.locator("iframe.webview").count()).toBe(0);
    await editor.runCommand("Barwright: Show Live Counts (for Developers)");
    const counts = editor.page.locator(".notification-list-item", { hasText: "previews" });
    await expect.poll(() => counts.textContent()).toContain("previews 0, studies 0, listeners 0, outlines 1");
  }, 480_000);

  it("makes no error in the editor", { retry: 0 }, () => {
    expect(editor.takeFaults()).toEqual([]);
  });
});

import { expect } from "vitest";
import type { Editor } from "./harness.ts";

/** Where the editor asks for the place of a file. */
export function placeBox(editor: Editor) {
  return editor.page.locator('.quick-input-widget input[type="text"]');
}

/** Agrees to the place that the dialog suggests, and gives it. */
export async function acceptPlace(editor: Editor, ending: string): Promise<string> {
  const box = placeBox(editor);
  await expect.poll(() => box.inputValue()).toContain(ending);
  const place = await box.inputValue();
  await box.press("Enter");
  return place;
}

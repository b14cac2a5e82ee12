import { openEditor } from "../../editor/harness.ts";
import { HERON } from "../../editor/samples.ts";

/**
 * How long the editor says that loading the extension's code and calling its `activate` took together, over some starts,
 * in ms: the figure of "Developer: Show Running Extensions".
 * @param isRunning true: the outline is opened in an editor that runs; false: it is what the editor starts with, and
 * the extension is loaded while the editor itself is
 */
export async function measureActivation(starts: number, isRunning: boolean): Promise<number[]> {
  const times: number[] = [];
  for (let start = 0; start < starts; start += 1) {
    const files = { "heron.bar": HERON, "notes.txt": "Nothing.\n" };
    const editor = await openEditor({ files, open: isRunning ? "notes.txt" : "heron.bar" });
    if (isRunning) {
      // Past what the editor puts off until it is idle.
      await editor.page.waitForTimeout(5000);
      await editor.openFile("heron.bar");
    }
    await editor.waitForLens("kg");
    await editor.runCommand("Developer: Show Running Extensions");
    const row = editor.page.locator(".runtime-extensions-editor .monaco-list-row", { hasText: "Barwright" });
    const text =
      (await row
        .filter({ hasText: /Activation/ })
        .first()
        .textContent()) ?? "";
    const time = /Activation:\s*(\d+)\s*ms/.exec(text)?.[1];
    await editor.close();
    if (time === undefined) throw new Error(`The editor tells no activation time: ${text}`);
    times.push(Number(time));
  }
  return times;
}

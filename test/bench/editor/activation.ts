import { openEditor } from "../../editor/harness.ts";
import { HERON } from "../../editor/samples.ts";

/** How long the editor says that loading and activating the extension took, over some starts, in ms. */
export async function measureActivation(starts: number): Promise<number[]> {
  const times: number[] = [];
  for (let start = 0; start < starts; start += 1) {
    const editor = await openEditor({ files: { "heron.bar": HERON }, open: "heron.bar" });
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

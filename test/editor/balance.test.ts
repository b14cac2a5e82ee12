import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { SAMPLES } from "../samples/samples.ts";
import type { Editor } from "./harness.ts";
import { openEditor } from "./harness.ts";
import { lineOf } from "./samples.ts";

const LIMPET = SAMPLES.find(({ file }) => file.startsWith("brass-limpet"))?.text ?? "";
const OFF = LIMPET.replace("let tail = 89.77 mm", "let tail = 70 mm");
const ONE_ERROR = { errors: 1, warnings: 0 };

describe("balancing by lets", () => {
  let editor: Editor;

  beforeAll(async () => {
    editor = await openEditor({ files: { "limpet.bar": OFF }, open: "limpet.bar" });
  });

  afterAll(() => editor?.close());

  beforeEach(() => editor.startAfresh("limpet.bar", OFF, ONE_ERROR));

  it("tells above the statement what would change, and a click writes it", async () => {
    await editor.moveCursor(lineOf(OFF, "balance by"), 1);
    expect(await editor.waitForLens("Balance: tail")).toContain("tail 70 mm → 89.");
    await editor.page.locator(".codelens-decoration a", { hasText: "Balance: tail" }).first().click();
    await editor.waitForProblems({ errors: 0, warnings: 0 });
    expect(await editor.waitForLens("Balanced by tail, lower")).toMatch(/: G\d/);
  });

  it("mends an imbalance by a quick fix that is told with its values", async () => {
    await editor.moveCursor(lineOf(OFF, "require balance"), 3);
    await editor.page.locator(".squiggly-error").first().waitFor();
    const titles = await editor.quickFixTitles();
    const title = titles.find((text) => text.includes("Balance by tail, lower: tail = 89.")) ?? "";
    expect(title, titles.join("; ")).not.toBe("");
    await editor.quickFix(title);
    await editor.waitForProblems({ errors: 0, warnings: 0 });
  });
});

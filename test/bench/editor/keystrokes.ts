import { type Editor, openEditor } from "../../editor/harness.ts";
import { openPreview } from "../../editor/preview-view.ts";

/** Between two keys, as of a quick typist; the drawing of one is done before the next. */
const PAUSE_MS = 60;

const LONGEST_MS = 60_000;

/** The times are noted in the page: asking for them more often would only take the processor from what is measured. */
const ASK_EVERY_MS = 40;

/** Times that a script in a page has noted, on the one clock that all its frames share. */
const NOTE_TIME = "performance.timeOrigin + performance.now()";

/** Pages change in a frame's own callback: what is queued behind it runs when that frame is painted. */
const AFTER_PAINT = `
  const afterPaint = (call) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = call;
    port2.postMessage(null);
  };`;

/** From each key to the frame in which the drawing has followed it, in ms. */
export async function measureDrawing(text: string, count: number): Promise<number[]> {
  return withEditor(text, async (editor) => {
    const frame = await (await openPreview(editor)).frameOf();
    await noteKeys(editor);
    await frame.evaluate(`
      ${AFTER_PAINT}
      window.drawn = [];
      new MutationObserver(() => afterPaint(() => window.drawn.push(${NOTE_TIME})))
        .observe(document.querySelector(".plate"), { attributes: true, attributeFilter: ["d"] });`);
    const times: number[] = [];
    for (const key of await keysAt(editor, count)) {
      const before = Number(await frame.evaluate("window.drawn.length"));
      await editor.page.keyboard.press(key);
      const drawn = await firstNumber(() => frame.evaluate(`window.drawn[${before}] ?? null`));
      times.push(drawn - (await lastKey(editor)));
      await editor.page.waitForTimeout(PAUSE_MS);
    }
    return times;
  });
}

/** From each key to the frame that shows its letter, typed without a wait while a preview follows or none, in ms. */
export async function measureLetters(text: string, count: number, hasPreview: boolean): Promise<number[]> {
  return withEditor(text, async (editor) => {
    if (hasPreview) await openPreview(editor);
    await noteKeys(editor);
    await editor.page.evaluate(`
      ${AFTER_PAINT}
      window.shown = [];
      new MutationObserver(() => afterPaint(() => window.shown.push(${NOTE_TIME})))
        .observe(document.querySelector(".editor-instance .view-lines"), { childList: true, subtree: true, characterData: true });`);
    const times: number[] = [];
    for (const key of await keysAt(editor, count)) {
      await editor.page.keyboard.press(key);
      await editor.page.waitForTimeout(PAUSE_MS);
      const pressed = await lastKey(editor);
      const shown = `window.shown.find((time) => time > ${pressed}) ?? null`;
      times.push((await firstNumber(() => editor.page.evaluate(shown))) - pressed);
    }
    return times;
  });
}

/** Asks until there is an answer: a page whose content policy is closed cannot be told to wait for a script. */
async function firstNumber(ask: () => Promise<unknown>): Promise<number> {
  const end = performance.now() + LONGEST_MS;
  for (;;) {
    await new Promise((done) => setTimeout(done, ASK_EVERY_MS));
    const answer = await ask();
    if (typeof answer === "number") return answer;
    if (performance.now() > end) throw new Error(`nothing came in ${LONGEST_MS} ms`);
  }
}

async function withEditor(text: string, measure: (editor: Editor) => Promise<number[]>): Promise<number[]> {
  const editor = await openEditor({ files: { "wheel.bar": text }, open: "wheel.bar" });
  try {
    return await measure(editor);
  } finally {
    await editor.close();
  }
}

async function noteKeys(editor: Editor): Promise<void> {
  await editor.page.evaluate(`
    window.keys = [];
    window.addEventListener("keydown", () => window.keys.push(${NOTE_TIME}), { capture: true });`);
}

async function lastKey(editor: Editor): Promise<number> {
  return Number(await editor.page.evaluate("window.keys.at(-1)"));
}

/** Puts the cursor behind the decimals of the tip radius; each key then changes the drawing. */
async function keysAt(editor: Editor, count: number): Promise<readonly string[]> {
  const lines = (await editor.editorText()).split("\n");
  const line = lines.findIndex((candidate) => candidate.startsWith("let tip = 120")) + 1;
  if (line === 0) throw new Error(`There is no tip radius in:\n${lines.join("\n")}`);
  await editor.moveCursor(line, "let tip = 120".length + 1);
  await editor.typeText(".5");
  await editor.page.waitForTimeout(3000);
  return Array.from({ length: count }, (_, index) => (index % 2 === 0 ? "7" : "Backspace"));
}

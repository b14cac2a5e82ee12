import type { Locator, Page } from "playwright-core";
import type { Workbench } from "./workbench.ts";

/** Lenses and inlay hints settle up to 1.7 s after the last edit on a quiet machine; a busy one needs more. */
const SETTLE_MS = 15_000;

/** The text in the active editor and what the extension shows in it. */
export interface CodeView {
  /** The language of the active editor, such as `bar`. */
  languageId(): Promise<string | null>;
  /** The lines in view, without inlay hints. */
  editorText(): Promise<string>;
  /** Waits until the lines in view hold a text. */
  waitForEditorText(text: string): Promise<void>;
  /** Types at the cursor, which has to be in the text, key by key; brackets and quotes close themselves, as for a user. */
  typeText(text: string): Promise<void>;
  /** Replaces the whole text at once, as a paste does. */
  replaceText(text: string): Promise<void>;
  /** Waits until a code lens holds this text, and gives all of its text. */
  waitForLens(text: string): Promise<string>;
  /** Waits until an inlay hint holds this text, and gives all of its text. */
  waitForInlay(text: string): Promise<string>;
  /** All inlay hints in view. */
  inlays(): Locator;
  /** The titles of the quick fixes at the cursor. */
  quickFixTitles(): Promise<string[]>;
  /** Applies the quick fix of this title at the cursor. */
  quickFix(title: string): Promise<void>;
  /** What the hover at a place says, counted from 1. */
  hover(line: number, column: number): Promise<string>;
}

/** Views the active editor of a workbench. */
export function viewCode(page: Page, workbench: Workbench): CodeView {
  const code = page.locator(".editor-group-container.active .editor-instance .monaco-editor").first();
  return {
    languageId: () => code.locator("xpath=ancestor-or-self::*[@data-mode-id]").getAttribute("data-mode-id"),
    editorText: () => readLines(code),
    waitForEditorText: (text) => waitForText(page, code, text),
    typeText: (text) => page.keyboard.type(text),
    replaceText: async (text) => {
      // A webview that was just being loaded may have taken the focus.
      await code.locator("textarea.inputarea").focus();
      await page.keyboard.press("Control+a");
      await paste(code, text);
    },
    waitForLens: (text) => waitForPart(code.locator(".codelens-decoration"), text),
    waitForInlay: (text) => waitForPart(code.locator(INLAY), text),
    inlays: () => code.locator(INLAY),
    quickFixTitles: () => readFixes(page),
    quickFix: (title) => applyFix(page, title),
    hover: async (line, column) => {
      await workbench.moveCursor(line, column);
      return readHover(page, workbench);
    },
  };
}

/** As the browser does it: typed text would be indented by the editor once more. */
async function paste(code: Locator, text: string): Promise<void> {
  await code.locator("textarea.inputarea").evaluate((input, pasted) => {
    const { DataTransfer, ClipboardEvent } = globalThis as unknown as PageGlobals;
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", pasted);
    input.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}

/** What the browser has and Node, whose types these tests see, has not. */
interface PageGlobals {
  readonly DataTransfer: new () => { setData(type: string, data: string): void };
  readonly ClipboardEvent: new (type: string, options: Record<string, unknown>) => Event;
}

/** Inlay hints are parts of a line; the editor gives them, and nothing else in a line, a made-up style class. */
const INLAY = '.view-line span[class*="dyn-rule"]';

async function waitForPart(parts: Locator, text: string): Promise<string> {
  const part = parts.filter({ hasText: text }).first();
  await part.waitFor({ timeout: SETTLE_MS });
  return plain((await part.textContent()) ?? "");
}

/** The editor shows spaces as no-break spaces. */
function plain(text: string): string {
  return text.replaceAll("\u00a0", " ");
}

async function waitForText(page: Page, code: Locator, text: string): Promise<void> {
  const end = Date.now() + SETTLE_MS;
  for (;;) {
    const seen = await readLines(code);
    if (seen.includes(text)) return;
    if (Date.now() > end) throw new Error(`The editor shows:\n${seen}`);
    await page.waitForTimeout(50);
  }
}

/** The lines stand in the page in any order, each at its height; their spaces are no-break spaces. */
async function readLines(code: Locator): Promise<string> {
  const lines = await code.locator(".view-lines .view-line").evaluateAll((found) =>
    found.map((line) => {
      const copy = line.cloneNode(true) as typeof line;
      for (const hint of copy.querySelectorAll('[class*="dyn-rule"]')) hint.remove();
      return {
        top: Number.parseFloat((line as { style: { top: string } }).style.top),
        text: copy.textContent ?? "",
      };
    }),
  );
  const ordered = lines.sort((a, b) => a.top - b.top).map(({ text }) => plain(text));
  return ordered.join("\n");
}

async function openFixes(page: Page): Promise<Locator> {
  await page.keyboard.press("Control+.");
  const rows = page.locator(".action-widget .monaco-list-row.action");
  await rows.first().waitFor({ timeout: SETTLE_MS });
  return rows;
}

async function readFixes(page: Page): Promise<string[]> {
  const rows = await openFixes(page);
  const titles = await rows.allTextContents();
  await page.keyboard.press("Escape");
  return titles.map((title) => title.trim());
}

/** By keyboard: the widget shields itself from the mouse until the mouse has moved. */
async function applyFix(page: Page, title: string): Promise<void> {
  const rows = await openFixes(page);
  const titles = (await rows.allTextContents()).map((text) => text.trim());
  const steps = titles.indexOf(title);
  if (steps < 0) throw new Error(`No such quick fix. There are: ${titles.join(" | ")}`);
  for (let step = 0; step < steps; step++) await page.keyboard.press("ArrowDown");
  await rows.nth(steps).and(page.locator(".focused")).waitFor();
  await page.keyboard.press("Enter");
  await page.locator(".action-widget").waitFor({ state: "hidden" });
}

async function readHover(page: Page, workbench: Workbench): Promise<string> {
  await workbench.runCommand("Show or Focus Hover");
  // The pointer would have a hover of its own where the list has closed under it.
  await page.mouse.move(0, 0);
  const hover = page.locator(".monaco-hover:not(.hidden) .hover-contents");
  await hover.filter({ hasNotText: "Loading..." }).first().waitFor({ timeout: SETTLE_MS });
  const parts = await hover.allInnerTexts();
  await page.keyboard.press("Escape");
  return parts.join("\n");
}

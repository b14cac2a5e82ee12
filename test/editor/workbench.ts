import type { FrameLocator, Locator, Page } from "playwright-core";

/** What the workbench calls each theme's kind. */
const THEMES = {
  "Light Modern": "vs",
  "Dark Modern": "vs-dark",
  "Dark High Contrast": "hc-black",
  "Light High Contrast": "hc-light",
} as const;

/** A theme by its name in the list of themes. */
export type ThemeName = keyof typeof THEMES;

/** The window around the text: palette, files, tabs, status bar, webviews. */
export interface Workbench {
  /** Opens a file by its name or path in the folder and puts the cursor into it. */
  openFile(name: string): Promise<void>;
  /** Runs a command by its whole title in the palette, such as `File: Save`. */
  runCommand(title: string): Promise<void>;
  /** Puts the cursor at a place of the active editor, counted from 1, and waits until it stands in that line. */
  moveCursor(line: number, column: number): Promise<void>;
  /** Opens a palette by its key and waits for its input; what a palette lists is in `paletteRows`. */
  openPalette(key: string): Promise<Locator>;
  /** The rows of the open palette or picker. */
  paletteRows(): Locator;
  /** Where the cursor stands, in the words of the status bar: `Ln 3, Col 7 (12 selected)`. */
  cursorPlace(): Promise<string>;
  /** Closes whatever a palette, dialog, notification or list has left open, and unsaved files with all they hold. */
  clearAway(): Promise<void>;
  setTheme(name: ThemeName): Promise<void>;
  /** Saves the active editor and waits until that is done. */
  save(): Promise<void>;
  /** Whether the active tab has unsaved changes. */
  isDirty(): Promise<boolean>;
  /** The counts in the status bar, of all files that have problems. */
  problems(): Promise<ProblemCounts>;
  /** Waits until the counts in the status bar are these. */
  waitForProblems(counts: ProblemCounts): Promise<void>;
  /** The page within the visible webview. It may still be empty: wait for something in it. */
  previewFrame(): FrameLocator;
}

export interface ProblemCounts {
  readonly errors: number;
  readonly warnings: number;
}

/** Drives the workbench in a page by keyboard, as a user would. */
export function driveWorkbench(page: Page): Workbench {
  const runCommand = (title: string) => pick(page, "F1", `>${title}`, whole(title));
  const cursorPlace = async () => (await page.locator(CURSOR_PLACE).textContent()) ?? "";
  return {
    runCommand,
    cursorPlace,
    openFile: (name) => openFile(page, name),
    moveCursor: async (line, column) => {
      await pick(page, "Control+g", `:${line},${column}`, /./);
      await page.locator(".quick-input-widget").waitFor({ state: "hidden" });
      await page.locator(FOCUSED_TEXT).waitFor();
      await page.locator(CURSOR_PLACE, { hasText: `Ln ${line}, ` }).waitFor();
    },
    openPalette: (key) => openPalette(page, key),
    paletteRows: () => page.locator(".quick-input-list .monaco-list-row"),
    clearAway: () => clearAway(page, runCommand),
    setTheme: async (name) => {
      await runCommand("Preferences: Color Theme");
      await choose(page, name, whole(name), CHOICE_MS);
      await page.locator(`.monaco-workbench.${THEMES[name]}`).waitFor();
    },
    save: async () => {
      await page.keyboard.press("Control+s");
      await activeTab(page).and(page.locator(":not(.dirty)")).waitFor();
    },
    isDirty: async () => (await activeTab(page).and(page.locator(".dirty")).count()) > 0,
    problems: () => readProblems(page),
    waitForProblems: (counts) => waitForProblems(page, counts),
    previewFrame: () => page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame"),
  };
}

const CURSOR_PLACE = "#status\\.editor\\.selection";

export const FOCUSED_TEXT = ".editor-instance .monaco-editor.focused";

function activeTab(page: Page): Locator {
  return page.locator(".editor-group-container.active .tab.active");
}

async function openFile(page: Page, name: string): Promise<void> {
  const base = name.slice(name.lastIndexOf("/") + 1);
  const tab = activeTab(page).and(page.locator(`[data-resource-name="${base}"]`));
  const isOpen = name === base && (await tab.count()) > 0 && (await page.locator(FOCUSED_TEXT).count()) > 0;
  if (isOpen) return;
  await pick(page, "Control+p", name, whole(base));
  await tab.waitFor();
  await page.locator(FOCUSED_TEXT).waitFor();
}

/** What Escape closes. */
const IN_THE_WAY = [
  ".quick-input-widget:visible",
  ".monaco-dialog-box",
  ".suggest-widget.visible",
  ".parameter-hints-widget.visible",
  ".rename-box:visible",
  ".action-widget:visible",
].join(", ");

/** More than can be open at once. */
const MOST_ESCAPES = 6;

async function clearAway(page: Page, runCommand: (title: string) => Promise<void>): Promise<void> {
  for (let count = 0; count < MOST_ESCAPES && (await page.locator(IN_THE_WAY).count()) > 0; count += 1) {
    await page.keyboard.press("Escape");
    await page.waitForTimeout(50);
  }
  const unsaved = page.locator('.tab[data-resource-name^="Untitled"]');
  for (let left = await unsaved.count(); left > 0; left -= 1) {
    await unsaved.first().click();
    await runCommand("View: Revert and Close Editor");
    await unsaved.nth(left - 1).waitFor({ state: "detached" });
  }
  if ((await page.locator(".notification-list-item").count()) > 0)
    await runCommand("Notifications: Clear All Notifications");
}

/** Matches a label that is this text and no more. */
function whole(text: string): RegExp {
  return new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`);
}

/**
 * Opens a palette by a key and chooses the first row whose label fits. A webview that is just being loaded takes the
 * key, or later the focus, and the palette closes: then once more, as one would.
 */
async function pick(page: Page, key: string, text: string, label: RegExp): Promise<void> {
  for (let count = 1; ; count += 1) {
    try {
      await openPalette(page, key);
      return await choose(page, text, label, CHOICE_MS);
    } catch (error) {
      if (count === MOST_TRIES) throw error;
    }
  }
}

async function openPalette(page: Page, key: string): Promise<Locator> {
  const input = page.locator('.quick-input-widget input[type="text"]');
  for (let count = 1; ; count += 1) {
    await page.keyboard.press(key);
    try {
      await input.waitFor({ timeout: PALETTE_MS });
      return input;
    } catch (error) {
      if (count === MOST_TRIES) throw error;
    }
  }
}

const PALETTE_MS = 4000;
const CHOICE_MS = 10_000;
const MOST_TRIES = 3;

/** Types into the open palette and clicks the first row whose label fits, when it has come. */
async function choose(page: Page, text: string, label: RegExp, timeout: number): Promise<void> {
  const palette = page.locator(".quick-input-widget");
  await palette.locator('input[type="text"]').fill(text, { timeout });
  // By its label, not by its place in the list: the list is filled in several steps.
  const rows = palette.locator(".quick-input-list .monaco-list-row");
  await rows
    .filter({ has: page.locator(".label-name", { hasText: label }) })
    .first()
    .click({ timeout });
}

/** How long a count may take to come, on a machine that does other work too. */
const COUNT_MS = 15_000;

/** Reads the status bar's "No Problems", "Errors: 1" or "Errors: 1, Warnings: 2". */
async function readProblems(page: Page): Promise<ProblemCounts> {
  const label = (await page.locator("#status\\.problems a").getAttribute("aria-label")) ?? "";
  const count = (word: string) => Number(new RegExp(`${word}: (\\d+)`).exec(label)?.[1] ?? 0);
  return { errors: count("Errors"), warnings: count("Warnings") };
}

async function waitForProblems(page: Page, wanted: ProblemCounts): Promise<void> {
  const end = Date.now() + COUNT_MS;
  for (;;) {
    const { errors, warnings } = await readProblems(page);
    if (errors === wanted.errors && warnings === wanted.warnings) return;
    if (Date.now() > end) throw new Error(`There are ${errors} errors and ${warnings} warnings.`);
    await page.waitForTimeout(50);
  }
}

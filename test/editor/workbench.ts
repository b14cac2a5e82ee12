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
  /** Puts the cursor at a place of the active editor, counted from 1. */
  moveCursor(line: number, column: number): Promise<void>;
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
  return {
    runCommand,
    openFile: (name) => openFile(page, name),
    moveCursor: async (line, column) => {
      await pick(page, "Control+g", `:${line},${column}`, /./);
    },
    setTheme: async (name) => {
      await runCommand("Preferences: Color Theme");
      await choose(page, name, whole(name));
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

function activeTab(page: Page): Locator {
  return page.locator(".editor-group-container.active .tab.active");
}

async function openFile(page: Page, name: string): Promise<void> {
  const base = name.slice(name.lastIndexOf("/") + 1);
  await pick(page, "Control+p", name, whole(base));
  await activeTab(page)
    .and(page.locator(`[data-resource-name="${base}"]`))
    .waitFor();
  await page.locator(".editor-instance .monaco-editor.focused").waitFor();
}

/** Matches a label that is this text and no more. */
function whole(text: string): RegExp {
  return new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`);
}

/** Opens the palette by a key and chooses the first row whose label fits. */
async function pick(page: Page, key: string, text: string, label: RegExp): Promise<void> {
  await page.keyboard.press(key);
  await choose(page, text, label);
}

/** Types into the open palette and clicks the first row whose label fits, when it has come. */
async function choose(page: Page, text: string, label: RegExp): Promise<void> {
  const palette = page.locator(".quick-input-widget");
  await palette.locator('input[type="text"]').fill(text);
  // By its label, not by its place in the list: the list is filled in several steps.
  const rows = palette.locator(".quick-input-list .monaco-list-row");
  await rows
    .filter({ has: page.locator(".label-name", { hasText: label }) })
    .first()
    .click();
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

import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import type { Page } from "playwright-core";
import { startPlayground } from "../../extension/playground/server.ts";
import { launchBrowser } from "./browser.ts";
import type { CodeView } from "./code-view.ts";
import { viewCode } from "./code-view.ts";
import { watchFaults } from "./fault-watch.ts";
import type { ProblemCounts, Workbench } from "./workbench.ts";
import { driveWorkbench } from "./workbench.ts";

const ROOT = resolve(import.meta.dirname, "../..");

/** Loading the workbench: 12 MB of scripts, 4 to 9 s where two others run tests. */
const START_MS = 60_000;

const STEP_MS = 30_000;

export interface EditorOptions {
  /** A folder to work on a copy of, or the texts of its files by name. */
  readonly files: string | Readonly<Record<string, string>>;
  /** The file opened at the start, by its name in the folder. */
  readonly open?: string;
  readonly settings?: Readonly<Record<string, unknown>>;
  readonly viewport?: { readonly width: number; readonly height: number };
}

/** The real workbench in a browser, with the extension and a folder of its own. Positions count from 1. */
export interface Editor extends Workbench, CodeView {
  readonly page: Page;
  /** The folder on the disk. */
  readonly folder: string;
  readSavedFile(name: string): Promise<string>;
  /** Writes to the disk behind the editor's back. */
  writeOnDisk(name: string, text: string): Promise<void>;
  removeOnDisk(name: string): Promise<void>;
  /**
   * Makes the editor what a test begins with, whatever the one before left, also where that one failed: nothing in the
   * way, this file in front with this text, the cursor in it, and no problem told but those of `counts`.
   */
  startAfresh(name: string, text: string, counts?: ProblemCounts): Promise<void>;
  /** Takes a picture into a temporary folder and gives its path. */
  screenshot(name: string): Promise<string>;
  /** Console errors and requests that leave the machine since the last call, for tests that provoke them. */
  takeFaults(): string[];
  /** Stops everything, and throws if there were faults that no test took. */
  close(): Promise<void>;
}

/** Starts the editor on a copy of the files. Call `close` in `afterAll` or `afterEach`. */
export async function openEditor(options: EditorOptions): Promise<Editor> {
  const folder = await makeFolder(options.files);
  const playground = await startPlayground({
    folder,
    productRoot: ROOT,
    open: options.open === undefined ? null : `/${options.open}`,
    settings: options.settings ?? {},
  });
  const browser = await launchBrowser();
  const context = await browser.newContext({ viewport: options.viewport ?? { width: 1280, height: 1000 } });
  const faults = watchFaults(context);
  const page = await context.newPage();
  // Less than a test may take: what is waited for in vain is then named.
  page.setDefaultTimeout(STEP_MS);
  const workbench = driveWorkbench(page);
  const editor: Editor = {
    ...workbench,
    ...viewCode(page, workbench),
    page,
    folder,
    readSavedFile: (name) => readFile(join(folder, name), "utf8"),
    writeOnDisk: (name, text) => writeFile(join(folder, name), text),
    removeOnDisk: (name) => rm(join(folder, name), { force: true }),
    startAfresh: async (name, text, counts = { errors: 0, warnings: 0 }) => {
      await editor.clearAway();
      await editor.openFile(name);
      await editor.replaceText(text);
      await editor.waitForProblems(counts);
    },
    screenshot: (name) => takePicture(page, name),
    takeFaults: faults.take,
    close: async () => {
      await browser.close();
      await playground.close();
      await rm(dirname(folder), { recursive: true, force: true });
      const left = faults.take();
      if (left.length > 0) throw new Error(`Faults in the editor:\n${left.join("\n")}`);
    },
  };
  await start(editor, playground.address, options.open);
  return editor;
}

/** Loads the workbench; where that fails, stops everything and says what was seen. */
async function start(editor: Editor, address: string, open: string | undefined): Promise<void> {
  try {
    await editor.page.goto(address, { timeout: START_MS });
    await waitForWorkbench(editor.page, open);
  } catch (cause) {
    const picture = await editor.screenshot("start-failed").catch(() => "none");
    const seen = [...editor.takeFaults(), `Picture: ${picture}`].join("\n");
    await editor.close();
    throw new Error(`The editor did not start.\n${seen}`, { cause });
  }
}

async function takePicture(page: Page, name: string): Promise<string> {
  const path = join(tmpdir(), "barwright-pictures", `${name}.png`);
  await page.screenshot({ path });
  return path;
}

/** Copies or writes the files into a temporary folder named `bars`. */
async function makeFolder(files: EditorOptions["files"]): Promise<string> {
  const folder = join(await mkdtemp(join(tmpdir(), "barwright-editor-")), "bars");
  if (typeof files === "string") {
    await cp(files, folder, { recursive: true });
    return folder;
  }
  await mkdir(folder);
  for (const [name, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), text);
  }
  return folder;
}

async function waitForWorkbench(page: Page, open: string | undefined): Promise<void> {
  const explorer = page.locator(".explorer-folders-view .monaco-list-row").first();
  await explorer.waitFor({ timeout: START_MS });
  if (open !== undefined) {
    await page.locator(".editor-instance .monaco-editor .view-line").first().waitFor({ timeout: START_MS });
  }
}

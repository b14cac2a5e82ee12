import { randomBytes } from "node:crypto";
import { constants } from "node:fs";
import { access, link, readFile, rename, unlink, writeFile } from "node:fs/promises";
import process from "node:process";
import { setImmediate } from "node:timers/promises";
import { CallError, type World } from "./world.ts";

/** Larger files are not outline files: refuse before reading them into memory. */
const MOST_BYTES = 16 * 1024 * 1024;

/** The real world: files and the terminal of this process. */
export function nodeWorld(): World {
  return {
    read,
    write,
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    progress: tellProgress,
    breathe: breatheWith(),
    terminal: { colour: mayColour(), columns: process.stdout.columns ?? 80 },
  };
}

/** On one line of the terminal, written over again and again. */
function tellProgress(text: string): void {
  if (process.stderr.isTTY !== true) return;
  const width = Math.max(0, (process.stderr.columns ?? 80) - 1);
  process.stderr.write(`\r${text.slice(0, width)}\u001b[K`);
}

/** From the first breath on, Ctrl-C asks the work to stop; pressed again it ends the program as ever. */
function breatheWith(): () => Promise<boolean> {
  let isListening = false;
  let isStopped = false;
  return async () => {
    if (!isListening) {
      isListening = true;
      process.once("SIGINT", () => {
        isStopped = true;
      });
    }
    await setImmediate();
    return isStopped;
  };
}

function mayColour(): boolean {
  // https://no-color.org: any non-empty value switches colour off.
  return process.stdout.isTTY === true && !process.env["NO_COLOR"] && process.env["TERM"] !== "dumb";
}

async function read(path: string): Promise<string> {
  try {
    const bytes = await readFile(path);
    if (bytes.length > MOST_BYTES)
      throw new CallError(`${path} is too large for an outline file (over 16 MB).`);
    return bytes.toString("utf8");
  } catch (error) {
    throw error instanceof CallError ? error : new CallError(`Cannot read ${path}: ${reasonOf(error)}.`);
  }
}

async function write(path: string, content: string, overwrite: boolean): Promise<void> {
  const temporary = `${path}.${randomBytes(6).toString("hex")}.tmp`;
  try {
    await writeFile(temporary, content, { flag: "wx" });
    await put(temporary, path, overwrite);
  } catch (error) {
    await unlink(temporary).catch(() => undefined);
    throw error instanceof CallError ? error : new CallError(`Cannot write ${path}: ${reasonOf(error)}.`);
  }
}

/** Give the finished file its name. Without `overwrite` a link decides, so that two writers cannot both win. */
async function put(temporary: string, path: string, overwrite: boolean): Promise<void> {
  if (overwrite) return rename(temporary, path);
  try {
    await link(temporary, path);
  } catch (error) {
    if (codeOf(error) === "EEXIST") throw alreadyThere(path);
    // File systems without hard links: look first, then rename.
    const exists = await access(path, constants.F_OK).then(
      () => true,
      () => false,
    );
    if (exists) throw alreadyThere(path);
    return rename(temporary, path);
  }
  await unlink(temporary);
}

function alreadyThere(path: string): CallError {
  return new CallError(`${path} exists already; --force replaces it.`);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of the path is not a folder",
  EACCES: "permission denied",
  EPERM: "permission denied",
  ENOSPC: "the disk is full",
};

function reasonOf(error: unknown): string {
  const code = codeOf(error);
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}

function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}

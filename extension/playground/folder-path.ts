import { lstat, realpath } from "node:fs/promises";
import { dirname, join, sep } from "node:path";
import { FolderError, systemCode } from "./folder-error.ts";

/**
 * Splits a path within the folder (`/parts/long.bar`) into its names. Throws a FolderError (`refused`) for anything
 * that could mean a place outside: no leading slash, `.` and `..`, empty names, backslashes, NUL, and on Windows the
 * colon of drives and streams.
 */
export function splitPath(path: string): string[] {
  if (!path.startsWith("/") || path.includes("\0") || path.includes("\\")) throw refused();
  if (process.platform === "win32" && path.includes(":")) throw refused();
  if (path === "/") return [];
  const names = path.slice(1).split("/");
  if (names.some((name) => name === "" || name === "." || name === "..")) throw refused();
  return names;
}

/**
 * The place on the disk of an entry itself, a link not followed: for removing, renaming and making. `root` is a real
 * path (no links in it). Throws a FolderError when its parent is missing or a link leads out of the folder.
 */
export async function locateEntry(root: string, path: string): Promise<string> {
  const names = splitPath(path);
  const name = names.pop();
  if (name === undefined) return root;
  return join(await realInside(root, join(root, ...names)), name);
}

/**
 * The place on the disk where an entry's content lies, links followed: for reading and writing. A file that does not
 * exist yet is located by its parent. Throws a FolderError when a link leads out of the folder or nowhere.
 */
export async function locateContent(root: string, path: string): Promise<string> {
  const entry = await locateEntry(root, path);
  if (await isMissing(entry)) return entry;
  return realInside(root, entry);
}

/** True where not even a link stands: a link to nowhere must not pass for a new file. */
async function isMissing(place: string): Promise<boolean> {
  try {
    await lstat(place);
    return false;
  } catch (error) {
    if (systemCode(error) === "ENOENT") return true;
    throw error;
  }
}

/**
 * The real path, refused unless it lies in the root. What is missing is looked for only in the root, so that nobody
 * learns what exists behind a link that leads out.
 */
async function realInside(root: string, place: string): Promise<string> {
  let real: string;
  try {
    real = await realpath(place);
  } catch (error) {
    if (systemCode(error) === "ENOENT") await realInside(root, dirname(place));
    throw error;
  }
  if (!isInside(root, real)) throw refused();
  return real;
}

/** Whether a real path is the root or lies below it; both without links and dots. */
function isInside(root: string, real: string): boolean {
  return real === root || real.startsWith(root.endsWith(sep) ? root : root + sep);
}

function refused(): FolderError {
  return new FolderError("refused", "This path does not lie in the served folder.");
}

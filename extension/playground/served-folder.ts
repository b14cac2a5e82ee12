import type { Dirent, Stats } from "node:fs";
import { lstat, mkdir, readdir, readFile, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { FolderError, systemCode } from "./folder-error.ts";
import { locateContent, locateEntry, splitPath } from "./folder-path.ts";
import type { EntryStat, FolderEntry } from "./protocol.ts";
import { isTemporaryName, writeFileAtomically } from "./write-file-atomically.ts";

/** Folders whose content nobody edits here and whose size would slow the search for files. */
const UNSEARCHED = new Set([".git", "node_modules"]);

/** More files than anyone picks from by name; keeps a folder served by mistake (a home folder) from stalling. */
const MOST_FOUND = 10_000;

/**
 * The file operations on one folder, for paths within it (see protocol.ts). Nothing outside is read or written, links
 * included. Every operation throws a FolderError or the system's error (see `toFolderError`).
 */
export interface ServedFolder {
  stat(path: string): Promise<EntryStat | null>;
  list(path: string): Promise<FolderEntry[]>;
  /** Null where there is no such file. */
  read(path: string): Promise<Uint8Array | null>;
  write(path: string, bytes: Uint8Array, allow: { create: boolean; overwrite: boolean }): Promise<void>;
  make(path: string): Promise<void>;
  remove(path: string, recursive: boolean): Promise<void>;
  rename(from: string, to: string, overwrite: boolean): Promise<void>;
  /** The paths of all files below the folder, sorted; links are not entered. */
  all(): Promise<string[]>;
}

/** Serves a folder given by its real path (no links in it). */
export function serveFolder(root: string): ServedFolder {
  return {
    stat: (path) => statOf(root, path),
    list: (path) => listOf(root, path),
    read: (path) => read(root, path),
    write: (path, bytes, allow) => write(root, path, bytes, allow),
    make: async (path) => {
      await mkdir(await locateEntry(root, path));
    },
    remove: (path, recursive) => remove(root, path, recursive),
    rename: (from, to, overwrite) => move(root, from, to, overwrite),
    all: async () => {
      const found: string[] = [];
      await collectFiles(root, "", found);
      return found.sort();
    },
  };
}

async function statOf(root: string, path: string): Promise<EntryStat | null> {
  try {
    const entry = await lstat(await locateEntry(root, path));
    const content = await stat(await locateContent(root, path));
    return {
      type: typeOf(content),
      isLink: entry.isSymbolicLink(),
      createdMs: Math.trunc(content.birthtimeMs),
      modifiedMs: Math.trunc(content.mtimeMs),
      sizeBytes: content.size,
    };
  } catch (error) {
    if (systemCode(error) === "ENOENT" || systemCode(error) === "ENOTDIR") return null;
    throw error;
  }
}

function typeOf(entry: Stats): "file" | "folder" {
  if (entry.isDirectory()) return "folder";
  if (entry.isFile()) return "file";
  // Reading a pipe or device would wait for ever.
  throw new FolderError("refused", "This is neither a file nor a folder.");
}

async function listOf(root: string, path: string): Promise<FolderEntry[]> {
  const entries = await readdir(await locateContent(root, path), { withFileTypes: true });
  const listed = await Promise.all(entries.map((entry) => describe(root, path, entry)));
  return listed.filter((entry) => entry !== null);
}

/** One row of a list; null for what is not shown: temporary files, devices, links that lead nowhere or out. */
async function describe(root: string, path: string, entry: Dirent): Promise<FolderEntry | null> {
  if (isTemporaryName(entry.name)) return null;
  if (entry.isDirectory()) return { name: entry.name, type: "folder", isLink: false };
  if (entry.isFile()) return { name: entry.name, type: "file", isLink: false };
  const found = await statOf(root, `${path === "/" ? "" : path}/${entry.name}`).catch(() => null);
  return found === null ? null : { name: entry.name, type: found.type, isLink: found.isLink };
}

async function read(root: string, path: string): Promise<Uint8Array | null> {
  const found = await statOf(root, path);
  if (found === null) return null;
  if (found.type === "folder") throw new FolderError("is-folder", "A folder has no content to read.");
  return readFile(await locateContent(root, path));
}

async function write(
  root: string,
  path: string,
  bytes: Uint8Array,
  allow: { create: boolean; overwrite: boolean },
): Promise<void> {
  const found = await statOf(root, path);
  if (found?.type === "folder") throw new FolderError("is-folder", "A folder cannot be written to.");
  if (found === null && !allow.create) throw new FolderError("not-found", "There is no such file.");
  if (found !== null && !allow.overwrite) throw new FolderError("exists", "The file exists already.");
  await writeFileAtomically(await locateContent(root, path), bytes);
}

async function remove(root: string, path: string, recursive: boolean): Promise<void> {
  refuseRoot(path);
  const place = await locateEntry(root, path);
  const entry = await lstat(place);
  if (entry.isDirectory() && !recursive && (await readdir(place)).length > 0) {
    throw new FolderError("exists", "The folder is not empty.");
  }
  await rm(place, { recursive: true });
}

async function move(root: string, from: string, to: string, overwrite: boolean): Promise<void> {
  refuseRoot(from);
  refuseRoot(to);
  const source = await locateEntry(root, from);
  const target = await locateEntry(root, to);
  if (!overwrite && (await exists(target))) throw new FolderError("exists", "The target exists already.");
  await rename(source, target);
}

function refuseRoot(path: string): void {
  if (splitPath(path).length === 0) throw new FolderError("refused", "The served folder itself stays.");
}

async function exists(place: string): Promise<boolean> {
  return (await lstat(place).catch(() => null)) !== null;
}

async function collectFiles(root: string, path: string, found: string[]): Promise<void> {
  const entries = await readdir(join(root, ...splitPath(path || "/")), { withFileTypes: true });
  for (const entry of entries) {
    if (found.length >= MOST_FOUND) return;
    const below = `${path}/${entry.name}`;
    if (entry.isFile() && !isTemporaryName(entry.name)) found.push(below);
    if (entry.isDirectory() && !UNSEARCHED.has(entry.name)) await collectFiles(root, below, found);
  }
}

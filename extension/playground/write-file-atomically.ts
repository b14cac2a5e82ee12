import { randomBytes } from "node:crypto";
import { chmod, open, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

const TEMPORARY = /^\..*\.[0-9a-f]{12}\.part$/;

/** Whether a file name is one of the temporary ones below, which no list or change report should show. */
export function isTemporaryName(name: string): boolean {
  return TEMPORARY.test(name);
}

/**
 * Replaces a file's content in one step: the bytes go to a temporary file beside it, are flushed, and the temporary
 * file then takes the name. Whoever reads, and whatever breaks off, sees the old content or the new, never a part.
 * Keeps the old file's permissions. Throws the system's error, the old file untouched and the temporary one removed.
 */
export async function writeFileAtomically(place: string, bytes: Uint8Array): Promise<void> {
  const suffix = `${randomBytes(6).toString("hex")}.part`;
  const temporary = join(dirname(place), `.${basename(place)}.${suffix}`);
  try {
    await writeFlushed(temporary, bytes);
    await keepMode(place, temporary);
    await rename(temporary, place);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}

async function writeFlushed(place: string, bytes: Uint8Array): Promise<void> {
  const file = await open(place, "wx");
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Gives the temporary file the permissions of the file it is to replace, if there is one. */
async function keepMode(old: string, temporary: string): Promise<void> {
  const found = await stat(old).catch(() => null);
  if (found !== null) await chmod(temporary, found.mode);
}

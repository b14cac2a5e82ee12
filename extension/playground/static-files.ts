import { createReadStream } from "node:fs";
import { realpath, stat } from "node:fs/promises";
import type { ServerResponse } from "node:http";
import { pipeline } from "node:stream/promises";
import { locateContent, splitPath } from "./folder-path.ts";
import { mediaType } from "./media-type.ts";

/** Files of one folder of the product, offered to read. */
export interface StaticFiles {
  /** Sends the file at a path within the folder (`/out/loader.js`); false where there is none to send. */
  send(path: string, response: ServerResponse): Promise<boolean>;
}

/** Offers a folder's files; `offers` can narrow it down by the names of the path (`["dist", "browser.js"]`). */
export async function createStaticFiles(
  folder: string,
  offers: (names: readonly string[]) => boolean = () => true,
): Promise<StaticFiles> {
  const root = await realpath(folder);
  return {
    send: async (path, response) => {
      const place = await findFile(root, path, offers);
      if (place === null) return false;
      response.writeHead(200, { "Content-Type": mediaType(place.path), "Content-Length": place.sizeBytes });
      // A reader who goes away early ends the pipeline with an error, which concerns nobody.
      await pipeline(createReadStream(place.path), response).catch(() => {});
      return true;
    },
  };
}

async function findFile(
  root: string,
  path: string,
  offers: (names: readonly string[]) => boolean,
): Promise<{ path: string; sizeBytes: number } | null> {
  try {
    if (!offers(splitPath(path))) return null;
    const place = await locateContent(root, path);
    const found = await stat(place);
    return found.isFile() ? { path: place, sizeBytes: found.size } : null;
  } catch {
    // Outside, missing or unreadable: no file for this reader, and not their business which.
    return null;
  }
}

import { relative, sep } from "node:path";
import { watch } from "chokidar";
import type { FolderChange } from "./protocol.ts";
import { isTemporaryName } from "./write-file-atomically.ts";

/** Changes within this time are told together: one save makes several events. Well below what a person notices. */
const GATHER_MS = 40;

/** A huge folder served by mistake (a home folder) must not hold up the start; it is watched when it has been read. */
const MOST_WAIT_MS = 2000;

export interface FolderWatch {
  close(): Promise<void>;
}

const KINDS: Readonly<Record<string, FolderChange["kind"]>> = {
  add: "created",
  addDir: "created",
  change: "changed",
  unlink: "deleted",
  unlinkDir: "deleted",
};

/**
 * Tells what changes on the disk below a folder given by its real path, gathered over GATHER_MS. Links are not
 * followed, `.git` and `node_modules` not watched. Resolves once changes are seen, or after MOST_WAIT_MS; call `close` to stop.
 */
export async function watchFolder(
  root: string,
  tell: (changes: readonly FolderChange[]) => void,
): Promise<FolderWatch> {
  let gathered: FolderChange[] = [];
  let timer: NodeJS.Timeout | null = null;
  const flush = () => {
    timer = null;
    const changes = gathered;
    gathered = [];
    tell(changes);
  };
  const watcher = watch(root, { ignoreInitial: true, followSymlinks: false, ignored: isUnwatched });
  watcher.on("all", (event, place) => {
    const kind = KINDS[event];
    if (kind === undefined || place === root) return;
    gathered.push({ kind, path: `/${relative(root, place).split(sep).join("/")}` });
    timer ??= setTimeout(flush, GATHER_MS);
  });
  // A folder that cannot be read (no permission) goes unwatched; the rest still is.
  watcher.on("error", () => {});
  await new Promise<void>((resolve) => {
    const late = setTimeout(resolve, MOST_WAIT_MS);
    watcher.once("ready", () => {
      clearTimeout(late);
      resolve();
    });
  });
  return {
    close: async () => {
      if (timer !== null) clearTimeout(timer);
      await watcher.close();
    },
  };
}

function isUnwatched(place: string): boolean {
  const name = place.slice(place.lastIndexOf(sep) + 1);
  return name === ".git" || name === "node_modules" || isTemporaryName(name);
}

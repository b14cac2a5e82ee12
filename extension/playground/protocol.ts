/**
 * What the playground's server and its file-system extension say to each other over HTTP. Paths are absolute within
 * the served folder: `/` is the folder itself, `/parts/long.bar` a file in it. Times are in milliseconds since 1970.
 */

export type EntryType = "file" | "folder";

export interface EntryStat {
  readonly type: EntryType;
  readonly isLink: boolean;
  readonly createdMs: number;
  readonly modifiedMs: number;
  readonly sizeBytes: number;
}

export interface FolderEntry {
  readonly name: string;
  readonly type: EntryType;
  readonly isLink: boolean;
}

/** Something changed on the disk, whoever did it. */
export interface FolderChange {
  readonly kind: "created" | "changed" | "deleted";
  readonly path: string;
}

/** Why a file operation failed; the first five have a counterpart in the editor's own file errors. */
export type FolderErrorCode =
  | "not-found"
  | "exists"
  | "is-folder"
  | "not-folder"
  | "refused"
  | "too-large"
  | "failed";

export interface FolderErrorReply {
  readonly code: FolderErrorCode;
  readonly message: string;
}

/** The addresses below the server's origin. */
export const ROUTES = {
  /** GET `?path=`: an `EntryStat`, or null when there is nothing. */
  stat: "/files/stat",
  /** GET `?path=`: the `FolderEntry`s in it. POST `?path=`: make it. */
  folder: "/files/folder",
  /** GET `?path=`: the bytes, or status 204 when there is no such file. PUT `?path=&create=1&overwrite=1`: replace them. */
  content: "/files/content",
  /** DELETE `?path=&recursive=1`. */
  entry: "/files/entry",
  /** POST `?from=&to=&overwrite=1`. */
  rename: "/files/rename",
  /** GET: the paths of all files. */
  all: "/files/all",
  /** GET: server-sent events, each a list of `FolderChange`s. */
  changes: "/files/changes",
} as const;

/** What the page needs to start the workbench. It stands in the page as JSON. */
export interface PageSettings {
  readonly folderName: string;
  /** The file opened first, such as `/wattlebird.bar`; null opens none. */
  readonly open: string | null;
  /** The editor's settings that differ from its own defaults. */
  readonly settings: Readonly<Record<string, unknown>>;
}

/** The scheme of the folder's addresses in the editor: `barwright-folder:/NAME/file.bar`. */
export const FOLDER_SCHEME = "barwright-folder";

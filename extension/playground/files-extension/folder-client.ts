import type { EntryStat, FolderChange, FolderEntry, FolderErrorCode, FolderErrorReply } from "../protocol.ts";
import { ROUTES } from "../protocol.ts";

/** A file operation that the server refused or that did not reach it (`failed`). */
export class FolderRequestError extends Error {
  readonly code: FolderErrorCode;

  constructor(reply: FolderErrorReply) {
    super(reply.message);
    this.name = "FolderRequestError";
    this.code = reply.code;
  }
}

/** The file operations of the served folder, for paths within it. Each throws a FolderRequestError. */
export interface FolderClient {
  stat(path: string): Promise<EntryStat | null>;
  list(path: string): Promise<FolderEntry[]>;
  read(path: string): Promise<Uint8Array>;
  write(path: string, bytes: Uint8Array, allow: { create: boolean; overwrite: boolean }): Promise<void>;
  make(path: string): Promise<void>;
  remove(path: string, recursive: boolean): Promise<void>;
  rename(from: string, to: string, overwrite: boolean): Promise<void>;
  all(): Promise<string[]>;
  /** Tells changes on the disk until the returned function is called. */
  listen(tell: (changes: readonly FolderChange[]) => void): () => void;
}

type Parameters = Readonly<Record<string, string | boolean>>;

/** A client of the playground's server at an origin, such as `http://127.0.0.1:4000`. */
export function createFolderClient(origin: string): FolderClient {
  const call = async (
    method: string,
    route: string,
    parameters: Parameters,
    body?: Uint8Array<ArrayBuffer>,
  ) => {
    const response = await fetch(`${origin}${route}?${query(parameters)}`, { method, body: body ?? null });
    if (!response.ok) throw new FolderRequestError((await response.json()) as FolderErrorReply);
    return response;
  };
  const json = async (route: string, parameters: Parameters) => (await call("GET", route, parameters)).json();
  return {
    stat: (path) => json(ROUTES.stat, { path }),
    list: (path) => json(ROUTES.folder, { path }),
    all: () => json(ROUTES.all, {}),
    read: async (path) => {
      const response = await call("GET", ROUTES.content, { path });
      if (response.status === 204) {
        throw new FolderRequestError({ code: "not-found", message: "There is no such file." });
      }
      return new Uint8Array(await response.arrayBuffer());
    },
    write: async (path, bytes, allow) => {
      await call("PUT", ROUTES.content, { path, ...allow }, new Uint8Array(bytes));
    },
    make: async (path) => {
      await call("POST", ROUTES.folder, { path });
    },
    remove: async (path, recursive) => {
      await call("DELETE", ROUTES.entry, { path, recursive });
    },
    rename: async (from, to, overwrite) => {
      await call("POST", ROUTES.rename, { from, to, overwrite });
    },
    listen: (tell) => {
      const source = new EventSource(`${origin}${ROUTES.changes}`);
      source.onmessage = (event) => tell(JSON.parse(event.data));
      return () => source.close();
    },
  };
}

function query(parameters: Parameters): string {
  const entries = Object.entries(parameters).map(([name, value]) => [name, parameterText(value)]);
  return new URLSearchParams(entries).toString();
}

function parameterText(value: string | boolean): string {
  if (typeof value === "string") return value;
  return value ? "1" : "0";
}

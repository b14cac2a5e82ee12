import * as vscode from "vscode";
import type { EntryType, FolderChange } from "../protocol.ts";
import type { FolderClient } from "./folder-client.ts";
import { FolderRequestError } from "./folder-client.ts";

const CHANGE_TYPES = {
  created: vscode.FileChangeType.Created,
  changed: vscode.FileChangeType.Changed,
  deleted: vscode.FileChangeType.Deleted,
} as const;

/** The served folder as a file system of the editor, at `barwright-folder:/NAME/…`; changes on the disk are told. */
export function createFolderFileSystem(
  client: FolderClient,
  changed: vscode.EventEmitter<vscode.FileChangeEvent[]>,
): vscode.FileSystemProvider {
  return {
    onDidChangeFile: changed.event,
    // The server watches the whole folder for everyone; see `listenToChanges`.
    watch: () => new vscode.Disposable(() => {}),
    stat: async (uri) => {
      const found = await attempt(uri, () => client.stat(pathInFolder(uri)));
      if (found === null) throw vscode.FileSystemError.FileNotFound(uri);
      return {
        type: fileType(found),
        ctime: found.createdMs,
        mtime: found.modifiedMs,
        size: found.sizeBytes,
      };
    },
    readDirectory: async (uri) => {
      const entries = await attempt(uri, () => client.list(pathInFolder(uri)));
      return entries.map((entry): [string, vscode.FileType] => [entry.name, fileType(entry)]);
    },
    readFile: (uri) => attempt(uri, () => client.read(pathInFolder(uri))),
    writeFile: (uri, bytes, allow) => attempt(uri, () => client.write(pathInFolder(uri), bytes, allow)),
    createDirectory: (uri) => attempt(uri, () => client.make(pathInFolder(uri))),
    delete: (uri, { recursive }) => attempt(uri, () => client.remove(pathInFolder(uri), recursive)),
    rename: (from, to, { overwrite }) =>
      attempt(to, () => client.rename(pathInFolder(from), pathInFolder(to), overwrite)),
  };
}

/** Passes the server's reports of changes on to the editor, for a workspace folder; dispose to stop. */
export function listenToChanges(
  client: FolderClient,
  folder: vscode.Uri,
  changed: vscode.EventEmitter<vscode.FileChangeEvent[]>,
): vscode.Disposable {
  const stop = client.listen((changes) => changed.fire(changes.map((change) => changeEvent(folder, change))));
  return new vscode.Disposable(stop);
}

function changeEvent(folder: vscode.Uri, change: FolderChange): vscode.FileChangeEvent {
  return { type: CHANGE_TYPES[change.kind], uri: vscode.Uri.joinPath(folder, change.path) };
}

/** `/NAME/parts/long.bar` → `/parts/long.bar`: the first name is the folder's own. */
function pathInFolder(uri: vscode.Uri): string {
  const cut = uri.path.indexOf("/", 1);
  return cut < 0 ? "/" : uri.path.slice(cut);
}

function fileType(entry: { type: EntryType; isLink: boolean }): vscode.FileType {
  const type = entry.type === "folder" ? vscode.FileType.Directory : vscode.FileType.File;
  return entry.isLink ? type | vscode.FileType.SymbolicLink : type;
}

/** Runs an operation and says what went wrong in the editor's terms. */
async function attempt<T>(uri: vscode.Uri, operation: () => Promise<T>): Promise<T> {
  try {
    return await operation();
  } catch (error) {
    throw error instanceof FolderRequestError
      ? editorError(error, uri)
      : vscode.FileSystemError.Unavailable(uri);
  }
}

function editorError(error: FolderRequestError, uri: vscode.Uri): vscode.FileSystemError {
  switch (error.code) {
    case "not-found":
      return vscode.FileSystemError.FileNotFound(uri);
    case "exists":
      return vscode.FileSystemError.FileExists(uri);
    case "is-folder":
      return vscode.FileSystemError.FileIsADirectory(uri);
    case "not-folder":
      return vscode.FileSystemError.FileNotADirectory(uri);
    case "refused":
      return vscode.FileSystemError.NoPermissions(error.message);
    case "too-large":
    case "failed":
      return vscode.FileSystemError.Unavailable(error.message);
  }
}

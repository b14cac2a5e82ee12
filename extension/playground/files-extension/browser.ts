import * as vscode from "vscode";
import { FOLDER_SCHEME } from "../protocol.ts";
import type { FileSearchProvider } from "./file-search.ts";
import { createFileSearch } from "./file-search.ts";
import { createFolderClient } from "./folder-client.ts";
import { createFolderFileSystem, listenToChanges } from "./folder-file-system.ts";

interface WorkspaceWithFileSearch {
  registerFileSearchProvider(scheme: string, provider: FileSearchProvider): vscode.Disposable;
}

/** Gives the editor in the browser the folder of the server that this extension was loaded from. */
export function activate(context: vscode.ExtensionContext): void {
  const { scheme, authority } = context.extensionUri;
  const client = createFolderClient(`${scheme}://${authority}`);
  const changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  const workspace = vscode.workspace as unknown as WorkspaceWithFileSearch;
  context.subscriptions.push(
    changed,
    vscode.workspace.registerFileSystemProvider(FOLDER_SCHEME, createFolderFileSystem(client, changed), {
      isCaseSensitive: true,
    }),
    workspace.registerFileSearchProvider(FOLDER_SCHEME, createFileSearch(client)),
  );
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder !== undefined) context.subscriptions.push(listenToChanges(client, folder.uri, changed));
}

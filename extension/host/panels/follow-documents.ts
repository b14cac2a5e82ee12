import * as vscode from "vscode";
import { isOutline, openOutline } from "../language.ts";

/** What can go on under another address. */
export interface Followers {
  has(uri: string): boolean;
  uris(): Iterable<string>;
  /** The document of the first address goes on under the second. */
  move(from: string, to: vscode.Uri): void;
}

/** Tells followers where their documents go: files that are renamed, and new ones that are saved under a name. */
export function followDocuments(followers: Followers): vscode.Disposable {
  return vscode.Disposable.from(followRenames(followers), followFirstSaves(followers));
}

function followRenames(followers: Followers): vscode.Disposable {
  return vscode.workspace.onDidRenameFiles(({ files }) => {
    for (const { oldUri, newUri } of files) {
      for (const uri of [...followers.uris()]) {
        const moved = movedUri(vscode.Uri.parse(uri), oldUri, newUri);
        if (moved) followers.move(uri, moved);
      }
    }
  });
}

/** Where a file is after it or a folder above it was renamed. */
function movedUri(uri: vscode.Uri, from: vscode.Uri, to: vscode.Uri): vscode.Uri | null {
  if (uri.scheme !== from.scheme || uri.authority !== from.authority) return null;
  if (uri.path === from.path) return to;
  return uri.path.startsWith(`${from.path}/`)
    ? to.with({ path: to.path + uri.path.slice(from.path.length) })
    : null;
}

/**
 * The editor does not say that a new document was saved under a name: it opens the file of that name, gives it the
 * text, saves it, empties the new document and closes it. So the file that is saved with the text of a followed new
 * document is its heir.
 */
function followFirstSaves(followers: Followers): vscode.Disposable {
  const heirs = new Map<string, vscode.Uri>();
  return vscode.Disposable.from(
    vscode.workspace.onDidSaveTextDocument((saved) => {
      if (!isOutline(saved)) return;
      for (const uri of followers.uris()) {
        const document = openOutline(uri);
        if (document?.isUntitled && document.getText() === saved.getText()) heirs.set(uri, saved.uri);
      }
    }),
    vscode.workspace.onDidCloseTextDocument((closed) => {
      const uri = closed.uri.toString();
      const heir = heirs.get(uri);
      heirs.delete(uri);
      if (heir && followers.has(uri)) followers.move(uri, heir);
    }),
  );
}

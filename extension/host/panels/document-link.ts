import * as vscode from "vscode";
import { openOutline } from "../language.ts";

/**
 * The document of a preview through its changes: it may be closed and opened again, which starts its versions anew, or
 * go on under another address. The versions told here only ever grow, which the page relies on.
 */
export interface DocumentLink {
  uri(): string;
  fileName(): string;
  /** The open document; opened again where the editor had closed it. Rejects where it is gone. */
  open(): Promise<vscode.TextDocument>;
  /** The document if it is open at the moment. */
  current(): vscode.TextDocument | null;
  /** The version of the document as it is told to the page. */
  version(document: vscode.TextDocument): number;
  /** The document goes on under another address. */
  move(to: vscode.Uri): void;
}

export function linkDocument(first: vscode.Uri): DocumentLink {
  let uri = first;
  let before = 0;
  let last = 0;
  return {
    uri: () => uri.toString(),
    fileName: () => uri.path.slice(uri.path.lastIndexOf("/") + 1),
    current: () => openOutline(uri.toString()),
    open: async () => openOutline(uri.toString()) ?? (await vscode.workspace.openTextDocument(uri)),
    version: ({ version }) => {
      if (version < last) before += last;
      last = version;
      return before + version;
    },
    move: (to) => {
      uri = to;
      before += last;
      last = 0;
    },
  };
}

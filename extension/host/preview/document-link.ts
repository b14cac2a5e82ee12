import * as vscode from "vscode";
import { openOutline } from "../language.ts";

/**
 * The document of a preview through its changes: it may be closed and opened again, which starts its versions anew, or
 * go on under another address. The versions told here only ever grow, which the page relies on.
 */
export interface DocumentLink {
  readonly uri: string;
  readonly fileName: string;
  /** The open document; opened again where the editor had closed it. Rejects where it is gone. */
  open(): Promise<vscode.TextDocument>;
  /** The document if it is open at the moment. */
  current(): vscode.TextDocument | null;
  /** The version of the document as it is told to the page. */
  version(document: vscode.TextDocument): number;
}

export function linkDocument(uri: vscode.Uri): DocumentLink {
  const key = uri.toString();
  let before = 0;
  let last = 0;
  return {
    uri: key,
    fileName: uri.path.slice(uri.path.lastIndexOf("/") + 1),
    current: () => openOutline(key),
    open: async () => openOutline(key) ?? (await vscode.workspace.openTextDocument(uri)),
    version: ({ version }) => {
      if (version < last) before += last;
      last = version;
      return before + version;
    },
  };
}

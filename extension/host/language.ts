import * as vscode from "vscode";

export const LANGUAGE_ID = "bar";

/** Outline files wherever they lie: on the disk, untitled, in a virtual workspace. */
export const OUTLINES: vscode.DocumentSelector = { language: LANGUAGE_ID };

export function isOutline({ languageId }: vscode.TextDocument): boolean {
  return languageId === LANGUAGE_ID;
}

/** The open outline document of an address, if there is one. */
export function openOutline(uri: string): vscode.TextDocument | null {
  return (
    vscode.workspace.textDocuments.find(
      (document) => document.uri.toString() === uri && isOutline(document) && !document.isClosed,
    ) ?? null
  );
}

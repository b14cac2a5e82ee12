import * as vscode from "vscode";
import { isOutline, openOutline } from "../language.ts";

/** More files than these are not listed: one looks for them by name. */
const MOST_FILES = 200;

/** The outline document at an address, opened unseen where it is not open; `null` where there is none. */
export async function outlineAt(uri: string): Promise<vscode.TextDocument | null> {
  const open = openOutline(uri);
  if (open) return open;
  try {
    const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri));
    return isOutline(document) ? document : null;
  } catch {
    return null;
  }
}

/** Lets the builder choose outlines that are open or in the folder, but for those that are taken already. */
export async function pickOutlines(taken: readonly string[]): Promise<readonly string[]> {
  const open = vscode.workspace.textDocuments.filter((document) => isOutline(document) && !document.isClosed);
  const found = await vscode.workspace.findFiles("**/*.bar", undefined, MOST_FILES);
  const uris = new Map([...open.map(({ uri }) => uri), ...found].map((uri) => [uri.toString(), uri]));
  const items = [...uris]
    .filter(([key]) => !taken.includes(key))
    .map(([key, uri]) => ({ key, label: nameOf(uri), description: folderOf(uri) }))
    .sort((a, b) => a.label.localeCompare(b.label));
  const picked = await vscode.window.showQuickPick(items, {
    title: vscode.l10n.t("Compare with which files?"),
    placeHolder: vscode.l10n.t("Outline files that are open or in the folder"),
    canPickMany: true,
    matchOnDescription: true,
  });
  return picked?.map(({ key }) => key) ?? [];
}

function nameOf({ path }: vscode.Uri): string {
  return path.slice(path.lastIndexOf("/") + 1);
}

function folderOf(uri: vscode.Uri): string {
  const path = vscode.workspace.asRelativePath(uri);
  const end = path.lastIndexOf("/");
  return end < 0 ? "" : path.slice(0, end);
}

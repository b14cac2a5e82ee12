import * as vscode from "vscode";
import { writeWhole } from "./write-whole.ts";

export interface ResultFile {
  readonly content: string;
  /** Name to suggest, with its ending. */
  readonly name: string;
  /** What files of that ending are called. */
  readonly kind: string;
  /** What the file holds, for the message that it is written. */
  readonly summary: string;
}

/**
 * Asks where to, writes, and offers to show the file. The dialog itself asks before a file is replaced; nothing is
 * written unless a place was chosen. Rejects where writing fails.
 */
export async function saveResult(document: vscode.TextDocument, file: ResultFile): Promise<void> {
  const uri = await saveWhere(document, file);
  if (uri) await offerToShow(uri, file.summary);
}

/** Asks where to and writes; the place, or `null` where none was chosen. Rejects where writing fails. */
export async function saveWhere(document: vscode.TextDocument, file: ResultFile): Promise<vscode.Uri | null> {
  const ending = file.name.slice(file.name.lastIndexOf(".") + 1);
  const defaultUri = suggestedPlace(document, file.name);
  const uri = await vscode.window.showSaveDialog({
    title: vscode.l10n.t("Export {0}", file.kind),
    saveLabel: vscode.l10n.t("Export"),
    filters: { [file.kind]: [ending] },
    ...(defaultUri ? { defaultUri } : {}),
  });
  if (!uri) return null;
  await writeWhole(uri, file.content);
  return uri;
}

/** Beside the outline; an unsaved one has no place of its own. */
function suggestedPlace(document: vscode.TextDocument, name: string): vscode.Uri | null {
  const { isUntitled, uri } = document;
  if (!isUntitled) return vscode.Uri.joinPath(uri, "..", name);
  const folder = vscode.workspace.workspaceFolders?.[0];
  return folder ? vscode.Uri.joinPath(folder.uri, name) : null;
}

/** Says that a file was written, and offers to show it; resolves when that was answered or left. */
export async function offerToShow(uri: vscode.Uri, summary: string): Promise<void> {
  const name = uri.path.slice(uri.path.lastIndexOf("/") + 1);
  const open = vscode.l10n.t("Open");
  const reveal = vscode.l10n.t("Show in Folder");
  const choice = await vscode.window.showInformationMessage(
    vscode.l10n.t("{0} written: {1}.", name, summary),
    open,
    reveal,
  );
  if (choice === open) await vscode.commands.executeCommand("vscode.open", uri);
  if (choice === reveal) await vscode.commands.executeCommand(revealCommand(uri), uri);
}

/** The desktop's own file manager where there is one, else the list of files in the editor. */
function revealCommand({ scheme }: vscode.Uri): string {
  const onDesktop = vscode.env.uiKind === vscode.UIKind.Desktop && scheme === "file";
  return onDesktop && vscode.env.remoteName === undefined ? "revealFileInOS" : "revealInExplorer";
}

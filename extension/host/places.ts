import * as vscode from "vscode";
import type { TextEdit, TextRange } from "../../geometry/language/text.ts";

/** The editor's range of a stretch of a document's text. */
export function toRange(document: vscode.TextDocument, { start, end }: TextRange): vscode.Range {
  return new vscode.Range(document.positionAt(start), document.positionAt(end));
}

/** The stretch of a document's text that is the editor's range. */
export function toTextRange(document: vscode.TextDocument, { start, end }: vscode.Range): TextRange {
  return { start: document.offsetAt(start), end: document.offsetAt(end) };
}

/** The editor's edits of edits as data. */
export function toTextEdits(document: vscode.TextDocument, edits: readonly TextEdit[]): vscode.TextEdit[] {
  return edits.map((edit) => vscode.TextEdit.replace(toRange(document, edit), edit.newText));
}

/** Edits of one document, to be applied as one undoable step. */
export function toWorkspaceEdit(
  document: vscode.TextDocument,
  edits: readonly TextEdit[],
): vscode.WorkspaceEdit {
  const workspaceEdit = new vscode.WorkspaceEdit();
  workspaceEdit.set(document.uri, toTextEdits(document, edits));
  return workspaceEdit;
}

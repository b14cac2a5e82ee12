import * as vscode from "vscode";
import type { TextRange } from "../../../geometry/language/text.ts";
import { toRange, toTextRange } from "../places.ts";

/** The editor that shows a document, if one is in view; of several the active one. */
export function visibleEditor(uri: string): vscode.TextEditor | null {
  const shows = (editor: vscode.TextEditor) => editor.document.uri.toString() === uri;
  const { activeTextEditor: active, visibleTextEditors } = vscode.window;
  if (active && shows(active)) return active;
  return visibleTextEditors.find(shows) ?? null;
}

/** Where the cursor stands or what is selected; `null` when no editor shows the document. */
export function cursorIn(uri: string): TextRange | null {
  const editor = visibleEditor(uri);
  return editor && toTextRange(editor.document, editor.selection);
}

/**
 * Selects a stretch of the text where the document is shown, or else shows it. The focus stays where it is, and what
 * is in view already does not scroll.
 */
export async function revealText(
  document: vscode.TextDocument,
  range: TextRange,
  previewColumn: vscode.ViewColumn | undefined,
): Promise<void> {
  const editor = visibleEditor(document.uri.toString()) ?? (await showBeside(document, previewColumn));
  const place = toRange(document, range);
  editor.selection = new vscode.Selection(place.start, place.end);
  editor.revealRange(place, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

function showBeside(
  document: vscode.TextDocument,
  previewColumn: vscode.ViewColumn | undefined,
): Thenable<vscode.TextEditor> {
  const column =
    columnOfTab(document) ??
    (previewColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Two : vscode.ViewColumn.One);
  return vscode.window.showTextDocument(document, { viewColumn: column, preserveFocus: true });
}

/** The column where the document stands behind another tab. */
function columnOfTab({ uri }: vscode.TextDocument): vscode.ViewColumn | undefined {
  const holds = ({ input }: vscode.Tab) =>
    input instanceof vscode.TabInputText && input.uri.toString() === uri.toString();
  return vscode.window.tabGroups.all.find(({ tabs }) => tabs.some(holds))?.viewColumn;
}

import * as vscode from "vscode";
import { newBarTemplates } from "../../../geometry/editing/editing.ts";
import { LANGUAGE_ID } from "../language.ts";
import { toRange } from "../places.ts";

/** Asks for a bar to start from and opens it as a new, unsaved file. */
export async function newBar(): Promise<void> {
  const items = newBarTemplates.map((template) => ({
    label: template.title,
    detail: template.summary,
    template,
  }));
  const picked = await vscode.window.showQuickPick(items, {
    title: vscode.l10n.t("New bar"),
    placeHolder: vscode.l10n.t("What to start from"),
    matchOnDetail: true,
  });
  if (!picked) return;
  const document = await vscode.workspace.openTextDocument({
    language: LANGUAGE_ID,
    content: picked.template.text,
  });
  // The name is what a builder writes first. Selected as the editor opens, so that the first key replaces it.
  await vscode.window.showTextDocument(document, { selection: toRange(document, picked.template.nameRange) });
}

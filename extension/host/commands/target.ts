import * as vscode from "vscode";
import { isOutline } from "../language.ts";
import type { Previews } from "../preview/previews.ts";

/**
 * The outline that a command is meant for: the one it was called on, else that of the preview with the focus, else the
 * one being edited. Says so and gives `null` where there is none.
 */
export async function targetOutline(
  argument: unknown,
  previews: Previews,
): Promise<vscode.TextDocument | null> {
  const found = await findOutline(argument, previews);
  if (!found) void vscode.window.showWarningMessage(vscode.l10n.t("Open an outline file (.bar) first."));
  return found;
}

async function findOutline(argument: unknown, previews: Previews): Promise<vscode.TextDocument | null> {
  const previewed = previews.active();
  const uri =
    argument instanceof vscode.Uri ? argument : previewed === null ? null : vscode.Uri.parse(previewed);
  const document = uri
    ? await vscode.workspace.openTextDocument(uri)
    : vscode.window.activeTextEditor?.document;
  return document && isOutline(document) ? document : null;
}

import * as vscode from "vscode";
import { isOutline } from "../language.ts";
import type { Panels } from "./register-commands.ts";

/**
 * The outline that a command is meant for: the one it was called on, else that of the panel with the focus, else the
 * one being edited. Says so and gives `null` where there is none.
 */
export async function targetOutline(argument: unknown, panels: Panels): Promise<vscode.TextDocument | null> {
  const found = await findOutline(argument, panels);
  if (!found) void vscode.window.showWarningMessage(vscode.l10n.t("Open an outline file (.bar) first."));
  return found;
}

async function findOutline(argument: unknown, panels: Panels): Promise<vscode.TextDocument | null> {
  const shown = panels.previews.active() ?? panels.studies.active();
  const uri = argument instanceof vscode.Uri ? argument : shown === null ? null : vscode.Uri.parse(shown);
  const document = uri
    ? await vscode.workspace.openTextDocument(uri)
    : vscode.window.activeTextEditor?.document;
  return document && isOutline(document) ? document : null;
}

import * as vscode from "vscode";
import { safeFixes } from "../../../geometry/editing/editing.ts";
import { toWorkspaceEdit } from "../places.ts";
import type { Session } from "../session.ts";

/** Makes all changes that are safe unseen, as one step to undo; says so where there is nothing to do. */
export async function fixAll(document: vscode.TextDocument, session: Session): Promise<void> {
  const problems = await session.outlines.problems(document, () => true);
  const edits = safeFixes(problems ?? []);
  if (edits.length > 0) {
    await vscode.workspace.applyEdit(toWorkspaceEdit(document, edits));
    return;
  }
  vscode.window.setStatusBarMessage(vscode.l10n.t("Nothing here has a fix that is safe unseen."), 5000);
}

import * as vscode from "vscode";
import { movePoint } from "../../../geometry/editing/editing.ts";
import type { PageMessage } from "../../preview/protocol.ts";
import type { DocumentLink } from "../panels/document-link.ts";
import { toWorkspaceEdit } from "../places.ts";
import type { Session } from "../session.ts";

/**
 * Rewrites the numbers behind a dragged point, as one step to undo. `null` when that is done, else why it is not, for
 * the reader of the page.
 */
export async function movePointInText(
  { handle, to, version }: Extract<PageMessage, { type: "movePoint" }>,
  link: DocumentLink,
  session: Session,
): Promise<string | null> {
  const document = await link.open();
  if (version !== link.version(document)) {
    return vscode.l10n.t("the text has changed in the meantime. Try once more.");
  }
  const result = movePoint(session.analysis(document), handle, to);
  if ("refused" in result) return result.refused;
  const isDone = await vscode.workspace.applyEdit(toWorkspaceEdit(document, result.edits));
  return isDone ? null : vscode.l10n.t("the editor did not take the change.");
}

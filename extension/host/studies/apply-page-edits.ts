import * as vscode from "vscode";
import { canApply } from "../../../geometry/language/apply-edits.ts";
import type { PageMessage } from "../../studies/protocol.ts";
import type { DocumentLink } from "../panels/document-link.ts";
import { toWorkspaceEdit } from "../places.ts";

/**
 * Makes edits that the page asks for, as one step to undo, in the version that they were made for and in no other.
 * `null` when that is done, else why it is not, for the reader of the page.
 */
export async function applyPageEdits(
  { version, edits }: Extract<PageMessage, { type: "applyEdits" }>,
  link: DocumentLink,
): Promise<string | null> {
  const document = await link.open();
  if (version !== link.version(document))
    return vscode.l10n.t("the text has changed in the meantime. Try once more.");
  if (!canApply(edits, document.getText().length))
    return vscode.l10n.t("the editor did not take the change.");
  const isDone = await vscode.workspace.applyEdit(toWorkspaceEdit(document, edits));
  return isDone ? null : vscode.l10n.t("the editor did not take the change.");
}

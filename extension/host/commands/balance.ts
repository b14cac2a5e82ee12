import * as vscode from "vscode";
import { balanceOffer } from "../../../geometry/editing/editing.ts";
import { toWorkspaceEdit } from "../places.ts";
import type { Session } from "../session.ts";

/** Writes the values that balance the bar, as one step to undo; what is found in the text as it is now. */
export async function balance(document: vscode.TextDocument, session: Session): Promise<void> {
  const settings = session.preferences(document).judgement;
  const offer = balanceOffer(session.outlines.analysis(document, null), { settings });
  if (offer && offer.edits.length > 0)
    await vscode.workspace.applyEdit(toWorkspaceEdit(document, offer.edits));
}

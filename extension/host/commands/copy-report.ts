import * as vscode from "vscode";
import { toMarkdown } from "../../../geometry/files/markdown.ts";
import type { Session } from "../session.ts";

/** Puts the report of the shown variant on the clipboard, as Markdown. */
export async function copyReport(document: vscode.TextDocument, session: Session): Promise<void> {
  const report = toMarkdown(session.analysis(document), session.preferences(document).units);
  await vscode.env.clipboard.writeText(report);
  vscode.window.setStatusBarMessage(vscode.l10n.t("The report is on the clipboard."), 5000);
}

import * as vscode from "vscode";
import { CAUTIONS } from "../../../geometry/files/cautions.ts";

/** Shows the cautions that go with every number, in full. */
export async function showCautions(): Promise<void> {
  const detail = CAUTIONS.map((caution) => `• ${caution}`).join("\n");
  await vscode.window.showInformationMessage(vscode.l10n.t("Before you build or spin a bar"), {
    modal: true,
    detail,
  });
}

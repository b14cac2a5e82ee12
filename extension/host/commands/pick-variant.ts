import * as vscode from "vscode";
import type { Session } from "../session.ts";

/**
 * Asks which variant is meant where the file has any; the one that is looked at comes first. `undefined` when the
 * question was left.
 */
export async function pickVariant(
  document: vscode.TextDocument,
  session: Session,
): Promise<string | null | undefined> {
  const source = session.outlines.source(document);
  if (source.variants.length === 0) return null;
  const shown = session.variants.of(document.uri.toString(), source);
  const items = [null, ...source.variants]
    .map((variant) => ({
      variant,
      label: variant ?? vscode.l10n.t("As written"),
      description: variant === shown ? vscode.l10n.t("shown") : "",
    }))
    .sort((a, b) => Number(b.variant === shown) - Number(a.variant === shown));
  const picked = await vscode.window.showQuickPick(items, { title: vscode.l10n.t("Export which variant?") });
  return picked?.variant;
}

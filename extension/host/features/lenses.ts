import * as vscode from "vscode";
import { lenses } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";
import { refreshOn } from "./refresh.ts";

/** Shows the figures above the bar and each variant; a click shows that variant in the preview. */
export function registerLenses(session: Session): vscode.Disposable {
  const refresh = refreshOn(session);
  const provider: vscode.CodeLensProvider = {
    onDidChangeCodeLenses: refresh.event,
    provideCodeLenses: (document, token) => {
      const { lenses: areWanted, units } = session.preferences(document);
      if (token.isCancellationRequested || !areWanted) return [];
      const found = lenses(session.outlines.source(document), {
        system: units,
        analyseVariant: (variant) => session.outlines.analysis(document, variant),
      });
      return found.map(
        ({ range, title, variant }) =>
          new vscode.CodeLens(toRange(document, range), {
            title,
            tooltip: vscode.l10n.t("Show in the preview"),
            command: "barwright.showVariant",
            arguments: [document.uri, variant],
          }),
      );
    },
  };
  return vscode.Disposable.from(refresh, vscode.languages.registerCodeLensProvider(OUTLINES, provider));
}

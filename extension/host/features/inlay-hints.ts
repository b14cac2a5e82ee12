import * as vscode from "vscode";
import { inlayHints } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toTextRange } from "../places.ts";
import type { Session } from "../session.ts";
import { refreshOn } from "./refresh.ts";

/** Shows what expressions are worth in the variant that is looked at. */
export function registerInlayHints(session: Session): vscode.Disposable {
  const refresh = refreshOn(session);
  const provider: vscode.InlayHintsProvider = {
    onDidChangeInlayHints: refresh.event,
    provideInlayHints: (document, range, token) => {
      if (token.isCancellationRequested || !session.preferences(document).valueHints) return [];
      const found = inlayHints(session.analysis(document), toTextRange(document, range));
      return found.map(({ offset, text, tooltip }) => {
        const hint = new vscode.InlayHint(document.positionAt(offset), text);
        hint.tooltip = tooltip;
        hint.paddingLeft = true;
        return hint;
      });
    },
  };
  return vscode.Disposable.from(refresh, vscode.languages.registerInlayHintsProvider(OUTLINES, provider));
}

import * as vscode from "vscode";
import { balanceOffer, balancePlace, lenses } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";
import { refreshOn } from "./refresh.ts";

/** The lens of `balance by`, which is worked out when it comes into sight. */
class BalanceLens extends vscode.CodeLens {
  readonly document: vscode.TextDocument;
  constructor(document: vscode.TextDocument, range: vscode.Range) {
    super(range);
    this.document = document;
  }
}

/**
 * Shows the figures above the bar and each variant, a click shows that variant in the preview; and above `balance by`
 * what would balance the bar, a click writes it.
 */
export function registerLenses(session: Session): vscode.Disposable {
  const refresh = refreshOn(session);
  const provider: vscode.CodeLensProvider = {
    resolveCodeLens: (lens) => (lens instanceof BalanceLens ? resolved(lens, session) : lens),
    onDidChangeCodeLenses: refresh.event,
    provideCodeLenses: (document, token) => {
      const { lenses: areWanted, units } = session.preferences(document);
      if (token.isCancellationRequested || !areWanted) return [];
      const found = lenses(session.outlines.source(document), {
        system: units,
        analyseVariant: (variant) => session.outlines.analysis(document, variant),
      });
      const shown = found.map(
        ({ range, title, variant }) =>
          new vscode.CodeLens(toRange(document, range), {
            title,
            tooltip: vscode.l10n.t("Show in the preview"),
            command: "barwright.showVariant",
            arguments: [document.uri, variant],
          }),
      );
      const place = balancePlace(session.outlines.analysis(document, null));
      const offers = place ? [new BalanceLens(document, toRange(document, place))] : [];
      return [...shown, ...offers, ...aimLenses(document, session)];
    },
  };
  return vscode.Disposable.from(refresh, vscode.languages.registerCodeLensProvider(OUTLINES, provider));
}

/** Above an aim, the way to the panel that searches for it: that takes seconds, and is started there by hand. */
function aimLenses(document: vscode.TextDocument, { outlines }: Session): readonly vscode.CodeLens[] {
  const { aim } = outlines.analysis(document, null).design;
  if (!aim) return [];
  const title = vscode.l10n.t("Aim: search for this bar…");
  const command = { title, command: "barwright.aim", arguments: [document.uri] };
  return [new vscode.CodeLens(toRange(document, aim.range), command)];
}

function resolved(lens: BalanceLens, { outlines, preferences }: Session): vscode.CodeLens {
  const { document } = lens;
  const settings = preferences(document).judgement;
  const offer = balanceOffer(outlines.analysis(document, null), { settings });
  if (!offer) return lens;
  const hasEdits = offer.edits.length > 0;
  lens.command = {
    title: offer.title,
    tooltip: offer.detail ?? (hasEdits ? vscode.l10n.t("Write these values into the file") : ""),
    command: hasEdits ? "barwright.balance" : "",
    arguments: [document.uri],
  };
  return lens;
}

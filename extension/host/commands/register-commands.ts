import * as vscode from "vscode";
import type { Previews } from "../preview/previews.ts";
import type { Session } from "../session.ts";
import { balance } from "./balance.ts";
import { copyReport } from "./copy-report.ts";
import { exportAs, exportCutFile } from "./export-commands.ts";
import { fixAll } from "./fix-all.ts";
import { newBar } from "./new-bar.ts";
import { showCautions } from "./show-cautions.ts";
import { targetOutline } from "./target.ts";

type OutlineCommand = (document: vscode.TextDocument) => unknown;

/** Registers the commands of the palette and the menus. What fails in one is told to the builder, and logged. */
export function registerCommands(session: Session, previews: Previews): vscode.Disposable {
  const onOutline = (name: string, run: OutlineCommand) =>
    register(name, session, async (argument) => {
      const document = await targetOutline(argument, previews);
      if (document) await run(document);
    });
  return vscode.Disposable.from(
    onOutline("openPreview", previews.open),
    onOutline("exportCutFile", (document) => exportCutFile(document, session)),
    onOutline("exportAs", (document) => exportAs(document, session)),
    onOutline("copyReport", (document) => copyReport(document, session)),
    onOutline("fixAll", (document) => fixAll(document, session)),
    // Called by the lens of `balance by`; not in the palette.
    onOutline("balance", (document) => balance(document, session)),
    // Called by lenses, with an address and a variant; not in the palette.
    register("showVariant", session, async (uri, variant) => {
      if (!(uri instanceof vscode.Uri)) return;
      session.variants.choose(uri.toString(), typeof variant === "string" ? variant : null);
      previews.open(await vscode.workspace.openTextDocument(uri));
    }),
    register("newBar", session, newBar),
    register("showCautions", session, showCautions),
    register("showCounts", session, () => showCounts(session, previews)),
  );
}

function register(
  name: string,
  { log }: Session,
  run: (...words: readonly unknown[]) => unknown,
): vscode.Disposable {
  return vscode.commands.registerCommand(`barwright.${name}`, async (...words: readonly unknown[]) => {
    try {
      await run(...words);
    } catch (error) {
      log.fault(name, error);
      const reason = error instanceof Error ? error.message : String(error);
      void vscode.window.showErrorMessage(vscode.l10n.t("That did not work: {0}", reason));
    }
  });
}

/** What is alive at the moment: for those who look for leaks. */
function showCounts({ outlines }: Session, previews: Previews): void {
  const text = `previews ${previews.count()}, listeners ${previews.listeners()}, outlines ${outlines.count()}`;
  void vscode.window.showInformationMessage(`Barwright: ${text}`);
}

import * as vscode from "vscode";
import type { Previews } from "../preview/previews.ts";
import type { Session } from "../session.ts";
import type { Studies } from "../studies/studies.ts";
import { balance } from "./balance.ts";
import { copyReport } from "./copy-report.ts";
import { exportAs, exportCutFile } from "./export-commands.ts";
import { fixAll } from "./fix-all.ts";
import { newBar } from "./new-bar.ts";
import { showCautions } from "./show-cautions.ts";
import { targetOutline } from "./target.ts";

type OutlineCommand = (document: vscode.TextDocument) => unknown;

/** The panels that commands open, and are called from. */
export interface Panels {
  readonly previews: Previews;
  readonly studies: Studies;
}

/** Registers the commands of the palette and the menus. What fails in one is told to the builder, and logged. */
export function registerCommands(session: Session, panels: Panels): vscode.Disposable {
  const { previews, studies } = panels;
  const onOutline = (name: string, run: OutlineCommand) =>
    register(name, session, async (argument) => {
      const document = await targetOutline(argument, panels);
      if (document) await run(document);
    });
  return vscode.Disposable.from(
    onOutline("openPreview", previews.open),
    onOutline("compareVariants", (document) => studies.open(document, "compare")),
    onOutline("varyValue", (document) => studies.open(document, "vary")),
    onOutline("planDrilling", (document) => studies.open(document, "drilling")),
    onOutline("asMade", (document) => studies.open(document, "as-made")),
    onOutline("aim", (document) => studies.open(document, "aim")),
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
    register("showCounts", session, () => showCounts(session, panels)),
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
function showCounts({ outlines }: Session, { previews, studies }: Panels): void {
  const listeners = previews.listeners() + studies.listeners();
  const text = `previews ${previews.count()}, studies ${studies.count()}, listeners ${listeners}, outlines ${outlines.count()}`;
  void vscode.window.showInformationMessage(`Barwright: ${text}`);
}

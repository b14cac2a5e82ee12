import * as vscode from "vscode";
import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { type CutFormat, type ExportOptions, exportFile } from "../../../geometry/files/export.ts";
import { cleanFileName, cutFileName } from "../../../geometry/files/file-name.ts";
import { saveResult } from "./save-result.ts";

/** One thing that an outline can be written as. */
export interface OutlineFormat extends ExportOptions {
  readonly format: CutFormat;
  /** What files of this kind are called. */
  readonly fileKind: string;
}

/** Writes one variant of a document in a format, or says why not. Rejects where writing fails. */
export async function exportOutline(
  document: vscode.TextDocument,
  analysis: Analysis,
  { format, fileKind, release, units }: OutlineFormat,
): Promise<void> {
  const result = exportFile(analysis, format, { release, units });
  if (!result.ok) return refuse(document, result.reason);
  const name = partName(analysis);
  await saveResult(document, {
    content: result.content,
    summary: result.summary,
    kind: fileKind,
    name: format === "dxf" ? cutFileName(name, { release, units }) : `${cleanFileName(name)}.${format}`,
  });
}

async function refuse(document: vscode.TextDocument, reason: string): Promise<void> {
  const showProblems = vscode.l10n.t("Show Problems");
  const choice = await vscode.window.showErrorMessage(
    vscode.l10n.t("Nothing was exported: {0}", reason),
    showProblems,
  );
  if (choice !== showProblems) return;
  await vscode.window.showTextDocument(document);
  await vscode.commands.executeCommand("workbench.actions.view.problems");
}

function partName({ design, variant }: Analysis): string {
  const name = design.name ?? "bar";
  return variant === null ? name : `${name} ${variant}`;
}

import * as vscode from "vscode";
import type { UnitSystem } from "../../../geometry/figures/present.ts";
import type { Session } from "../session.ts";
import { exportOutline, type OutlineFormat } from "./export-outline.ts";
import { pickVariant } from "./pick-variant.ts";

/**
 * Exports the cut file with the release of the settings, in millimetres.
 * @param variant the variant to export; asked for where it is left out and the file has any
 */
export async function exportCutFile(
  document: vscode.TextDocument,
  session: Session,
  variant?: string | null,
): Promise<void> {
  const chosen = variant === undefined ? await pickVariant(document, session) : variant;
  if (chosen === undefined) return;
  const { dxfRelease: release } = session.preferences(document);
  const format = cutFormat(release, "mm");
  await exportOutline(document, session.outlines.analysis(document, chosen), format);
}

/** Asks for a format and, where there are any, for a variant, and exports. */
export async function exportAs(document: vscode.TextDocument, session: Session): Promise<void> {
  const { units } = session.preferences(document);
  const picked = await vscode.window.showQuickPick(formatItems(units), {
    title: vscode.l10n.t("Export as"),
    matchOnDescription: true,
  });
  if (!picked) return;
  const variant = await pickVariant(document, session);
  if (variant === undefined) return;
  await exportOutline(document, session.outlines.analysis(document, variant), picked);
}

function cutFormat(release: "2000" | "r12", units: UnitSystem): OutlineFormat {
  return { format: "dxf", release, units, fileKind: vscode.l10n.t("Cut file (DXF)") };
}

function formatItems(units: UnitSystem): readonly (vscode.QuickPickItem & OutlineFormat)[] {
  const { t } = vscode.l10n;
  const other = { release: "2000", units } as const;
  return [
    { ...cutFormat("2000", "mm"), label: t("Cut file, DXF release 2000"), description: t("millimetres") },
    {
      ...cutFormat("r12", "mm"),
      label: t("Cut file, DXF release 12"),
      description: t("millimetres, oldest readers"),
    },
    {
      ...cutFormat("2000", "in"),
      label: t("Cut file, DXF release 2000, inches"),
      description: t("ask the shop first"),
    },
    {
      ...other,
      units: "mm",
      format: "svg",
      fileKind: t("Drawing (SVG)"),
      label: t("Drawing, SVG"),
      description: t("true size"),
    },
    {
      ...other,
      format: "csv",
      fileKind: t("Bite table (CSV)"),
      label: t("Bite table, CSV"),
      description: t("bite against closing speed"),
    },
    {
      ...other,
      format: "json",
      fileKind: t("Numbers (JSON)"),
      label: t("Every number, JSON"),
      description: t("for scripts"),
    },
    {
      ...other,
      format: "md",
      fileKind: t("Report (Markdown)"),
      label: t("Report, Markdown"),
      description: t("to print"),
    },
  ];
}

import * as vscode from "vscode";
import { previewHtml } from "../../preview/html.ts";
import { PREVIEW_STRINGS, type PreviewStrings } from "../../preview/strings.ts";
import { pageBasics } from "../panels/page-files.ts";

/** The document of the page, with its script and style sheet, a fresh nonce and texts in the editor's language. */
export function pageHtml(webview: vscode.Webview, extensionUri: vscode.Uri, title: string): string {
  return previewHtml({
    ...pageBasics(webview, extensionUri, "preview"),
    title,
    strings: translatedStrings(),
  });
}

/** Where the editor has a translation at all; English stands in the page itself. */
function translatedStrings(): Partial<PreviewStrings> {
  if (vscode.l10n.bundle === undefined) return {};
  const translated = Object.entries(PREVIEW_STRINGS).map(([key, text]) => [key, vscode.l10n.t(text)]);
  return Object.fromEntries(translated);
}

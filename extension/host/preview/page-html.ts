import * as vscode from "vscode";
import { previewHtml } from "../../preview/html.ts";
import { PREVIEW_STRINGS, type PreviewStrings } from "../../preview/strings.ts";

/** The one folder that the page may load from. */
export function pageRoot(extensionUri: vscode.Uri): vscode.Uri {
  return vscode.Uri.joinPath(extensionUri, "dist");
}

/** The document of the page, with its script and style sheet, a fresh nonce and texts in the editor's language. */
export function pageHtml(webview: vscode.Webview, extensionUri: vscode.Uri, title: string): string {
  const addressOf = (name: string) =>
    webview.asWebviewUri(vscode.Uri.joinPath(pageRoot(extensionUri), name)).toString();
  return previewHtml({
    scriptUri: addressOf("preview.js"),
    styleUri: addressOf("preview.css"),
    cspSource: webview.cspSource,
    nonce: freshNonce(),
    title,
    language: vscode.env.language,
    strings: translatedStrings(),
  });
}

function freshNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(18));
  return btoa(String.fromCharCode(...bytes));
}

/** Where the editor has a translation at all; English stands in the page itself. */
function translatedStrings(): Partial<PreviewStrings> {
  if (vscode.l10n.bundle === undefined) return {};
  const translated = Object.entries(PREVIEW_STRINGS).map(([key, text]) => [key, vscode.l10n.t(text)]);
  return Object.fromEntries(translated);
}

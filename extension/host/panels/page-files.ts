import * as vscode from "vscode";

/** The one folder that pages may load from. */
export function pageRoot(extensionUri: vscode.Uri): vscode.Uri {
  return vscode.Uri.joinPath(extensionUri, "dist");
}

/** What every page is given: its files, the editor's language, a fresh nonce from a secure source. */
export function pageBasics(webview: vscode.Webview, extensionUri: vscode.Uri, name: string) {
  const addressOf = (file: string) =>
    webview.asWebviewUri(vscode.Uri.joinPath(pageRoot(extensionUri), file)).toString();
  return {
    addressOf,
    scriptUri: addressOf(`${name}.js`),
    styleUri: addressOf(`${name}.css`),
    cspSource: webview.cspSource,
    nonce: freshNonce(),
    language: vscode.env.language,
  };
}

/** The icon of our panels. */
export function panelIcon(extensionUri: vscode.Uri): {
  readonly light: vscode.Uri;
  readonly dark: vscode.Uri;
} {
  const icon = (name: string) => vscode.Uri.joinPath(extensionUri, "extension", "icons", name);
  return { light: icon("file-light.svg"), dark: icon("file-dark.svg") };
}

function freshNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(18));
  return btoa(String.fromCharCode(...bytes));
}

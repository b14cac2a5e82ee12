import type * as vscode from "vscode";

/** Called by the editor when the first outline file is opened. Only registers; the heavy parts load on first use. */
export function activate(_context: vscode.ExtensionContext): void {}

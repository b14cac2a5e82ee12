import * as vscode from "vscode";

/** Where faults of the program go: never to the builder as a message, never lost. */
export interface Log extends vscode.Disposable {
  fault(doing: string, error: unknown): void;
}

/** A log that makes its channel in the editor with the first fault. */
export function createLog(): Log {
  let channel: vscode.LogOutputChannel | null = null;
  return {
    fault: (doing, error) => {
      channel ??= vscode.window.createOutputChannel("Barwright", { log: true });
      channel.error(`${doing}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    },
    dispose: () => channel?.dispose(),
  };
}

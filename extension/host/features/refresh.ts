import * as vscode from "vscode";
import type { Session } from "../session.ts";

export interface Refresh extends vscode.Disposable {
  readonly event: vscode.Event<void>;
}

/** Asks the editor to ask again: what is shown depends on the settings and on the variant that is looked at. */
export function refreshOn(session: Session): Refresh {
  const changed = new vscode.EventEmitter<void>();
  const subscriptions = vscode.Disposable.from(
    session.variants.onDidChange(() => changed.fire()),
    session.onDidChangePreferences(() => changed.fire()),
    changed,
  );
  return { event: changed.event, dispose: () => subscriptions.dispose() };
}

import * as vscode from "vscode";
import type { Source } from "../../../geometry/analysis/source.ts";

/** Which variant of each document is looked at: the preview sets it, hovers and hints follow it. */
export interface ChosenVariants extends vscode.Disposable {
  /** The chosen variant if the text still has it, else the bar as it stands. */
  of(uri: string, source: Source): string | null;
  choose(uri: string, variant: string | null): void;
  /** Tells the address of the document. */
  readonly onDidChange: vscode.Event<string>;
}

export function createChosenVariants(): ChosenVariants {
  const chosen = new Map<string, string>();
  const changed = new vscode.EventEmitter<string>();
  return {
    of: (uri, { variants }) => {
      const variant = chosen.get(uri);
      return variant !== undefined && variants.includes(variant) ? variant : null;
    },
    choose: (uri, variant) => {
      if ((chosen.get(uri) ?? null) === variant) return;
      if (variant === null) chosen.delete(uri);
      else chosen.set(uri, variant);
      changed.fire(uri);
    },
    onDidChange: changed.event,
    dispose: () => changed.dispose(),
  };
}

import * as vscode from "vscode";
import type { Analysis } from "../../geometry/analysis/analyse.ts";
import { type ChosenVariants, createChosenVariants } from "./documents/chosen-variants.ts";
import { breathe, realClock } from "./documents/latest-runs.ts";
import { createOutlines, type Outlines } from "./documents/outlines.ts";
import { type Preferences, readPreferences, SECTION } from "./documents/preferences.ts";
import { createLog, type Log } from "./log.ts";

/** What all features share: what is known of the open documents, the choices of the builder, the log. */
export interface Session extends vscode.Disposable {
  readonly outlines: Outlines;
  readonly variants: ChosenVariants;
  readonly log: Log;
  preferences(document: vscode.TextDocument): Preferences;
  /** The variant of a document that is looked at. */
  analysis(document: vscode.TextDocument): Analysis;
  readonly onDidChangePreferences: vscode.Event<void>;
}

export function createSession(): Session {
  const log = createLog();
  const variants = createChosenVariants();
  const changed = new vscode.EventEmitter<void>();
  /** The editor merges all its settings for each look at one: looked at once, until one changes. */
  const read = new Map<string, Preferences>();
  const preferences = (document: vscode.TextDocument) => {
    const key = document.uri.toString();
    const known = read.get(key) ?? readPreferences(document);
    if (!document.isClosed) read.set(key, known);
    return known;
  };
  const outlines = createOutlines({
    settings: (document) => preferences(document).judgement,
    breathe: () => breathe(realClock),
  });
  const subscriptions = vscode.Disposable.from(
    vscode.workspace.onDidChangeConfiguration((event) => {
      if (!event.affectsConfiguration(SECTION)) return;
      read.clear();
      outlines.forgetAll();
      changed.fire();
    }),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => {
      read.delete(uri.toString());
      outlines.forget(uri.toString());
    }),
  );
  return {
    outlines,
    variants,
    log,
    preferences,
    analysis: (document) => {
      const variant = variants.of(document.uri.toString(), outlines.source(document));
      return outlines.analysis(document, variant);
    },
    onDidChangePreferences: changed.event,
    dispose: () => {
      for (const part of [subscriptions, variants, changed, log]) part.dispose();
    },
  };
}

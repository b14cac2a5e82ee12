import type * as vscode from "vscode";
import { isSavedState } from "../../studies/messages.ts";
import { createDocumentPanels } from "../panels/document-panels.ts";
import type { Session } from "../session.ts";
import { createStudiesPanel, type StudiesPanel } from "./studies-panel.ts";

/** The kind of our webview panels; the manifest activates the extension for it. */
const STUDIES_TYPE = "barwright.studies";

/** A study follows the typing at a distance: what it works out is not looked at between two keys. */
const FOLLOW_MS = 300;

/** All panels of studies: at most one a document. */
export interface Studies extends vscode.Disposable {
  /** Opens the panel of a document at a part, or brings it into view. The focus stays in the text. */
  open(document: vscode.TextDocument, part: string): void;
  /** The address of the document whose panel has the focus. */
  active(): string | null;
  count(): number;
  listeners(): number;
}

export interface StudiesHost {
  readonly extensionUri: vscode.Uri;
  readonly session: Session;
  showCautions(): Promise<void>;
}

export function createStudies(host: StudiesHost): Studies {
  const panels = createDocumentPanels<StudiesPanel>({
    type: STUDIES_TYPE,
    ...host,
    waitMs: FOLLOW_MS,
    create: (panel, link, onDispose) => createStudiesPanel(panel, link, { ...host, onDispose }),
    savedAddress: (state) => (isSavedState(state) ? state.documentUri : null),
    onClosed: () => {},
  });
  return {
    open: (document, part) => panels.open(document).show(part),
    active: panels.active,
    count: panels.count,
    listeners: panels.listeners,
    dispose: () => panels.dispose(),
  };
}

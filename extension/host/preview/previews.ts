import * as vscode from "vscode";
import { isSavedState } from "../../preview/messages.ts";
import { createDocumentPanels } from "../panels/document-panels.ts";
import type { Session } from "../session.ts";
import { createPreviewPanel, type PreviewPanel } from "./preview-panel.ts";

/** The kind of our webview panels; the manifest activates the extension for it. */
const PREVIEW_TYPE = "barwright.preview";

/** All previews: at most one a document, each found by the address of its document. */
export interface Previews extends vscode.Disposable {
  /** Opens the preview of a document beside it, or brings it into view. The focus stays in the text. */
  open(document: vscode.TextDocument): void;
  /** The address of the document whose preview has the focus. */
  active(): string | null;
  count(): number;
  /** How many listeners the panels hold. */
  listeners(): number;
}

export interface PreviewsHost {
  readonly extensionUri: vscode.Uri;
  readonly session: Session;
  exportCutFile(document: vscode.TextDocument): Promise<void>;
  showCautions(): Promise<void>;
}

export function createPreviews(host: PreviewsHost): Previews {
  const { session, extensionUri } = host;
  const panels = createDocumentPanels<PreviewPanel>({
    type: PREVIEW_TYPE,
    extensionUri,
    session,
    // The events of one key come together: after them, at once.
    waitMs: 0,
    create: (panel, link, onDispose) => createPreviewPanel(panel, link, { ...host, onDispose }),
    savedAddress: (state) => (isSavedState(state) ? state.documentUri : null),
    // Nobody sees any more which variant hovers and hints speak of.
    onClosed: (uri) => session.variants.choose(uri, null),
  });
  const subscriptions = vscode.Disposable.from(
    vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
      const key = textEditor.document.uri.toString();
      // While one types, the place goes with the drawing: two messages a key would be drawn twice.
      if (!panels.isBusy(key)) panels.of(key)?.highlight();
    }),
    vscode.window.onDidChangeVisibleTextEditors(() => {
      for (const panel of panels.all()) panel.highlight();
    }),
  );
  return {
    open: panels.open,
    active: panels.active,
    count: panels.count,
    listeners: panels.listeners,
    dispose: () => {
      subscriptions.dispose();
      panels.dispose();
    },
  };
}

import * as vscode from "vscode";
import { isSavedState } from "../../preview/messages.ts";
import { createLatestRuns, realClock } from "../documents/latest-runs.ts";
import { isOutline, openOutline } from "../language.ts";
import type { Session } from "../session.ts";
import { linkDocument } from "./document-link.ts";
import { followDocuments } from "./follow-documents.ts";
import { pageRoot } from "./page-html.ts";
import { createPreviewPanel, type PanelHost, type PreviewPanel } from "./preview-panel.ts";

/** The kind of our webview panels; the manifest activates the extension for it. */
export const PREVIEW_TYPE = "barwright.preview";

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
  const panels = new Map<string, PreviewPanel>();
  const updates = createLatestRuns({
    clock: realClock,
    // The events of one key come together: after them, at once.
    waitMs: 0,
    run: async (uri, isCurrent) => panels.get(uri)?.update(isCurrent),
    onFault: (error) => session.log.fault("preview", error),
  });

  const panelHost: PanelHost = {
    ...host,
    onDispose: (panel) => {
      const key = panel.link.uri();
      panels.delete(key);
      updates.cancel(key);
      // Nobody sees any more which variant hovers and hints speak of.
      session.variants.choose(key, null);
    },
  };
  const take = (panel: vscode.WebviewPanel, uri: vscode.Uri) => {
    const taken = createPreviewPanel(panel, linkDocument(uri), panelHost);
    panels.set(uri.toString(), taken);
    return taken;
  };
  const move = (from: string, to: vscode.Uri) => {
    const panel = panels.get(from);
    if (!panel) return;
    // One panel a document: what is shown there already stays.
    if (panels.has(to.toString())) return panel.dispose();
    panels.delete(from);
    panels.set(to.toString(), panel);
    panel.move(to);
    updates.cancel(from);
    updates.request(to.toString());
  };
  const updateIfShown = ({ uri }: vscode.TextDocument) => {
    if (panels.has(uri.toString())) updates.request(uri.toString());
  };
  const updateAll = () => {
    for (const key of panels.keys()) updates.request(key);
  };

  const subscriptions = vscode.Disposable.from(
    vscode.workspace.onDidChangeTextDocument(({ document }) => updateIfShown(document)),
    vscode.workspace.onDidOpenTextDocument(updateIfShown),
    followDocuments({ has: (uri) => panels.has(uri), uris: () => panels.keys(), move }),
    session.variants.onDidChange((uri) => panels.has(uri) && updates.request(uri)),
    session.onDidChangePreferences(updateAll),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
      const key = textEditor.document.uri.toString();
      // While one types, the place goes with the drawing: two messages a key would be drawn twice.
      if (!updates.isBusy(key)) panels.get(key)?.highlight();
    }),
    vscode.window.onDidChangeVisibleTextEditors(() => {
      for (const panel of panels.values()) panel.highlight();
    }),
    vscode.window.registerWebviewPanelSerializer(PREVIEW_TYPE, {
      deserializeWebviewPanel: async (panel, state: unknown) => restore(panel, state, panels, take),
    }),
  );

  return {
    open: (document) => {
      const known = panels.get(document.uri.toString());
      if (known) known.reveal();
      else take(openBeside(extensionUri), document.uri);
    },
    active: () => [...panels.values()].find((panel) => panel.isActive())?.link.uri() ?? null,
    count: () => panels.size,
    listeners: () => [...panels.values()].reduce((sum, panel) => sum + panel.listeners(), 0),
    dispose: () => {
      subscriptions.dispose();
      updates.dispose();
      for (const panel of [...panels.values()]) panel.dispose();
    },
  };
}

function openBeside(extensionUri: vscode.Uri): vscode.WebviewPanel {
  return vscode.window.createWebviewPanel(
    PREVIEW_TYPE,
    "",
    { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
    { enableScripts: true, localResourceRoots: [pageRoot(extensionUri)] },
  );
}

/** Brings a panel back after a reload; one that nobody can fill any more is closed. */
async function restore(
  panel: vscode.WebviewPanel,
  state: unknown,
  panels: ReadonlyMap<string, PreviewPanel>,
  take: (panel: vscode.WebviewPanel, uri: vscode.Uri) => PreviewPanel,
): Promise<void> {
  const address = isSavedState(state) ? state.documentUri : null;
  const uri = address === null ? null : vscode.Uri.parse(address);
  if (uri === null || panels.has(uri.toString()) || !(await isThere(uri))) return panel.dispose();
  take(panel, uri);
}

async function isThere(uri: vscode.Uri): Promise<boolean> {
  if (openOutline(uri.toString())) return true;
  try {
    return isOutline(await vscode.workspace.openTextDocument(uri));
  } catch {
    return false;
  }
}

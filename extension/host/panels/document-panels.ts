import * as vscode from "vscode";
import { createLatestRuns, realClock } from "../documents/latest-runs.ts";
import { isOutline, openOutline } from "../language.ts";
import type { Session } from "../session.ts";
import { type DocumentLink, linkDocument } from "./document-link.ts";
import { followDocuments } from "./follow-documents.ts";
import { pageRoot } from "./page-files.ts";

/** A webview panel that belongs to a document. */
export interface DocumentPanel extends vscode.Disposable {
  readonly link: DocumentLink;
  isActive(): boolean;
  /** Brings the panel into view, the focus staying where it is. */
  reveal(): void;
  /** Shows the text as it is now, or later when the panel is hidden; leaves off when that is no longer current. */
  update(isCurrent?: () => boolean): Promise<void>;
  /** The document goes on under another address. */
  move(to: vscode.Uri): void;
  /** Whether it shows something of a document that is not its own. */
  follows(uri: string): boolean;
  /** How many listeners it holds. */
  listeners(): number;
}

/** A kind of panel. */
export interface PanelKind<Panel extends DocumentPanel> {
  /** Of the webviews; the manifest activates the extension for it. */
  readonly type: string;
  readonly extensionUri: vscode.Uri;
  readonly session: Session;
  /** How long to wait after a change, in ms. */
  readonly waitMs: number;
  /** Takes over a fresh or restored webview panel; the last is to be called when it is disposed. */
  create(panel: vscode.WebviewPanel, link: DocumentLink, onDispose: (panel: Panel) => void): Panel;
  /** The address of the document in the state that a page kept; `null` for a state that is none. */
  savedAddress(state: unknown): string | null;
  /** The panel of a document is gone. */
  onClosed(uri: string): void;
}

/** All panels of a kind: at most one a document, each found by the address of its document. */
export interface DocumentPanels<Panel extends DocumentPanel> extends vscode.Disposable {
  /** Opens the panel of a document beside it, or brings it into view. The focus stays in the text. */
  open(document: vscode.TextDocument): Panel;
  of(uri: string): Panel | null;
  all(): readonly Panel[];
  /** Whether an update is to come or under way. */
  isBusy(uri: string): boolean;
  update(uri: string): void;
  /** The address of the document whose panel has the focus. */
  active(): string | null;
  count(): number;
  /** How many listeners the panels hold. */
  listeners(): number;
}

export function createDocumentPanels<Panel extends DocumentPanel>(
  kind: PanelKind<Panel>,
): DocumentPanels<Panel> {
  const { session, extensionUri, type } = kind;
  const panels = new Map<string, Panel>();
  const updates = createLatestRuns({
    clock: realClock,
    waitMs: kind.waitMs,
    run: async (uri, isCurrent) => panels.get(uri)?.update(isCurrent),
    onFault: (error) => session.log.fault(type, error),
  });

  const closed = (panel: Panel) => {
    const key = panel.link.uri();
    panels.delete(key);
    updates.cancel(key);
    kind.onClosed(key);
  };
  const take = (panel: vscode.WebviewPanel, uri: vscode.Uri) => {
    const taken = kind.create(panel, linkDocument(uri), closed);
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
  const updateWhereShown = ({ uri }: vscode.TextDocument) => {
    const changed = uri.toString();
    for (const [key, panel] of panels) if (key === changed || panel.follows(changed)) updates.request(key);
  };
  const updateAll = () => {
    for (const key of panels.keys()) updates.request(key);
  };
  const restore = async (panel: vscode.WebviewPanel, state: unknown) => {
    const address = kind.savedAddress(state);
    const uri = address === null ? null : vscode.Uri.parse(address);
    // One that nobody can fill any more is closed.
    if (uri === null || panels.has(uri.toString()) || !(await isThere(uri))) return panel.dispose();
    take(panel, uri);
  };

  const subscriptions = vscode.Disposable.from(
    vscode.workspace.onDidChangeTextDocument(({ document }) => updateWhereShown(document)),
    vscode.workspace.onDidOpenTextDocument(updateWhereShown),
    followDocuments({ has: (uri) => panels.has(uri), uris: () => panels.keys(), move }),
    session.variants.onDidChange((uri) => panels.has(uri) && updates.request(uri)),
    session.onDidChangePreferences(updateAll),
    vscode.window.registerWebviewPanelSerializer(type, { deserializeWebviewPanel: restore }),
  );

  return {
    open: (document) => {
      const known = panels.get(document.uri.toString());
      if (!known) return take(openBeside(type, extensionUri), document.uri);
      known.reveal();
      return known;
    },
    of: (uri) => panels.get(uri) ?? null,
    all: () => [...panels.values()],
    isBusy: (uri) => updates.isBusy(uri),
    update: (uri) => updates.request(uri),
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

function openBeside(type: string, extensionUri: vscode.Uri): vscode.WebviewPanel {
  return vscode.window.createWebviewPanel(
    type,
    "",
    { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
    { enableScripts: true, localResourceRoots: [pageRoot(extensionUri)] },
  );
}

async function isThere(uri: vscode.Uri): Promise<boolean> {
  if (openOutline(uri.toString())) return true;
  try {
    return isOutline(await vscode.workspace.openTextDocument(uri));
  } catch {
    return false;
  }
}

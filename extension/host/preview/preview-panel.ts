import * as vscode from "vscode";
import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { isPageMessage } from "../../preview/messages.ts";
import { drawingAhead, type LastGood, viewOf } from "../../preview/model.ts";
import type { HostMessage, PageMessage } from "../../preview/protocol.ts";
import { breathe, realClock } from "../documents/latest-runs.ts";
import type { DocumentLink } from "../panels/document-link.ts";
import type { DocumentPanel } from "../panels/document-panels.ts";
import { pageRoot, panelIcon } from "../panels/page-files.ts";
import type { Session } from "../session.ts";
import { cursorIn, revealText } from "./editors.ts";
import { movePointInText } from "./move-point.ts";
import { pageHtml } from "./page-html.ts";

/** What a panel asks of the rest of the extension. */
export interface PanelHost {
  readonly extensionUri: vscode.Uri;
  readonly session: Session;
  exportCutFile(document: vscode.TextDocument): Promise<void>;
  showCautions(): Promise<void>;
  onDispose(panel: PreviewPanel): void;
}

/** One preview: a webview and the document that it shows. It shows first the drawing, then all that takes longer. */
export interface PreviewPanel extends DocumentPanel {
  /** Marks the place of the cursor. */
  highlight(): void;
}

/** Takes over a fresh or restored webview panel. */
export function createPreviewPanel(
  panel: vscode.WebviewPanel,
  link: DocumentLink,
  host: PanelHost,
): PreviewPanel {
  const { session } = host;
  let isDisposed = false;
  /** False until the page says that it is there: what is sent before would be lost or held for nobody. */
  let isReady = false;
  let lastGood: LastGood | null = null;

  const post = (message: HostMessage) => {
    if (!isDisposed) void panel.webview.postMessage(message);
  };
  const highlight = () => {
    if (isReady && panel.visible) post({ type: "highlight", source: cursorIn(link.uri()) });
  };
  const isShown = () => !isDisposed && isReady && panel.visible;
  const update = async (isCurrent = () => true) => {
    if (!isShown()) return;
    const document = link.current() ?? (await link.open());
    if (isDisposed) return;
    if (sendDrawing(document)) await breathe(realClock);
    if (isShown() && isCurrent()) sendView(link.current() ?? document);
  };
  /** The drawing alone; false for a text that is broken. */
  const sendDrawing = (document: vscode.TextDocument): boolean => {
    const chosen = session.analysis(document);
    const drawing = drawingAhead(chosen);
    if (!drawing) return false;
    const version = link.version(document);
    post({ type: "drawing", documentUri: link.uri(), version, variant: chosen.variant, drawing });
    return true;
  };
  const sendView = (document: vscode.TextDocument) => {
    const shown = shownVariants(document, session);
    const { view, lastGood: kept } = viewOf({
      ...shown,
      version: link.version(document),
      documentUri: link.uri(),
      fileName: link.fileName(),
      lastGood,
    });
    lastGood = kept;
    post({ type: "view", view, units: session.preferences(document).units });
    highlight();
  };
  const answerMove = async (message: Extract<PageMessage, { type: "movePoint" }>) => {
    const reason = await movePointInText(message, link, session);
    if (reason !== null) post({ type: "failed", request: message.request, message: reason });
  };
  const answer = async (message: PageMessage): Promise<void> => {
    switch (message.type) {
      case "ready":
        isReady = true;
        return update();
      case "reveal":
        return revealText(await link.open(), message.source, panel.viewColumn);
      case "chooseVariant":
        return session.variants.choose(link.uri(), message.variant);
      case "chooseUnits":
        // The page shows them by itself; the setting stays what the builder set.
        return;
      case "movePoint":
        return answerMove(message);
      case "exportCutFile":
        return host.exportCutFile(await link.open());
      case "showCautions":
        return host.showCautions();
    }
  };

  const showName = () => {
    panel.title = vscode.l10n.t("Preview {0}", link.fileName());
  };

  panel.webview.options = { enableScripts: true, localResourceRoots: [pageRoot(host.extensionUri)] };
  panel.iconPath = panelIcon(host.extensionUri);
  showName();
  const listeners = [
    panel.webview.onDidReceiveMessage((message: unknown) => {
      if (!isPageMessage(message)) return;
      answer(message).catch((error: unknown) => session.log.fault(`preview, ${message.type}`, error));
    }),
    panel.onDidChangeViewState(() => {
      // A page that comes back from hiding is a new page and says so; one that was only covered wants what it missed.
      if (panel.visible) update().catch((error: unknown) => session.log.fault("preview, shown again", error));
      else isReady = false;
    }),
    panel.onDidDispose(() => {
      isDisposed = true;
      for (const listener of listeners) listener.dispose();
      host.onDispose(preview);
    }),
  ];
  panel.webview.html = pageHtml(panel.webview, host.extensionUri, panel.title);

  const preview: PreviewPanel = {
    link,
    isActive: () => panel.active,
    reveal: () => panel.reveal(undefined, true),
    update,
    move: (to) => {
      link.move(to);
      showName();
    },
    follows: () => false,
    highlight,
    listeners: () => (isDisposed ? 0 : listeners.length),
    dispose: () => panel.dispose(),
  };
  return preview;
}

/** The variant that is looked at and, where they are wanted, the others. */
function shownVariants(
  document: vscode.TextDocument,
  session: Session,
): { readonly chosen: Analysis; readonly others: readonly Analysis[] } {
  const chosen = session.analysis(document);
  if (!session.preferences(document).otherVariants) return { chosen, others: [] };
  const others = [null, ...chosen.source.variants]
    .filter((variant) => variant !== chosen.variant)
    .map((variant) => session.outlines.analysis(document, variant));
  return { chosen, others };
}

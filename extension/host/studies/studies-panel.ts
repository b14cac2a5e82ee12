import * as vscode from "vscode";
import { isPageMessage } from "../../studies/messages.ts";
import type { HostMessage, PageMessage, StudyFile } from "../../studies/protocol.ts";
import { pageDocument } from "../../webview/html.ts";
import { offerToShow, saveWhere } from "../commands/save-result.ts";
import type { DocumentLink } from "../panels/document-link.ts";
import type { DocumentPanel } from "../panels/document-panels.ts";
import { pageBasics, pageRoot, panelIcon } from "../panels/page-files.ts";
import type { Session } from "../session.ts";
import { applyPageEdits } from "./apply-page-edits.ts";
import { outlineAt, pickOutlines } from "./other-outlines.ts";

export interface StudiesPanelHost {
  readonly extensionUri: vscode.Uri;
  readonly session: Session;
  showCautions(): Promise<void>;
  onDispose(panel: StudiesPanel): void;
}

/** One panel of studies. It carries texts and edits; all is worked out by the page's own workers. */
export interface StudiesPanel extends DocumentPanel {
  /** Has the page show a part, now or as soon as it is there. */
  show(part: string): void;
}

/** Takes over a fresh or restored webview panel. */
export function createStudiesPanel(
  panel: vscode.WebviewPanel,
  link: DocumentLink,
  host: StudiesPanelHost,
): StudiesPanel {
  const { session, extensionUri } = host;
  let isDisposed = false;
  /** False until the page says that it is there. */
  let isReady = false;
  let wanted: string | null = null;
  /** Addresses of the files taken in beside. */
  let others: readonly string[] = [];

  const post = (message: HostMessage) => {
    if (!isDisposed) void panel.webview.postMessage(message);
  };
  const isShown = () => !isDisposed && isReady && panel.visible;
  const update = async (isCurrent = () => true) => {
    if (!isShown()) return;
    const document = link.current() ?? (await link.open());
    const files = await Promise.all(others.map(outlineAt));
    if (!isShown() || !isCurrent()) return;
    const { units, judgement } = session.preferences(document);
    post({ type: "others", files: files.flatMap((file) => (file ? fileOf(file) : [])) });
    post({
      type: "document",
      document: {
        ...fileOf(document),
        version: link.version(document),
        variant: session.variants.of(link.uri(), session.outlines.source(document)),
        units,
        settings: judgement,
      },
    });
    if (wanted !== null) post({ type: "show", part: wanted });
    wanted = null;
  };
  const takeIn = (uris: readonly string[]) => {
    others = [...new Set([...others, ...uris])].filter((uri) => uri !== link.uri());
    return update();
  };
  const done = (request: number, refused: string | null) => post({ type: "done", request, refused });
  const answer = async (message: PageMessage): Promise<void> => {
    switch (message.type) {
      case "ready":
        isReady = true;
        return takeIn(message.others);
      case "pickOthers":
        return takeIn(await pickOutlines([link.uri(), ...others]));
      case "dropOther":
        others = others.filter((uri) => uri !== message.uri);
        return update();
      case "applyEdits":
        return done(message.request, await applyPageEdits(message, link));
      case "saveFile":
        return save(message);
      case "showCautions":
        return host.showCautions();
      case "fault":
        return session.log.fault("studies, worker", message.reason);
    }
  };
  const save = async ({ request, file }: Extract<PageMessage, { type: "saveFile" }>) => {
    try {
      const uri = await saveWhere(await link.open(), file);
      done(request, null);
      if (uri) await offerToShow(uri, file.summary);
    } catch (error) {
      done(request, error instanceof Error ? error.message : String(error));
    }
  };

  const showName = () => {
    panel.title = vscode.l10n.t("Studies {0}", link.fileName());
  };
  panel.webview.options = { enableScripts: true, localResourceRoots: [pageRoot(extensionUri)] };
  panel.iconPath = panelIcon(extensionUri);
  showName();
  const listeners = [
    panel.webview.onDidReceiveMessage((message: unknown) => {
      if (!isPageMessage(message)) return;
      answer(message).catch((error: unknown) => session.log.fault(`studies, ${message.type}`, error));
    }),
    panel.onDidChangeViewState(() => {
      // A page that comes back from hiding is a new page and says so; one that was only covered wants what it missed.
      if (panel.visible) update().catch((error: unknown) => session.log.fault("studies, shown again", error));
      else isReady = false;
    }),
    panel.onDidDispose(() => {
      isDisposed = true;
      for (const listener of listeners) listener.dispose();
      host.onDispose(studies);
    }),
  ];
  const basics = pageBasics(panel.webview, extensionUri, "studies");
  panel.webview.html = pageDocument({
    ...basics,
    title: panel.title,
    worker: true,
    data: {
      worker: basics.addressOf("studies-worker.js"),
      translations: JSON.stringify(vscode.l10n.bundle ?? {}),
    },
  });

  const studies: StudiesPanel = {
    link,
    isActive: () => panel.active,
    reveal: () => panel.reveal(undefined, true),
    update,
    move: (to) => {
      link.move(to);
      showName();
    },
    follows: (uri) => others.includes(uri),
    show: (part) => {
      if (isReady) post({ type: "show", part });
      else wanted = part;
    },
    listeners: () => (isDisposed ? 0 : listeners.length),
    dispose: () => panel.dispose(),
  };
  return studies;
}

function fileOf(document: vscode.TextDocument): StudyFile {
  const { path } = document.uri;
  return {
    uri: document.uri.toString(),
    fileName: path.slice(path.lastIndexOf("/") + 1),
    text: document.getText(),
  };
}

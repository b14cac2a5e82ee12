/** The page as a whole: its parts behind tabs, one of them shown; its state; what it asks of the host. */

import { fill } from "../../webview/fill.ts";
import { el, setHidden, setText } from "../../webview/page/dom.ts";
import type { EditorLink } from "../../webview/page/editor-link.ts";
import type { HostMessage, PageMessage, SavedState } from "../protocol.ts";
import type { StudiesStrings } from "../strings.ts";
import { createJobRunner } from "./job-runner.ts";
import type { PartContext, StudiesState, StudyPart, StudyView } from "./part.ts";
import { createRequests } from "./requests.ts";
import { createTabs } from "./tabs.ts";
import type { StartWorker } from "./worker-handle.ts";

export interface PageParts {
  readonly link: EditorLink<HostMessage, PageMessage, SavedState>;
  readonly strings: StudiesStrings;
  readonly startWorker: StartWorker;
  readonly parts: readonly StudyPart[];
}

/** Build the page into an element and keep it up with what the host says. */
export function startPage(root: HTMLElement, { link, strings, startWorker, parts }: PageParts): void {
  const saved = link.load();
  let kept: SavedState["parts"] = saved?.parts ?? {};
  let state: StudiesState = {
    document: null,
    others: [],
    part: partNamed(parts, saved?.part)?.name ?? parts[0]?.name ?? "",
    failed: null,
  };
  let requested = 0;
  const views = new Map<string, StudyView>();
  const requests = createRequests(link.post);
  const title = el("h1");
  const failed = el("p", { class: "failed", role: "alert" });
  const live = el("p", { class: "visually-hidden", role: "status" });
  const tabs = createTabs(parts, strings, (part) => change({ part }));
  const main = el("main", {}, failed);

  const redraw = () => {
    if (requested === 0) requested = requestAnimationFrame(draw);
  };
  const change = (changes: Partial<StudiesState>) => {
    state = { ...state, ...changes };
    redraw();
  };
  const save = () => {
    // Before the document is known there is nothing to come back to.
    if (!state.document) return;
    const others = state.others.map(({ uri }) => uri);
    link.save({ documentUri: state.document.uri, others, part: state.part, parts: kept });
  };
  const contextOf = ({ name }: StudyPart): PartContext => ({
    strings,
    redraw,
    state: () => state,
    jobs: createJobRunner(startWorker, (reason) => link.post({ type: "fault", reason })),
    kept: () => kept[name],
    keep: (data) => {
      kept = { ...kept, [name]: data };
      save();
    },
    post: link.post,
    announce: (text) => setText(live, text),
    applyEdits: async (version, edits) =>
      told(
        await requests.ask((request) => ({ type: "applyEdits", request, version, edits })),
        strings.refusedEdit,
      ),
    saveFile: async (file) =>
      told(await requests.ask((request) => ({ type: "saveFile", request, file })), strings.refusedSave),
  });
  const told = (refused: string | null, text: string): boolean => {
    change({ failed: refused === null ? null : fill(text, refused) });
    return refused === null;
  };

  /** A part is made when it is first looked at. */
  function viewOf(part: StudyPart): StudyView {
    const view = views.get(part.name) ?? part.create(contextOf(part));
    if (!views.has(part.name)) {
      views.set(part.name, view);
      tabs.own(part.name, view.element);
      main.append(view.element);
    }
    return view;
  }

  function draw(): void {
    requested = 0;
    const { document, part, failed: why } = state;
    setText(title, document ? fill(strings.studiesOf, document.fileName) : strings.loading);
    setText(failed, why ?? "");
    setHidden(failed, why === null);
    tabs.update(part);
    const shown = partNamed(parts, part);
    const view = shown && document ? viewOf(shown) : null;
    for (const one of views.values()) setHidden(one.element, one !== view);
    view?.update(state);
    save();
  }

  link.onMessage((message) => {
    switch (message.type) {
      case "document":
        return change({ document: message.document, failed: null });
      case "others":
        return change({ others: message.files });
      case "show":
        if (partNamed(parts, message.part)) change({ part: message.part });
        return;
      case "done":
        return requests.answer(message.request, message.refused);
    }
  });
  root.append(el("header", {}, title, tabs.element), main, footer(strings, link.post), live);
  link.post({ type: "ready", others: saved?.others ?? [] });
  redraw();
}

function partNamed(parts: readonly StudyPart[], name: string | undefined): StudyPart | null {
  return parts.find((part) => part.name === name) ?? null;
}

/** The cautions in short, always in sight, with the way to all of them. */
function footer(strings: StudiesStrings, post: (message: PageMessage) => void): HTMLElement {
  const button = el("button", { type: "button", class: "link" }, strings.allCautions);
  button.addEventListener("click", () => post({ type: "showCautions" }));
  const text = el("p", {}, strings.cautionShort);
  return el("footer", { class: "cautions", "aria-label": strings.cautions }, text, button);
}

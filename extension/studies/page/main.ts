import "./studies.css";
import { connectToEditor } from "../../webview/page/editor-link.ts";
import { isHostMessage, isSavedState } from "../messages.ts";
import { translatedStrings } from "../strings.ts";
import { startPage } from "./page.ts";
import { PARTS } from "./parts.ts";
import { workerStarter } from "./start-worker.ts";

const { translations, worker } = document.body.dataset;

startPage(document.body, {
  link: connectToEditor(isHostMessage, isSavedState),
  strings: translatedStrings(parsed(translations)),
  startWorker: workerStarter(worker ?? ""),
  parts: PARTS,
});

/** What the host put on the body; nothing where there is none, or none that can be read. */
function parsed(text: string | undefined): unknown {
  try {
    return JSON.parse(text ?? "null");
  } catch {
    return null;
  }
}

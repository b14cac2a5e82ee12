import { connectToEditor, type EditorLink } from "../../webview/page/editor-link.ts";
import { isHostMessage, isSavedState } from "../messages.ts";
import type { HostMessage, PageMessage, SavedState } from "../protocol.ts";

export type HostLink = EditorLink<HostMessage, PageMessage, SavedState>;

export function connectToHost(): HostLink {
  return connectToEditor(isHostMessage, isSavedState);
}

import { isHostMessage, isSavedState } from "../messages.ts";
import type { HostMessage, PageMessage, SavedState } from "../protocol.ts";

/** The page's only way out: messages to the host, and a state that outlives the page. */
export interface HostLink {
  post(message: PageMessage): void;
  load(): SavedState | null;
  save(state: SavedState): void;
  /** Whole messages only; what is not one is dropped. */
  onMessage(listener: (message: HostMessage) => void): void;
}

interface EditorApi {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
}

/** Given by the editor to each webview; may be called once. */
declare function acquireVsCodeApi(): EditorApi;

export function connectToHost(): HostLink {
  const api = acquireVsCodeApi();
  return {
    post: (message) => api.postMessage(message),
    load: () => {
      const state = api.getState();
      return isSavedState(state) ? state : null;
    },
    save: (state) => api.setState(state),
    onMessage: (listener) => {
      window.addEventListener("message", ({ data }: MessageEvent<unknown>) => {
        if (isHostMessage(data)) listener(data);
      });
    },
  };
}

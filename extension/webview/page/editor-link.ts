/** The page's only way out: messages to the host, and a state that outlives the page. */
export interface EditorLink<HostMessage, PageMessage, State> {
  post(message: PageMessage): void;
  load(): State | null;
  save(state: State): void;
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

/** Connect to the host; call it once. */
export function connectToEditor<HostMessage, PageMessage, State>(
  isHostMessage: (value: unknown) => value is HostMessage,
  isState: (value: unknown) => value is State,
): EditorLink<HostMessage, PageMessage, State> {
  const api = acquireVsCodeApi();
  return {
    post: (message) => api.postMessage(message),
    load: () => {
      const state = api.getState();
      return isState(state) ? state : null;
    },
    save: (state) => api.setState(state),
    onMessage: (listener) => {
      window.addEventListener("message", ({ data }: MessageEvent<unknown>) => {
        if (isHostMessage(data)) listener(data);
      });
    },
  };
}

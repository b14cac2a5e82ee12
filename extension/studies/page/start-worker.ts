import type { StartWorker } from "./worker-handle.ts";

/**
 * Starts workers from the extension's script. A webview may not start one from another address, so the script is
 * fetched once and each worker made from a blob of it, as the editor's guide to webviews says.
 */
export function workerStarter(scriptUri: string): StartWorker {
  let source: Promise<string> | null = null;
  return async (listener) => {
    source ??= blobOf(scriptUri);
    const url = await source.catch((error: unknown) => {
      source = null;
      throw error;
    });
    const worker = new Worker(url);
    worker.addEventListener("message", ({ data }: MessageEvent<unknown>) => listener.message(data));
    worker.addEventListener("error", (event) => {
      event.preventDefault();
      listener.fault(event.message || "the worker broke down");
    });
    return { post: (message) => worker.postMessage(message), terminate: () => worker.terminate() };
  };
}

async function blobOf(scriptUri: string): Promise<string> {
  const response = await fetch(scriptUri);
  if (!response.ok) throw new Error(`${scriptUri}: ${response.status}`);
  return URL.createObjectURL(new Blob([await response.text()], { type: "text/javascript" }));
}

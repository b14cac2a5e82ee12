import type { BrowserContext, Request } from "playwright-core";

/** What must not happen while a test runs: errors in the console or a page, and requests that leave the machine. */
export interface FaultWatch {
  /** The faults since the last call, in the order they were seen. */
  take(): string[];
}

/** Watches a browser context from now on. */
export function watchFaults(context: BrowserContext): FaultWatch {
  let faults: string[] = [];
  context.on("console", (message) => {
    if (message.type() === "error") faults.push(`console: ${message.text()} (${message.location().url})`);
  });
  context.on("weberror", (error) => faults.push(`page: ${error.error().stack ?? error.error().message}`));
  context.on("requestfailed", (request) => {
    if (leaves(request)) faults.push(`outside: ${request.url()} (${request.failure()?.errorText})`);
  });
  context.on("requestfinished", async (request) => {
    if (!leaves(request)) return;
    // The addresses of webview resources look foreign; the webview's service worker answers them itself.
    const response = await request.response();
    if (!response?.fromServiceWorker()) faults.push(`outside: ${request.url()} (answered)`);
  });
  return {
    take: () => {
      const taken = faults;
      faults = [];
      return taken;
    },
  };
}

/** Whether the address of a request names another machine. */
function leaves(request: Request): boolean {
  const { protocol, hostname } = new URL(request.url());
  if (!["http:", "https:", "ws:", "wss:"].includes(protocol)) return false;
  return hostname !== "127.0.0.1" && hostname !== "localhost" && !hostname.endsWith(".localhost");
}

import type { ServerResponse } from "node:http";
import type { FolderChange } from "./protocol.ts";

/** The open event streams of a server: who listens is told of each change until it leaves. */
export interface ChangeStream {
  listen(response: ServerResponse): void;
  tell(changes: readonly FolderChange[]): void;
  close(): void;
}

/** Creates a stream with no listeners yet. */
export function createChangeStream(): ChangeStream {
  const listeners = new Set<ServerResponse>();
  return {
    listen: (response) => {
      listeners.add(response);
      response.on("close", () => listeners.delete(response));
      response.writeHead(200, { "Content-Type": "text/event-stream", "Cache-Control": "no-store" });
      // Something has to be sent for the listener to see that the stream is open.
      response.write(": listening\n\n");
    },
    tell: (changes) => {
      for (const listener of listeners) listener.write(`data: ${JSON.stringify(changes)}\n\n`);
    },
    close: () => {
      for (const listener of listeners) listener.end();
    },
  };
}

import type { PageMessage } from "../protocol.ts";

/** What was asked of the host and is not answered yet. */
export interface Requests {
  /** Gives the reason of a refusal, `null` when it was done. */
  ask(message: (request: number) => PageMessage): Promise<string | null>;
  answer(request: number, refused: string | null): void;
}

export function createRequests(post: (message: PageMessage) => void): Requests {
  const waiting = new Map<number, (refused: string | null) => void>();
  let last = 0;
  return {
    ask: (message) =>
      new Promise((resolve) => {
        last += 1;
        waiting.set(last, resolve);
        post(message(last));
      }),
    answer: (request, refused) => {
      waiting.get(request)?.(refused);
      waiting.delete(request);
    },
  };
}

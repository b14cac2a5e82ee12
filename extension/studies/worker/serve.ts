import type { Check } from "../../webview/checks.ts";
import { isJobRequest, type Outcome, type Progress, type WorkerMessage } from "./job.ts";

/** Progress is told no more often than an eye follows. */
const TOLD_EACH_MS = 50;

/** A job whatever its kind. */
export interface AnyJob {
  readonly kind: string;
  readonly isInput: Check<unknown>;
  run(input: never, tell: (progress: Progress) => void): Outcome<unknown> | Promise<Outcome<unknown>>;
}

/**
 * Answers requests with the jobs there are, one message in, one or more out. What is no request is dropped; an unknown
 * kind or a bug in a job is told as a fault, so that no request stays without an answer.
 */
export function serve(
  jobs: readonly AnyJob[],
  post: (message: WorkerMessage) => void,
  now: () => number,
): (message: unknown) => Promise<void> {
  return async (message) => {
    if (!isJobRequest(message)) return;
    const { id, kind, input } = message;
    let toldAt = Number.NEGATIVE_INFINITY;
    const tell = (progress: Progress) => {
      if (now() - toldAt < TOLD_EACH_MS) return;
      toldAt = now();
      post({ type: "progress", id, progress });
    };
    try {
      const job = jobs.find((candidate) => candidate.kind === kind);
      if (!job?.isInput(input)) throw new TypeError(`no job "${kind}" takes this input`);
      const outcome = await job.run(input as never, tell);
      if ("refused" in outcome) post({ type: "refused", id, reason: outcome.refused });
      else post({ type: "result", id, result: outcome.result });
    } catch (error) {
      post({
        type: "fault",
        id,
        reason: error instanceof Error ? (error.stack ?? error.message) : String(error),
      });
    }
  };
}

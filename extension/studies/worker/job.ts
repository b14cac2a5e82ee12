/** What a study does in the worker, and what the worker and the page say to each other. */
import {
  type Check,
  checkedByType,
  isCount,
  isNumber,
  isString,
  oneOf,
  shape,
} from "../../webview/checks.ts";

export interface Progress {
  readonly done: number;
  readonly total: number;
  /** What has been found by then: plain data that the job and its part agree on. */
  readonly soFar?: unknown;
}

/** What a job comes to: a result, or why there is none, for the reader of the page. */
export type Outcome<Result> = { readonly result: Result } | { readonly refused: string };

/** One kind of work. It is done in a worker that is terminated when nobody wants the result any more. */
export interface Job<Kind extends string, Input, Result> {
  readonly kind: Kind;
  /** Whether a value is a whole input. */
  readonly isInput: Check<Input>;
  /**
   * Do the work. Plain data in and out: it crosses between threads. Throws only for bugs.
   * @param tell says how far it is, as often as it likes
   */
  run(input: Input, tell: (progress: Progress) => void): Outcome<Result> | Promise<Outcome<Result>>;
}

/** From the page to a worker. */
export interface JobRequest {
  readonly id: number;
  readonly kind: string;
  readonly input: unknown;
}

/** From a worker to the page; `id` is the request's. */
export type WorkerMessage =
  | { readonly type: "progress"; readonly id: number; readonly progress: Progress }
  | { readonly type: "result"; readonly id: number; readonly result: unknown }
  | { readonly type: "refused"; readonly id: number; readonly reason: string }
  /** A bug: the reason is for the log, not for the reader. */
  | { readonly type: "fault"; readonly id: number; readonly reason: string };

const isAnything: Check<unknown> = (value): value is unknown => value !== undefined;

/** Whether a value is a whole request. */
export const isJobRequest: Check<JobRequest> = shape<JobRequest>({
  id: isCount,
  kind: isString,
  input: isAnything,
});

type Of<Type extends string> = Extract<WorkerMessage, { type: Type }>;

const isShare = shape<Omit<Progress, "soFar">>({ done: isNumber, total: isNumber });
const isProgress: Check<Progress> = (value): value is Progress => isShare(value);

const WORKER_MESSAGES: { readonly [Type in WorkerMessage["type"]]: Check<Of<Type>> } = {
  progress: shape<Of<"progress">>({
    type: oneOf("progress"),
    id: isCount,
    progress: isProgress,
  }),
  result: shape<Of<"result">>({ type: oneOf("result"), id: isCount, result: isAnything }),
  refused: shape<Of<"refused">>({ type: oneOf("refused"), id: isCount, reason: isString }),
  fault: shape<Of<"fault">>({ type: oneOf("fault"), id: isCount, reason: isString }),
};

/** Whether a value is a whole message of a worker. */
export function isWorkerMessage(value: unknown): value is WorkerMessage {
  return checkedByType(WORKER_MESSAGES, value);
}

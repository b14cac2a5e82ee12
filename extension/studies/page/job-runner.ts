import { isWorkerMessage, type Progress, type WorkerMessage } from "../worker/job.ts";
import type { JobInput, JobKind, JobResult } from "../worker/jobs.ts";
import type { StartWorker, WorkerHandle } from "./worker-handle.ts";

/** Who waits for a job. One of `result`, `refused` and `fault` comes, once; none after a cancel. */
export interface JobListener<Result> {
  result(result: Result): void;
  /** Why there is no result, in words for the reader. */
  refused(reason: string): void;
  /** A bug kept it from being done. */
  fault(): void;
  progress?(progress: Progress): void;
}

/** Runs jobs in a worker, one at a time. */
export interface JobRunner {
  /** Runs a job now; what runs or waits is given up. */
  run<Kind extends JobKind>(kind: Kind, input: JobInput<Kind>, listener: JobListener<JobResult<Kind>>): void;
  /** Runs a job when what runs is done; of several that wait only the last. For what follows the text. */
  runNext<Kind extends JobKind>(
    kind: Kind,
    input: JobInput<Kind>,
    listener: JobListener<JobResult<Kind>>,
  ): void;
  /** Gives up what runs or waits, at once: the worker is terminated. */
  cancel(): void;
  isRunning(): boolean;
  /** Leaves no worker. */
  dispose(): void;
}

interface Task {
  readonly id: number;
  readonly kind: string;
  readonly input: unknown;
  readonly listener: JobListener<unknown>;
}

/** @param onFault takes what is for the log */
export function createJobRunner(startWorker: StartWorker, onFault: (reason: string) => void): JobRunner {
  let worker: WorkerHandle | null = null;
  let current: Task | null = null;
  let waiting: Task | null = null;
  let lastId = 0;

  const taskOf = <Kind extends JobKind>(
    kind: Kind,
    input: JobInput<Kind>,
    listener: JobListener<JobResult<Kind>>,
  ): Task => {
    lastId += 1;
    // The result is of the kind: the worker answers a request by its kind.
    return { id: lastId, kind, input, listener: listener as JobListener<unknown> };
  };
  const stop = () => {
    worker?.terminate();
    worker = null;
  };
  /** The current job ends; the one that waits begins. */
  const end = (tell: (listener: JobListener<unknown>) => void) => {
    const ended = current;
    current = null;
    if (ended) tell(ended.listener);
    const next = waiting;
    waiting = null;
    // The listener may have begun another.
    if (next && !current) begin(next);
  };
  const broken = (reason: string) => {
    stop();
    onFault(reason);
    end((listener) => listener.fault());
  };
  const receive = (message: WorkerMessage) => {
    if (message.id !== current?.id) return;
    switch (message.type) {
      case "progress":
        return current.listener.progress?.(message.progress);
      case "result":
        return end((listener) => listener.result(message.result));
      case "refused":
        return end((listener) => listener.refused(message.reason));
      case "fault":
        onFault(message.reason);
        return end((listener) => listener.fault());
    }
  };
  const begin = (task: Task) => {
    current = task;
    const { id, kind, input } = task;
    if (worker) return worker.post({ id, kind, input });
    const isCurrent = () => current === task;
    startWorker({
      message: (data) => {
        if (isWorkerMessage(data)) receive(data);
      },
      fault: (reason) => {
        if (current) broken(reason);
      },
    }).then(
      (started) => {
        // Given up while it started: another may be on its way.
        if (!isCurrent() || worker) return started.terminate();
        worker = started;
        started.post({ id, kind, input });
      },
      (error: unknown) => {
        if (isCurrent()) broken(String(error));
      },
    );
  };
  const cancel = () => {
    waiting = null;
    if (!current) return;
    current = null;
    stop();
  };

  return {
    run: (kind, input, listener) => {
      cancel();
      begin(taskOf(kind, input, listener));
    },
    runNext: (kind, input, listener) => {
      const task = taskOf(kind, input, listener);
      if (current) waiting = task;
      else begin(task);
    },
    cancel,
    isRunning: () => current !== null,
    dispose: () => {
      cancel();
      stop();
    },
  };
}

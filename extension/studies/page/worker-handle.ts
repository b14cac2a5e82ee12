/** A worker, as far as the page uses one. */
export interface WorkerHandle {
  post(message: unknown): void;
  /** Stops it at once, whatever it does. */
  terminate(): void;
}

export interface WorkerListener {
  message(data: unknown): void;
  /** The worker broke down. */
  fault(reason: string): void;
}

export type StartWorker = (listener: WorkerListener) => Promise<WorkerHandle>;

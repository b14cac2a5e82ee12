/** The time, so that tests can hold it. */
export interface Clock {
  now(): number;
  /** Calls back after so many ms; the result takes the call back. */
  after(delayMs: number, call: () => void): () => void;
}

export const realClock: Clock = {
  now: () => performance.now(),
  after: (delayMs, call) => {
    const timer = setTimeout(call, delayMs);
    return () => clearTimeout(timer);
  },
};

/**
 * Work that is only worth doing for the latest state of a thing. Asking again before it starts changes nothing; asking
 * while it runs makes that run out of date and starts one more when it ends. So nothing queues up, however fast one
 * types and however long a run takes.
 */
export interface LatestRuns {
  request(key: string): void;
  /** Forgets what was asked for a key; a run under way goes out of date. */
  cancel(key: string): void;
  dispose(): void;
}

export interface LatestRunsOptions {
  readonly clock: Clock;
  /** How long to wait before a run, from the time that the last one of the key took, in ms. */
  waitMs(lastRunMs: number): number;
  /** Does the work in steps, and leaves off when it is no longer current. */
  run(key: string, isCurrent: () => boolean): Promise<void>;
  onFault(error: unknown): void;
}

interface Entry {
  /** Counts the requests: a run is current while the count is what it started with. */
  requests: number;
  isRunning: boolean;
  takeBack: (() => void) | null;
  lastRunMs: number;
}

export function createLatestRuns(options: LatestRunsOptions): LatestRuns {
  const { clock } = options;
  const entries = new Map<string, Entry>();

  const schedule = (key: string, entry: Entry) => {
    entry.takeBack ??= clock.after(options.waitMs(entry.lastRunMs), () => {
      entry.takeBack = null;
      void start(key, entry);
    });
  };
  const start = async (key: string, entry: Entry) => {
    const request = entry.requests;
    const isCurrent = () => entries.get(key) === entry && entry.requests === request;
    const begun = clock.now();
    entry.isRunning = true;
    try {
      await options.run(key, isCurrent);
    } catch (error) {
      options.onFault(error);
    } finally {
      entry.isRunning = false;
      entry.lastRunMs = clock.now() - begun;
      if (entries.get(key) === entry && !isCurrent()) schedule(key, entry);
    }
  };
  const cancel = (key: string) => {
    entries.get(key)?.takeBack?.();
    entries.delete(key);
  };

  return {
    request: (key) => {
      const entry = entries.get(key) ?? { requests: 0, isRunning: false, takeBack: null, lastRunMs: 0 };
      entries.set(key, entry);
      entry.requests += 1;
      if (!entry.isRunning) schedule(key, entry);
    },
    cancel,
    dispose: () => {
      for (const key of [...entries.keys()]) cancel(key);
    },
  };
}

/** Lets what else waits go first: keys, requests of the editor. Between the steps of a run. */
export function breathe(clock: Clock): Promise<void> {
  return new Promise((resolve) => {
    clock.after(0, resolve);
  });
}

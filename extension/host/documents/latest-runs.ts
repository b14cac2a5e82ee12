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
 * Two runs longer than this, one after the other, are slow: typing on would be felt, where several threads share two
 * processors. One alone may only have met another program's work, or its own code for the first time.
 */
const SLOW_RUN_MS = 60;

/** What a slow run waits for: a pause in the typing. */
const PAUSE_MS = 200;

/** But no longer than this, so that one who types without a pause sees it follow. */
const MOST_WAIT_MS = 1500;

/**
 * Work that is only worth doing for the latest state of a thing. Asking again before it starts changes nothing; asking
 * while it runs makes that run out of date and starts one more when it ends. Where runs are slow, the next one waits for
 * a pause. So nothing queues up, however fast one types and however long a run takes.
 */
export interface LatestRuns {
  request(key: string): void;
  /** Whether a run is to come or under way. */
  isBusy(key: string): boolean;
  /** Forgets what was asked for a key; a run under way goes out of date. */
  cancel(key: string): void;
  dispose(): void;
}

export interface LatestRunsOptions {
  readonly clock: Clock;
  /** How long to wait before a run, in ms. */
  readonly waitMs: number;
  /** Does the work in steps, and leaves off when it is no longer current. */
  run(key: string, isCurrent: () => boolean): Promise<void>;
  onFault(error: unknown): void;
}

interface Entry {
  /** Counts the requests: a run is current while the count is what it started with. */
  requests: number;
  isRunning: boolean;
  /** When the run that is to come was first asked for. */
  askedAt: number;
  takeBack: (() => void) | null;
  /** Of the last run and the one before. */
  lastRunsMs: readonly [last: number, before: number];
}

const NEW_ENTRY: Entry = { requests: 0, isRunning: false, askedAt: 0, takeBack: null, lastRunsMs: [0, 0] };

export function createLatestRuns(options: LatestRunsOptions): LatestRuns {
  const { clock } = options;
  const entries = new Map<string, Entry>();

  const schedule = (key: string, entry: Entry) => {
    const isSlow = Math.min(...entry.lastRunsMs) > SLOW_RUN_MS;
    if (entry.takeBack === null) entry.askedAt = clock.now();
    else if (!isSlow) return;
    entry.takeBack?.();
    const left = entry.askedAt + MOST_WAIT_MS - clock.now();
    const wait = isSlow ? Math.max(0, Math.min(PAUSE_MS, left)) : options.waitMs;
    entry.takeBack = clock.after(wait, () => {
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
      entry.lastRunsMs = [clock.now() - begun, entry.lastRunsMs[0]];
      if (entries.get(key) === entry && !isCurrent()) schedule(key, entry);
    }
  };
  const cancel = (key: string) => {
    entries.get(key)?.takeBack?.();
    entries.delete(key);
  };

  return {
    request: (key) => {
      const entry = entries.get(key) ?? { ...NEW_ENTRY };
      entries.set(key, entry);
      entry.requests += 1;
      if (!entry.isRunning) schedule(key, entry);
    },
    isBusy: (key) => {
      const entry = entries.get(key);
      return entry !== undefined && (entry.isRunning || entry.takeBack !== null);
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

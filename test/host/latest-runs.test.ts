import { describe, expect, it } from "vitest";
import { type Clock, createLatestRuns } from "../../extension/host/documents/latest-runs.ts";

/** A clock that the test moves. Calls that are due are made in the order of their time. */
function heldClock(): Clock & { pass(ms: number): Promise<void> } {
  let now = 0;
  let calls: { at: number; call: () => void }[] = [];
  const clock: Clock = {
    now: () => now,
    after: (delayMs, call) => {
      const entry = { at: now + delayMs, call };
      calls.push(entry);
      return () => {
        calls = calls.filter((other) => other !== entry);
      };
    },
  };
  const pass = async (ms: number) => {
    const end = now + ms;
    for (;;) {
      const [next] = calls.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at);
      if (!next) break;
      calls = calls.filter((other) => other !== next);
      now = Math.max(now, next.at);
      next.call();
      await settled();
    }
    now = end;
    await settled();
  };
  return { ...clock, pass };
}

async function settled(): Promise<void> {
  for (let turn = 0; turn < 10; turn += 1) await Promise.resolve();
}

interface Trial {
  readonly clock: ReturnType<typeof heldClock>;
  readonly runs: ReturnType<typeof createLatestRuns>;
  /** When each run began, and whether it was current when it ended. */
  readonly log: { at: number; wasCurrent: boolean }[];
  readonly faults: unknown[];
}

function trial(runMs: number | readonly number[], waitMs = 0): Trial {
  const clock = heldClock();
  const log: Trial["log"] = [];
  const faults: unknown[] = [];
  const runs = createLatestRuns({
    clock,
    waitMs,
    run: async (_key, isCurrent) => {
      const at = clock.now();
      const takesMs = typeof runMs === "number" ? runMs : (runMs[log.length] ?? 0);
      if (takesMs > 0) await new Promise<void>((resolve) => clock.after(takesMs, resolve));
      log.push({ at, wasCurrent: isCurrent() });
    },
    onFault: (error) => faults.push(error),
  });
  return { clock, runs, log, faults };
}

describe("runs for the latest state", () => {
  it("are one for many requests at once, after the wait", async () => {
    const { clock, runs, log } = trial(0, 16);
    for (let request = 0; request < 5; request += 1) runs.request("a");
    await clock.pass(100);
    expect(log).toEqual([{ at: 16, wasCurrent: true }]);
  });

  it("are one more after a request that came while one ran, which is out of date then", async () => {
    const { clock, runs, log } = trial(50);
    runs.request("a");
    await clock.pass(10);
    for (let request = 0; request < 5; request += 1) runs.request("a");
    await clock.pass(500);
    expect(log).toEqual([
      { at: 0, wasCurrent: false },
      { at: 50, wasCurrent: true },
    ]);
  });

  it("wait for a pause where they are slow, but not for ever", async () => {
    const { clock, runs, log } = trial(100);
    runs.request("a");
    await clock.pass(100);
    for (let key = 0; key < 40; key += 1) {
      runs.request("a");
      await clock.pass(60);
    }
    await clock.pass(1000);
    // Two tell that they are slow. Then at 1700 after the longest wait, and the last after the pause that follows the
    // last key at 2440.
    expect(log.map(({ at }) => at)).toEqual([0, 100, 1700, 2640]);
    expect(log.at(-1)?.wasCurrent).toBe(true);
  });

  it("do not wait after one that was slow by chance", async () => {
    const { clock, runs, log } = trial([5, 100, 5, 5]);
    for (let key = 0; key < 4; key += 1) {
      runs.request("a");
      await clock.pass(150);
    }
    expect(log.map(({ at }) => at)).toEqual([0, 150, 300, 450]);
  });

  it("know nothing of each other's keys", async () => {
    const { clock, runs, log } = trial(50);
    runs.request("a");
    runs.request("b");
    await clock.pass(100);
    expect(log.length).toBe(2);
  });

  it("do not start once they are taken back, and are out of date if they have", async () => {
    const { clock, runs, log } = trial(50);
    runs.request("a");
    await clock.pass(10);
    runs.request("b");
    runs.dispose();
    expect(runs.isBusy("a")).toBe(false);
    await clock.pass(500);
    expect(log).toEqual([{ at: 0, wasCurrent: false }]);
  });

  it("tell their faults and go on", async () => {
    const clock = heldClock();
    const faults: unknown[] = [];
    let count = 0;
    const runs = createLatestRuns({
      clock,
      waitMs: 0,
      run: async () => {
        count += 1;
        throw new Error("broken");
      },
      onFault: (error) => faults.push(error),
    });
    runs.request("a");
    await clock.pass(1);
    runs.request("a");
    await clock.pass(1);
    expect([count, faults.length]).toEqual([2, 2]);
  });
});

import { describe, expect, it } from "vitest";
import { createJobRunner, type JobListener } from "../../extension/studies/page/job-runner.ts";
import type { WorkerListener } from "../../extension/studies/page/worker-handle.ts";
import type { CompareInput, CompareResult } from "../../extension/studies/worker/compare-job.ts";
import { isJobRequest, type JobRequest, type WorkerMessage } from "../../extension/studies/worker/job.ts";

/** A worker whose answers the test gives. */
class StandIn {
  readonly asked: JobRequest[] = [];
  isTerminated = false;
  readonly listener: WorkerListener;

  constructor(listener: WorkerListener) {
    this.listener = listener;
  }

  answer(type: "result" | "refused" | "fault", id = this.asked.at(-1)?.id ?? 0): void {
    const message = { type, id, result: `result ${id}`, reason: `reason ${id}` } as unknown as WorkerMessage;
    // A terminated worker has no more to say.
    if (!this.isTerminated) this.listener.message(message);
  }
}

function runnerOf() {
  const workers: StandIn[] = [];
  const faults: string[] = [];
  const told: string[] = [];
  const runner = createJobRunner(
    async (listener) => {
      const worker = new StandIn(listener);
      workers.push(worker);
      return {
        post: (message) => {
          if (isJobRequest(message)) worker.asked.push(message);
        },
        terminate: () => {
          worker.isTerminated = true;
        },
      };
    },
    (reason) => faults.push(reason),
  );
  const listener = (name: string): JobListener<CompareResult> => ({
    result: (result) => told.push(`${name}: ${String(result)}`),
    refused: (reason) => told.push(`${name} refused: ${reason}`),
    fault: () => told.push(`${name} fault`),
    progress: ({ done, total }) => told.push(`${name} ${done}/${total}`),
  });
  const alive = () => workers.filter(({ isTerminated }) => !isTerminated).length;
  return { runner, workers, faults, told, listener, alive };
}

const INPUT: CompareInput = { files: [], settings: {}, reference: null, hidden: [] };
const started = () => new Promise((resolve) => setTimeout(resolve, 0));

describe("jobs in a worker", () => {
  it("start no worker before the first, and keep it for the next", async () => {
    const { runner, workers, told, listener } = runnerOf();
    expect(workers).toHaveLength(0);
    runner.run("compare", INPUT, listener("a"));
    await started();
    workers[0]?.answer("result");
    expect(runner.isRunning()).toBe(false);
    runner.run("compare", INPUT, listener("b"));
    workers[0]?.answer("refused");
    expect(told).toEqual(["a: result 1", "b refused: reason 2"]);
    expect(workers).toHaveLength(1);
  });

  it("give up what runs when another is to run now: its worker is terminated", async () => {
    const { runner, workers, told, listener, alive } = runnerOf();
    runner.run("compare", INPUT, listener("a"));
    await started();
    runner.run("compare", INPUT, listener("b"));
    await started();
    expect(workers[0]?.isTerminated).toBe(true);
    workers[0]?.listener.message({ type: "result", id: 1, result: "late" });
    workers[1]?.answer("result");
    expect(told).toEqual(["b: result 2"]);
    expect(alive()).toBe(1);
  });

  it("run only the last of those that wait", async () => {
    const { runner, workers, told, listener } = runnerOf();
    runner.runNext("compare", INPUT, listener("a"));
    await started();
    for (const name of ["b", "c", "d"]) runner.runNext("compare", INPUT, listener(name));
    workers[0]?.answer("result");
    workers[0]?.answer("result");
    expect(told).toEqual(["a: result 1", "d: result 4"]);
    expect(workers).toHaveLength(1);
    expect(runner.isRunning()).toBe(false);
  });

  it("tell how far they are", async () => {
    const { runner, workers, told, listener } = runnerOf();
    runner.run("compare", INPUT, listener("a"));
    await started();
    workers[0]?.listener.message({ type: "progress", id: 1, progress: { done: 2, total: 5 } });
    workers[0]?.listener.message({ type: "progress", id: 1, progress: { done: "x", total: 5 } });
    expect(told).toEqual(["a 2/5"]);
  });

  it("leave no worker when they are given up, even while it starts", async () => {
    const { runner, told, listener, alive } = runnerOf();
    runner.run("compare", INPUT, listener("a"));
    runner.cancel();
    await started();
    expect(alive()).toBe(0);
    runner.run("compare", INPUT, listener("b"));
    await started();
    runner.dispose();
    expect(alive()).toBe(0);
    expect(told).toEqual([]);
  });

  it("leave one worker where two were started at once", async () => {
    const { runner, listener, alive } = runnerOf();
    for (const name of ["a", "b", "c"]) runner.run("compare", INPUT, listener(name));
    await started();
    expect(alive()).toBe(1);
  });

  it("say that there was a fault, log it, and go on", async () => {
    const { runner, workers, told, faults, listener } = runnerOf();
    runner.run("compare", INPUT, listener("a"));
    await started();
    workers[0]?.answer("fault");
    runner.run("compare", INPUT, listener("b"));
    workers[0]?.listener.fault("broke down");
    runner.run("compare", INPUT, listener("c"));
    await started();
    workers[1]?.answer("result");
    expect(told).toEqual(["a fault", "b fault", "c: result 3"]);
    expect(faults).toEqual(["reason 1", "broke down"]);
    expect(workers[0]?.isTerminated).toBe(true);
  });

  it("say that there was a fault where no worker starts", async () => {
    const told: string[] = [];
    const faults: string[] = [];
    const runner = createJobRunner(
      () => Promise.reject(new Error("no script")),
      (reason) => faults.push(reason),
    );
    runner.run("compare", INPUT, { result: () => {}, refused: () => {}, fault: () => told.push("fault") });
    await started();
    expect(told).toEqual(["fault"]);
    expect(faults[0]).toContain("no script");
  });
});

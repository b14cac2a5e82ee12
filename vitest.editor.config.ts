import { defineConfig } from "vitest/config";

/** The tests in the real editor: one at a time, each with its own browser, and slow to start. */
export default defineConfig({
  test: {
    include: ["test/editor/**/*.test.ts"],
    globalSetup: ["test/editor/build-first.ts"],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // What is waited for comes when it comes: a second is short where others work too.
    expect: { poll: { timeout: 20_000 } },
    // A browser on a busy machine may miss a wait once; a fault misses it each time.
    retry: 1,
  },
});

import { defineConfig } from "vitest/config";

/** It stands in for a package, which nothing else may see. */
const ALONE = ["test/language/units-closed.test.ts"];

export default defineConfig({
  test: {
    testTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: "together",
          include: ["test/**/*.test.ts"],
          exclude: ["test/editor/**", "node_modules/**", ...ALONE],
          // Files share what they have loaded: loading the core again for each took longer than many of them.
          isolate: false,
        },
      },
      { extends: true, test: { name: "alone", include: ALONE } },
    ],
  },
});

/** `npx tsx scripts/build.ts [--watch] [--readable] [--quiet]`: builds everything that is shipped or served into `dist/`. */
import { resolve } from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import type { BuildFailure } from "esbuild";
import { context, formatMessages } from "esbuild";
import type { BuildResult } from "./build-bundles.ts";
import { buildBundles, finishBundle } from "./build-bundles.ts";
import { BUNDLES, esbuildOptions, hasEntry } from "./bundles.ts";

const ROOT = resolve(import.meta.dirname, "..");

const { values } = parseArgs({
  options: {
    watch: { type: "boolean", default: false },
    readable: { type: "boolean", default: false },
    quiet: { type: "boolean", default: false },
  },
});

try {
  const result = await buildBundles(ROOT, { minify: !values.readable });
  process.stdout.write(values.quiet ? describeGaps(result) : describeSizes(result) + describeGaps(result));
  if (values.watch) await watch(!values.readable);
  else if (result.missing.some(({ optional }) => !optional)) process.exitCode = 1;
} catch (error) {
  if (!isBuildFailure(error)) throw error;
  process.stderr.write((await formatMessages(error.errors, { kind: "error" })).join("\n"));
  process.exitCode = 1;
}

function describeSizes({ built }: BuildResult): string {
  const rows = built.map(({ file, sizeBytes, gzippedBytes }) => {
    return `${file.padEnd(36)}${kilobytes(sizeBytes)}${kilobytes(gzippedBytes)} gzipped\n`;
  });
  return rows.join("");
}

function describeGaps({ missing }: BuildResult): string {
  return missing.map(({ entry, out }) => `${out} is not built: ${entry} does not exist.\n`).join("");
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`.padStart(12);
}

/** Builds again whatever a change concerns, until the process is stopped. */
async function watch(minify: boolean): Promise<void> {
  for (const bundle of BUNDLES.filter((one) => hasEntry(ROOT, one))) {
    const running = await context({ ...esbuildOptions(ROOT, bundle, minify), logLevel: "warning" });
    await running.watch();
    await finishBundle(ROOT, bundle);
  }
  process.stdout.write("Watching for changes; Ctrl+C stops.\n");
}

function isBuildFailure(error: unknown): error is BuildFailure {
  return error instanceof Error && "errors" in error && Array.isArray(error.errors);
}

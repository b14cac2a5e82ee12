import { chmod, copyFile, readFile } from "node:fs/promises";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import type { Bundle, BundleName } from "./bundles.ts";
import { BUNDLES, esbuildOptions, hasEntry } from "./bundles.ts";

export interface BuiltFile {
  /** Path from the root. */
  readonly file: string;
  readonly sizeBytes: number;
  readonly gzippedBytes: number;
}

export interface BuildResult {
  readonly built: readonly BuiltFile[];
  /** Bundles whose entry does not exist. */
  readonly missing: readonly Bundle[];
}

export interface BuildChoice {
  /** The bundles to build; all by default. */
  readonly only?: readonly BundleName[];
  /** True by default. */
  readonly minify?: boolean;
}

/** Builds bundles into `dist/` below the root. Throws esbuild's error, which lists the faults, where one fails. */
export async function buildBundles(root: string, choice: BuildChoice = {}): Promise<BuildResult> {
  const wanted = BUNDLES.filter(({ name }) => choice.only?.includes(name) ?? true);
  const present = wanted.filter((bundle) => hasEntry(root, bundle));
  const files: string[] = [];
  for (const bundle of present) files.push(...(await buildOne(root, bundle, choice.minify ?? true)));
  return {
    built: await Promise.all(files.map((file) => measure(root, file))),
    missing: wanted.filter((bundle) => !present.includes(bundle)),
  };
}

/** Builds one bundle and gives the paths of its files from the root. */
async function buildOne(root: string, bundle: Bundle, minify: boolean): Promise<string[]> {
  const { metafile } = await build({ ...esbuildOptions(root, bundle, minify), metafile: true });
  await finishBundle(root, bundle);
  return [...Object.keys(metafile.outputs), ...bundle.copies.map(([, to]) => to)].sort();
}

/** What esbuild does not do: copies the files that go along, and makes a program executable. */
export async function finishBundle(root: string, bundle: Bundle): Promise<void> {
  for (const [from, to] of bundle.copies) await copyFile(join(root, from), join(root, to));
  if (bundle.executable) await chmod(join(root, bundle.out), 0o755);
}

async function measure(root: string, file: string): Promise<BuiltFile> {
  const bytes = await readFile(join(root, file));
  return { file, sizeBytes: bytes.length, gzippedBytes: gzipSync(bytes).length };
}

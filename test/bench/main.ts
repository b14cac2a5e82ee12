/**
 * Runs the benches: `npx tsx test/bench/main.ts [area…]`. Every other file of this folder is an area of that name and
 * exports `cases`.
 */
import { readdirSync } from "node:fs";
import { basename, resolve } from "node:path";
import { argv, exit } from "node:process";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { type BenchCase, runBench } from "./harness.ts";

const NOT_AREAS = ["harness.ts", "main.ts"];

function areas(): string[] {
  const files = readdirSync(import.meta.dirname).filter(
    (file) => file.endsWith(".ts") && !NOT_AREAS.includes(file),
  );
  return files.map((file) => basename(file, ".ts")).sort();
}

/** Bundled as what is shipped is: run file by file, each function would pay for keeping its name. */
async function casesOf(area: string): Promise<readonly BenchCase[]> {
  const outfile = resolve(import.meta.dirname, `../../node_modules/.cache/bench/${area}.mjs`);
  const entry = resolve(import.meta.dirname, `${area}.ts`);
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    packages: "external",
    define: { "import.meta.dirname": JSON.stringify(import.meta.dirname) },
    logLevel: "error",
  });
  const { cases }: { cases?: readonly BenchCase[] } = await import(pathToFileURL(outfile).href);
  if (!cases) throw new Error(`${area}.ts exports no cases`);
  return cases;
}

const known = areas();
const asked = argv.slice(2);
const unknown = asked.filter((area) => !known.includes(area));
if (unknown.length > 0) {
  console.error(`no such area: ${unknown.join(", ")}; there are ${known.join(", ")}`);
  exit(2);
}

let met = true;
for (const area of asked.length > 0 ? asked : known) met = (await runBench(await casesOf(area))) && met;
exit(met ? 0 : 1);

/** `npx tsx scripts/check-package.ts`: fails where the packaged extension is larger than it may be, or is not there. */
import { stat } from "node:fs/promises";
import { resolve } from "node:path";
import process from "node:process";

const ROOT = resolve(import.meta.dirname, "..");

/** Most bytes of each file. What the editor loads is read at each start; the whole is fetched over slow networks. */
const MOST_BYTES: readonly (readonly [file: string, bytes: number])[] = [
  ["barwright.vsix", 700_000],
  ["dist/extension.cjs", 450_000],
  ["dist/browser.js", 450_000],
];

for (const [file, most] of MOST_BYTES) {
  const { size } = await stat(resolve(ROOT, file));
  const verdict = size <= most ? "" : "  TOO LARGE";
  process.stdout.write(`${file.padEnd(20)}${kilobytes(size)} of at most${kilobytes(most)}${verdict}\n`);
  if (size > most) process.exitCode = 1;
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`.padStart(11);
}

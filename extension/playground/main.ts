/** The entry of `dist/playground.js`, which `npm start` runs: Barwright in a real editor in the browser. */
import { resolve } from "node:path";
import process from "node:process";
import { openBrowser } from "./open-browser.ts";
import { run } from "./run.ts";

const outcome = await run(process.argv.slice(2), {
  productRoot: resolve(import.meta.dirname, ".."),
  print: (text) => process.stdout.write(text),
  printError: (text) => process.stderr.write(text),
  openBrowser,
});

if (outcome.playground === null) {
  process.exitCode = outcome.exitCode;
} else {
  const { playground } = outcome;
  const stop = () => {
    process.stdout.write("\nStopped.\n");
    void playground.close();
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

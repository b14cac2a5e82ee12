/**
 * `npm run fuzz [-- SECONDS [SEED]]`: sends texts through the whole tool for so long (60 s) and prints each fault once
 * with the text that shows it, shrunk. What it finds belongs into `test/fuzz/corpus/`, which every test run goes through.
 */
import { argv, exit } from "node:process";
import fc from "fast-check";
import { faultsOf } from "./faults-of.ts";
import { breakingText } from "./texts.ts";

const [seconds = 60, asked] = argv.slice(2).map(Number);
const seed = asked ?? Date.now() % 2 ** 31;
console.log(`seed ${seed}, ${seconds} s`);

const end = performance.now() + seconds * 1000;
let texts = 0;
let round = 0;
let isFaulty = false;
while (performance.now() < end) {
  const found = fc.check(
    fc.property(breakingText, (text) => {
      texts += 1;
      const faults = faultsOf(text);
      if (faults.length > 0) throw new Error(faults.join("\n"));
    }),
    {
      seed: seed + round,
      numRuns: 200,
      interruptAfterTimeLimit: end - performance.now(),
      endOnFailure: false,
    },
  );
  round += 1;
  if (!found.failed || found.counterexample === null) continue;
  isFaulty = true;
  console.log(
    `\n${found.errorInstance instanceof Error ? found.errorInstance.message : String(found.errorInstance)}`,
  );
  console.log(JSON.stringify(found.counterexample[0]));
}
console.log(`${texts} texts`);
exit(isFaulty ? 1 : 0);

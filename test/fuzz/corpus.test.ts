import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { faultsOf } from "./faults-of.ts";
import { breakingText } from "./texts.ts";

const CORPUS = join(import.meta.dirname, "corpus");
const FOUND = readdirSync(CORPUS).filter((name) => name.endsWith(".bar"));

describe("texts that once broke something", () => {
  it.each(FOUND)("%s breaks nothing any more", (name) => {
    expect(faultsOf(readFileSync(join(CORPUS, name), "utf8"))).toEqual([]);
  });
});

describe("texts that are to break something", () => {
  it("break nothing", () => {
    fc.assert(
      fc.property(breakingText, (text) => {
        expect(faultsOf(text)).toEqual([]);
      }),
      { seed: 7, numRuns: 150 },
    );
  });
});

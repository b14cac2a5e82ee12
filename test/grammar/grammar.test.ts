import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import process from "node:process";
import { describe, expect, it } from "vitest";
import { wordsOf as wordsOfBlock } from "../../geometry/language/blocks/block-table.ts";
import { BLOCKS } from "../../geometry/language/blocks/blocks.ts";
import {
  BLOCK_WORDS,
  CONSTANT_NAMES,
  FUNCTION_NAMES,
  OPTION_WORDS,
  STATEMENT_WORDS,
  STEP_WORDS,
  UNIT_NAMES,
} from "../../geometry/language/vocabulary.ts";

const ROOT = resolve(import.meta.dirname, "../..");
const GRAMMAR = join(ROOT, "extension/language/bar.tmLanguage.json");
const TESTER = join(ROOT, "node_modules/vscode-tmgrammar-test/dist/unit.js");

interface Rule {
  readonly match?: string;
  readonly begin?: string;
}

function wordsOf(rule: string): string[] {
  const grammar = JSON.parse(readFileSync(GRAMMAR, "utf8")) as { repository: Record<string, Rule> };
  const pattern = grammar.repository[rule]?.match ?? grammar.repository[rule]?.begin ?? "";
  const words = /\(([a-zA-Z0-9_|]+)\)/.exec(pattern)?.[1];
  return words?.split("|") ?? [];
}

describe("the grammar for colours", () => {
  it("gives each part of the case files its scope", () => {
    const cases = join(import.meta.dirname, "cases");
    const files = readdirSync(cases).map((name) => join(cases, name));
    expect(files.length).toBeGreaterThan(1);
    const run = () => execFileSync(process.execPath, [TESTER, "-g", GRAMMAR, ...files], { encoding: "utf8" });
    expect(run).not.toThrow();
  });

  it("knows the words of the language, and no others", () => {
    expect(wordsOf("statement")).toEqual([...STATEMENT_WORDS]);
    expect(wordsOf("step")).toEqual([...STEP_WORDS]);
    expect(wordsOf("option")).toEqual([...OPTION_WORDS]);
    expect(wordsOf("block")).toEqual([...BLOCK_WORDS]);
    const ofBlocks = new Set(BLOCK_WORDS.flatMap((word) => [...wordsOfBlock(BLOCKS[word])]));
    const known: ReadonlySet<string> = new Set(OPTION_WORDS);
    expect(wordsOf("setting")).toEqual([...ofBlocks].filter((word) => !known.has(word)).sort());
    expect(wordsOf("function")).toEqual([...FUNCTION_NAMES]);
    expect(wordsOf("unit")).toEqual([...UNIT_NAMES]);
    expect(CONSTANT_NAMES).toEqual(["pi"]);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { format } from "../../geometry/language/format.ts";
import { parse } from "../../geometry/language/parse.ts";
import type { TextRange } from "../../geometry/language/text.ts";
import { tokenize } from "../../geometry/language/tokenize.ts";
import { childrenOf, nodeAt, type TreeNode } from "../../geometry/language/tree-walk.ts";
import { printTree } from "./print-tree.ts";
import { GOOD_FILE, roughText, wordText } from "./syntax-texts.ts";

const RUNS = { seed: 22, numRuns: 600 };

function isInside(inner: TextRange, outer: TextRange): boolean {
  return outer.start <= inner.start && inner.start <= inner.end && inner.end <= outer.end;
}

/** Tokens without blanks and line ends: what formatting must not touch. */
function wordsOf(text: string): readonly string[] {
  return tokenize(text)
    .filter(({ kind }) => kind !== "space" && kind !== "newline")
    .map((token) => token.text);
}

describe("tokenize", () => {
  it("loses nothing", () => {
    fc.assert(
      fc.property(roughText, (text) => {
        const tokens = tokenize(text);
        expect(tokens.map((token) => token.text).join("")).toBe(text);
        const ends = [0, ...tokens.map((token) => token.end)];
        expect(tokens.map((token) => token.start)).toEqual(ends.slice(0, -1));
        expect(tokens.every((token) => token.end - token.start === token.text.length)).toBe(true);
        expect(tokens.every((token) => token.text !== "")).toBe(true);
      }),
      RUNS,
    );
  });
});

describe("parse", () => {
  it("reads the good file without a problem", () => {
    expect(parse(GOOD_FILE).problems).toEqual([]);
    expect(printTree(parse(GOOD_FILE).tree).join("\n")).not.toContain("?");
  });

  it("never throws; ranges lie in the text and in their parents", () => {
    fc.assert(
      fc.property(roughText, (text) => {
        const { tree } = parse(text);
        const check = (entry: TreeNode, outer: TextRange): void => {
          expect(isInside(entry.node.range, outer), `${entry.type} in its parent`).toBe(true);
          let before = entry.node.range.start;
          for (const child of childrenOf(entry)) {
            expect(child.node.range.start, `${child.type} behind the one before`).toBeGreaterThanOrEqual(
              before,
            );
            check(child, entry.node.range);
            before = child.node.range.start;
          }
        };
        let before = 0;
        for (const node of tree.statements) {
          expect(node.range.start).toBeGreaterThanOrEqual(before);
          check({ type: "statement", node }, { start: 0, end: text.length });
          before = node.range.end;
        }
      }),
      RUNS,
    );
  });

  it("gives problems in order, with ranges and fixes that can be applied", () => {
    fc.assert(
      fc.property(roughText, (text) => {
        let before = 0;
        for (const { range, fixes, message, severity } of parse(text).problems) {
          expect(severity).toBe("error");
          expect(message).toMatch(/[.?]$/);
          expect(range.start).toBeGreaterThanOrEqual(before);
          expect(isInside(range, { start: 0, end: text.length })).toBe(true);
          for (const fix of fixes) {
            expect(applyEdits(text, fix.edits)).not.toBe(text);
          }
          before = range.start;
        }
      }),
      RUNS,
    );
  });

  it("reads every line around a bad one", () => {
    const lines = GOOD_FILE.split("\n");
    const { statements } = parse(GOOD_FILE).tree;
    // Between statements: inside blocks and parentheses a bad line may cost the step or statement it stands in.
    const isBetween = (offset: number): boolean =>
      statements.every(({ range }) => offset <= range.start || range.end <= offset);
    const places = [...lines.keys()].filter((i) => isBetween(lines.slice(0, i).join("\n").length + 1));
    const expected = printTree(parse(GOOD_FILE).tree);
    const bad = [
      "colour red",
      "12 mm",
      "= 3",
      "§§",
      "frobnicate (1 mm, 2 mm)",
      ")",
      "mm",
      "G40 ^",
      "wiggle a b c",
    ];
    for (const place of places) {
      for (const line of bad) {
        const text = [...lines.slice(0, place), line, ...lines.slice(place)].join("\n");
        expect(printTree(parse(text).tree), `${line} before line ${place + 1}`).toEqual(expected);
        expect(parse(text).problems.length, `${line} before line ${place + 1}`).toBe(1);
      }
    }
  });

  it("takes one word left out or doubled as one mistake", () => {
    for (const { kind, start, end } of tokenize(GOOD_FILE)) {
      // Without the parenthesis that holds several lines together each of them is a line of its own.
      const holdsLines = GOOD_FILE.startsWith("(0 mm,\n", start);
      if (kind === "space" || kind === "newline" || kind === "comment" || holdsLines) {
        continue;
      }
      const word = GOOD_FILE.slice(start, end);
      const without = GOOD_FILE.slice(0, start) + GOOD_FILE.slice(end);
      const doubled = `${GOOD_FILE.slice(0, end)} ${GOOD_FILE.slice(start)}`;
      expect(
        messages(without).length,
        `without '${word}' at ${start}: ${messages(without).join(" ")}`,
      ).toBeLessThan(2);
      expect(
        messages(doubled).length,
        `'${word}' twice at ${start}: ${messages(doubled).join(" ")}`,
      ).toBeLessThan(2);
    }
  });

  it("finds a path of nodes at every offset", () => {
    fc.assert(
      fc.property(wordText, fc.nat(), (text, place) => {
        const offset = place % (text.length + 1);
        for (const { node } of nodeAt(parse(text).tree, offset)) {
          expect(isInside({ start: offset, end: offset }, node.range)).toBe(true);
        }
      }),
      RUNS,
    );
  });
});

function messages(text: string): readonly string[] {
  return parse(text).problems.map((problem) => problem.message);
}

describe("format", () => {
  it("leaves the good file as it is", () => {
    expect(format(GOOD_FILE)).toBe(GOOD_FILE);
  });

  it("twice is once", () => {
    fc.assert(
      fc.property(roughText, (text) => {
        const once = format(text);
        expect(format(once)).toBe(once);
      }),
      RUNS,
    );
  });

  it("touches nothing but blanks and line ends, and keeps the meaning", () => {
    fc.assert(
      fc.property(roughText, (text) => {
        const formatted = format(text);
        expect(wordsOf(formatted)).toEqual(wordsOf(text));
        expect(printTree(parse(formatted).tree)).toEqual(printTree(parse(text).tree));
        expect(messages(formatted).length).toBe(messages(text).length);
      }),
      RUNS,
    );
  });

  it("ends with one line end, and has no blanks at line ends and no two blank lines in a row", () => {
    fc.assert(
      fc.property(roughText, (text) => {
        const formatted = format(text).replace(/^\ufeff/, "");
        expect(formatted === "" || /[^\n]\n$/.test(formatted)).toBe(true);
        expect(formatted).not.toMatch(/\r|\n\n\n|^\n/);
      }),
      RUNS,
    );
  });
});

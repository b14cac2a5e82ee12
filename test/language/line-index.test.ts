import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createLineIndex } from "../../geometry/language/line-index.ts";

const SEED = { seed: 20 };
const lineText = fc
  .array(fc.constantFrom("a", "é", "\ud83d\ude00", "\r", "\n", "\r\n"))
  .map((parts) => parts.join(""));

/** The slow way: split, then count. */
function slowPosition(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  // A line end that the offset cuts in two has not ended its line yet.
  const isCut = text.charAt(offset - 1) === "\r" && text.charAt(offset) === "\n";
  const lines = (isCut ? before.slice(0, -1) : before).split(/\r\n|\r|\n/);
  return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + (isCut ? 2 : 1) };
}

describe("createLineIndex", () => {
  it("counts LF, CRLF and CR as line ends", () => {
    const index = createLineIndex("a\nb\r\nc\rd");
    expect(index.lineCount).toBe(4);
    expect([0, 2, 5, 7].map((offset) => index.position(offset))).toEqual([
      { line: 1, column: 1 },
      { line: 2, column: 1 },
      { line: 3, column: 1 },
      { line: 4, column: 1 },
    ]);
  });

  it("takes what lies outside as the nearest place", () => {
    const index = createLineIndex("ab\r\ncd");
    expect(index.position(-5)).toEqual({ line: 1, column: 1 });
    expect(index.position(99)).toEqual({ line: 2, column: 3 });
    expect(index.position(Number.NaN)).toEqual({ line: 1, column: 1 });
    expect(index.offset(0, 1)).toBe(0);
    expect(index.offset(1, 99)).toBe(2);
    expect(index.offset(1, -3)).toBe(0);
    expect(index.offset(2, 3)).toBe(6);
    expect(index.offset(3, 1)).toBe(6);
    expect(createLineIndex("").position(0)).toEqual({ line: 1, column: 1 });
  });

  it("agrees with splitting the text", () => {
    fc.assert(
      fc.property(lineText, fc.nat(60), (text, place) => {
        const offset = Math.min(place, text.length);
        expect(createLineIndex(text).position(offset)).toEqual(slowPosition(text, offset));
      }),
      SEED,
    );
  });

  it("finds its way back from every offset that is not inside or behind a line end", () => {
    fc.assert(
      fc.property(lineText, (text) => {
        const index = createLineIndex(text);
        for (let offset = 0; offset <= text.length; offset += 1) {
          const { line, column } = index.position(offset);
          const isInside = text.charAt(offset - 1) === "\r" && text.charAt(offset) === "\n";
          expect(index.offset(line, column)).toBe(isInside ? offset - 1 : offset);
        }
      }),
      SEED,
    );
  });
});

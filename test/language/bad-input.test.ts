/** Input that nobody writes but somebody opens. */
import { describe, expect, it } from "vitest";
import { format } from "../../geometry/language/format.ts";
import { MOST_PROBLEMS } from "../../geometry/language/parse/problem-list.ts";
import { parse } from "../../geometry/language/parse.ts";
import { tokenize } from "../../geometry/language/tokenize.ts";
import { visitExpressions } from "../../geometry/language/tree-walk.ts";
import { GOOD_FILE } from "./syntax-texts.ts";

const FIVE_MEGABYTES = 5_000_000;

function fill(piece: string, length = 500_000): string {
  return piece.repeat(Math.ceil(length / piece.length));
}

/** Processor time, which other programs on the machine do not lengthen as they do the time of day. */
function secondsOf(run: () => void): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** Characters in an order that looks random and is the same each time. */
function noise(length: number, last: number): string {
  let state = 1;
  return Array.from({ length }, () => {
    state = (state * 48271) % 2147483647;
    return String.fromCharCode(32 + (state % (last - 31)));
  }).join("");
}

/**
 * On a quiet machine five megabytes take well under a second in most cases. The limit leaves room for a slow and busy one
 * and still catches time that grows with the square of the length: that would be hours.
 */
const LIMIT_S = 20;

describe("five megabytes of noise", () => {
  it.each([
    ["on one line", () => noise(FIVE_MEGABYTES, 126)],
    ["on many lines", () => noise(FIVE_MEGABYTES, 126).replaceAll("e", "\n")],
    ["that is one parenthesis after the other", () => fill("(", FIVE_MEGABYTES)],
  ])("%s", (_, make) => {
    const text = make();
    expect(secondsOf(() => parse(text))).toBeLessThan(LIMIT_S);
  });
});

describe("a long text", () => {
  it.each([
    ["opening braces", () => fill("{")],
    ["curly quotes and braces", () => fill("„{")],
    ["quotes behind numbers", () => fill("1“")],
    ["minus signs", () => fill("-")],
    ["short words on lines", () => fill("lin\n")],
    ["steps that are not closed", () => `outline { ${fill("line (1 x ")}`],
    ["blocks that are not closed", () => fill('variant "a" {\n')],
    ["lets with reserved names", () => fill("let in = in\n")],
    ["one number", () => fill("7")],
    ["lines inside a parenthesis", () => `let a = (${fill("\n#\n")}`],
  ])("of %s takes linear time", (_, make) => {
    const text = make();
    expect(secondsOf(() => parse(text))).toBeLessThan(LIMIT_S);
    expect(parse(text.slice(0, 1000)).problems.length).toBeGreaterThan(0);
  });

  it("of good files is read whole", () => {
    const text = fill(GOOD_FILE);
    const { tree, problems } = parse(text);
    expect(problems).toEqual([]);
    expect(tree.statements.length).toBe(
      (text.length / GOOD_FILE.length) * parse(GOOD_FILE).tree.statements.length,
    );
  });

  it.each(["(", "{\n", "}\n", "# c\n", "a ", "let a=1+2 # c\n", "\n"])(
    "of %j is formatted in linear time",
    (piece) => {
      const text = fill(piece, 100_000);
      expect(secondsOf(() => format(text))).toBeLessThan(LIMIT_S);
    },
  );
});

describe("nesting", () => {
  it.each(["(", "-", "abs(", "2^", "(-", "max(1, "])("of 100,000 %s is refused with one problem", (piece) => {
    const text = `let a = ${piece.repeat(100_000)}\nbore 22 mm\n`;
    const { tree, problems } = parse(text);
    expect(problems.map((problem) => problem.code)).toEqual(["too-deep"]);
    expect(tree.statements.map((statement) => statement.kind)).toEqual(["let", "bore"]);
  });

  it("of 100,000 braces gives problems and nothing worse", () => {
    expect(parse("{".repeat(100_000)).problems.length).toBe(1);
    expect(parse("}".repeat(100_000)).problems.at(-1)?.code).toBe("too-many-problems");
    expect(format(`${"{\n".repeat(5_000)}${"}\n".repeat(5_000)}`).length).toBe(20_000);
  });

  it("as deep as it may be can be walked", () => {
    const levels = 66;
    const chain = "+1".repeat(900 / levels);
    const text = `let a = ${`(-abs(${"1"}${chain}+`.repeat(levels)}1${"))".repeat(levels)}`;
    expect(parse(text).problems).toEqual([]);
    let count = 0;
    visitExpressions(parse(text).tree, () => {
      count += 1;
    });
    expect(count).toBeGreaterThan(1_500);
  });

  it("of operators to the left is limited too, so that the tree can be walked", () => {
    expect(parse(`let a = 1${"+1".repeat(1000)}`).problems).toEqual([]);
    for (const sign of ["+", "*", "-", "/"]) {
      const text = `let a = 1${`${sign}1`.repeat(100_000)}`;
      expect(parse(text).problems.map((problem) => problem.code)).toEqual(["too-deep"]);
    }
  });
});

describe("too many problems", () => {
  const mistake = "colour red\n";

  it("are cut short, and the last one says so", () => {
    const text = `${mistake.repeat(MOST_PROBLEMS + 1)}bore 22 mm`;
    const { tree, problems } = parse(text);
    expect(problems.length).toBe(MOST_PROBLEMS + 1);
    const last = problems.at(-1);
    expect(last?.code).toBe("too-many-problems");
    expect(last?.range).toEqual({ start: mistake.length * MOST_PROBLEMS, end: text.length });
    expect(tree.statements.map((statement) => statement.kind)).toEqual(["bore"]);
  });

  it("are not said to be where all are listed", () => {
    const { problems } = parse(mistake.repeat(MOST_PROBLEMS));
    expect(problems.length).toBe(MOST_PROBLEMS);
    expect(problems.at(-1)?.code).toBe("unknown-word");
  });

  it("are the first ones of the text, whoever found them", () => {
    const { problems } = parse(`${"bore 22 mm §\n".repeat(300)}${"§\n".repeat(100)}${mistake.repeat(300)}`);
    expect(problems.length).toBe(MOST_PROBLEMS + 1);
    expect(problems.slice(0, 400).every((problem) => problem.code === "bad-character")).toBe(true);
    expect(problems.slice(400, 500).every((problem) => problem.code === "unknown-word")).toBe(true);
  });
});

describe("numbers", () => {
  it("at the edge of what can be computed are read, beyond it refused", () => {
    expect(parse("let a = 1e308").problems).toEqual([]);
    expect(parse("let a = 1.7976931348623157e308").problems).toEqual([]);
    expect(parse("let a = 5e-324").problems).toEqual([]);
    for (const text of ["1e309", "1e999", "1.8e308", `1${"0".repeat(400)}`, "1e-400"]) {
      expect(parse(`let a = ${text} mm`).problems.map((problem) => problem.code)).toEqual(["bad-number"]);
    }
  });
});

describe("characters", () => {
  it("NUL bytes are one problem a place and cost nothing else", () => {
    const { tree, problems } = parse("bore\0\0 22 mm\n\0\nthickness 3 mm");
    expect(problems.map(({ code, range }) => [code, range.start, range.end])).toEqual([
      ["bad-character", 4, 6],
      ["bad-character", 13, 14],
    ]);
    expect(tree.statements.map((statement) => statement.kind)).toEqual(["bore", "thickness"]);
  });

  it("a byte-order mark, CRLF and CR are as good as none and LF", () => {
    const { tree } = parse(GOOD_FILE);
    const kinds = tree.statements.map((statement) => statement.kind);
    for (const text of [
      `\ufeff${GOOD_FILE}`,
      GOOD_FILE.replaceAll("\n", "\r\n"),
      GOOD_FILE.replaceAll("\n", "\r"),
    ]) {
      expect(parse(text).problems).toEqual([]);
      expect(parse(text).tree.statements.map((statement) => statement.kind)).toEqual(kinds);
      expect(format(text).replace("\ufeff", "")).toBe(GOOD_FILE);
    }
  });

  it("halves of surrogate pairs stay where they are", () => {
    expect(tokenize("a\ud800b\udc00").map((token) => token.text)).toEqual(["a", "\ud800", "b", "\udc00"]);
    expect(parse("bore \ud800 22 mm").problems.map((problem) => problem.code)).toEqual(["bad-character"]);
  });
});

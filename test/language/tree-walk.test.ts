import { describe, expect, it } from "vitest";
import { parse } from "../../geometry/language/parse.ts";
import { nodeAt, type TreeNode, visitExpressions, visitTree } from "../../geometry/language/tree-walk.ts";
import { printExpression } from "./print-tree.ts";

/** The path of nodes at the mark `|`, which is taken out of the text. */
function pathAt(marked: string): string {
  const offset = marked.indexOf("|");
  const text = marked.replace("|", "");
  return nodeAt(parse(text).tree, offset)
    .map(
      (entry) =>
        `${nameOf(entry)} ${JSON.stringify(text.slice(entry.node.range.start, entry.node.range.end))}`,
    )
    .slice(1)
    .join(" > ");
}

function nameOf({ type, node }: TreeNode): string {
  return type === "expression" && "kind" in node ? node.kind : type;
}

describe("nodeAt", () => {
  it.each([
    ["bo|re 22 mm", ""],
    ["bore 2|2 mm", 'number "22 mm"'],
    ["bore 22 m|m", 'number "22 mm" > unit "mm" > unit-factor "mm"'],
    ["bore 22 mm|", 'number "22 mm" > unit "mm" > unit-factor "mm"'],
    ["let a|b = 3", 'name "ab"'],
    ["let a = b + c|", 'binary "b + c" > name "c"'],
    ["let a = |-c", 'unary "-c"'],
    ["let a = -|c", 'unary "-c" > name "c"'],
    ["let a = m|ax(1, 2)", 'call "max(1, 2)" > name "max"'],
    ["let a = (1|/4) in", 'group "(1/4) in" > binary "1/4" > number "1"'],
    ["let a = 3 from |1 to 5", 'number "1"'],
    ["hole (1 mm, |2 mm) diameter 3 mm", 'point "(1 mm, 2 mm)" > number "2 mm"'],
    ["outline repeat |2 { close }", 'symmetry "repeat 2" > number "2"'],
    ["outline mirror |x { close }", 'symmetry "mirror x"'],
    ["outline { cl|ose }", 'path "{ close }" > step "close"'],
    [
      "cutout { line (1 mm, 2 mm) round |d }",
      'path "{ line (1 mm, 2 mm) round d }" > step "line (1 mm, 2 mm) round d" > corner "round d" > name "d"',
    ],
    [
      "cutout { arc (1 mm, 2 mm) about (|x1, y1) turning left }",
      'path "{ arc (1 mm, 2 mm) about (x1, y1) turning left }" > step "arc (1 mm, 2 mm) about (x1, y1) turning left" > point "(x1, y1)" > name "x1"',
    ],
    ["require balance <= G4|0", 'grade "G40"'],
    ["require bi|te at 3 m/s >= 8 mm", 'name "bite"'],
    ['variant "a" { tail = 1|10 mm }', 'statement "tail = 110 mm" > number "110 mm"'],
    ["target round 5 mm offset |x1", 'name "x1"'],
  ])("%s", (marked, expected) => {
    expect(pathAt(marked)).toBe(expected);
  });

  it("is empty between statements", () => {
    expect(nodeAt(parse("bore 3 mm\n\n\nbore 4 mm").tree, 11)).toEqual([]);
    expect(nodeAt(parse("").tree, 0)).toEqual([]);
  });
});

describe("visitExpressions", () => {
  it("finds every expression in the order of the text, outer ones first", () => {
    const { tree } = parse(
      'let a = b + 1\noutline repeat n { from (r1 @ 2 deg) arc by (3, 4) radius 5 turning left round c1 }\nvariant "v" { a = (6) spin 7 rpm cw }',
    );
    const seen: string[] = [];
    visitExpressions(tree, (expression, statement) => {
      seen.push(`${statement.kind} ${printExpression(expression)}`);
    });
    expect(seen).toEqual([
      "let (b + 1)",
      "let b",
      "let 1",
      ...["n", "r1", "2deg", "3", "4", "5", "c1"].map((text) => `outline ${text}`),
      "override {6}",
      "override 6",
      "spin 7rpm",
    ]);
  });

  it("goes through a call with very many arguments", () => {
    const { tree } = parse(`let a = max(${"1,".repeat(200_000)}1)`);
    let count = 0;
    visitExpressions(tree, () => {
      count += 1;
    });
    expect(count).toBe(200_002);
  });
});

describe("visitTree", () => {
  it("passes every kind of node", () => {
    const { tree } = parse(
      "outline mirror x { line (1 mm, 2 mm) round 3 mm }\nrequire balance <= G40\nlet a = 2 mm",
    );
    const types = new Set<string>();
    visitTree(tree, ({ type }) => types.add(type));
    expect([...types].sort()).toEqual(
      [
        "corner",
        "expression",
        "grade",
        "name",
        "path",
        "point",
        "statement",
        "step",
        "symmetry",
        "unit",
        "unit-factor",
      ].sort(),
    );
  });
});

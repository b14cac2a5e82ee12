import type { TextRange } from "../text.ts";
import type { Expression, HoleRingStatement, HoleStatement, SlotStatement } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { expectWordBefore, takeOption } from "./expect-word.ts";
import { parseExpression } from "./parse-expression.ts";
import { parsePoint } from "./parse-point.ts";
import { expectTo } from "./parse-setting.ts";

/** Reads `P diameter D` or `ring N at radius R diameter D [from ANGLE]`. */
export function parseHole(cursor: Cursor, keyword: TextRange): HoleStatement | HoleRingStatement {
  if (takeOption(cursor, ["ring"]) !== null) {
    return parseRing(cursor, keyword);
  }
  const at = parsePoint(cursor);
  const diameter = parseDiameter(cursor);
  return { kind: "hole", keyword, at, diameter, range: cursor.rangeFrom(keyword.start) };
}

function parseRing(cursor: Cursor, keyword: TextRange): HoleRingStatement {
  const count = parseExpression(cursor, "a count such as 4");
  expectWordBefore(cursor, "at", "where the ring runs: at radius 40 mm", {}, () => cursor.atWord("radius"));
  expectWordBefore(cursor, "radius", "the ring's radius: radius 40 mm");
  const radius = parseExpression(cursor, "a radius such as 40 mm");
  const diameter = parseDiameter(cursor);
  const startAngle =
    takeOption(cursor, ["from"]) === null ? null : parseExpression(cursor, "an angle such as 45 deg");
  return {
    kind: "hole-ring",
    keyword,
    count,
    radius,
    diameter,
    startAngle,
    range: cursor.rangeFrom(keyword.start),
  };
}

function parseDiameter(cursor: Cursor): Expression | null {
  const aliases = { dia: "diameter", diam: "diameter" } as const;
  expectWordBefore(cursor, "diameter", "the hole's size: diameter 6.5 mm", aliases);
  return parseExpression(cursor, "a diameter such as 6.5 mm");
}

/** Reads `P to Q width W`. */
export function parseSlot(cursor: Cursor, keyword: TextRange): SlotStatement {
  const from = parsePoint(cursor);
  const to = expectTo(cursor, "to (-48 mm, 0 mm)") ? parsePoint(cursor) : null;
  expectWordBefore(cursor, "width", "the slot's width: width 8 mm");
  const width = parseExpression(cursor, "a width such as 8 mm");
  return { kind: "slot", keyword, from, to, width, range: cursor.rangeFrom(keyword.start) };
}

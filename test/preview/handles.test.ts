import { describe, expect, it } from "vitest";
import { draggablePoints } from "../../extension/preview/handles.ts";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";

/** Points of a text: as written, where, and which ways it may be dragged. */
function pointsOf(text: string, variant: string | null = null) {
  return draggablePoints(analyse(readSource(text), { variant })).map(({ handle, first, second }) => ({
    text: text.slice(handle.source.start, handle.source.end),
    at: [handle.at.x, handle.at.y].map((mm) => Number(mm.toFixed(6))),
    moves: [handle.movesX ? "x" : "", handle.movesY ? "y" : ""].join(""),
    behind: [first, second].map((number) =>
      number ? text.slice(number.literal.range.start, number.literal.range.end) : null,
    ),
    signs: [first?.sign, second?.sign],
  }));
}

const TEXT = `
let reach = 60 mm
let waist = 12 mm
let half = -reach / 2
outline {
  from (reach, 0 mm)
  line (20 mm, waist)
  arc (-20 mm, waist) through (0 mm, 2 * waist)
  line by (-30 mm, 0 mm)
  line (-50 mm, -waist)
  arc (20 mm, -waist) about (half, -40 mm + 5 mm) turning left
  close
}
hole (10 mm @ 90 deg) diameter 3 mm
hole ring 4 at radius 8 mm diameter 1 mm
slot (-30 mm, 0 mm) to by (6 mm, 0 mm) width 4 mm
cutout { from (24 mm, 0 mm) line (28 mm, 0 mm) line (26 mm, 3 mm) close }
variant "long" { reach = 70 mm }
`;

describe("points that may be dragged", () => {
  // The arc about a centre does not close exactly: what is asked here is the points, not the outline.
  const points = pointsOf(TEXT);
  const point = (text: string) => points.find((candidate) => candidate.text === text);

  it("are all of them, in text order, with their ranges", () => {
    expect(points.map(({ text }) => text)).toEqual([
      "(reach, 0 mm)",
      "(20 mm, waist)",
      "(-20 mm, waist)",
      "(0 mm, 2 * waist)",
      "by (-30 mm, 0 mm)",
      "(-50 mm, -waist)",
      "(20 mm, -waist)",
      "(half, -40 mm + 5 mm)",
      "(10 mm @ 90 deg)",
      "(-30 mm, 0 mm)",
      "by (6 mm, 0 mm)",
      "(24 mm, 0 mm)",
      "(28 mm, 0 mm)",
      "(26 mm, 3 mm)",
    ]);
    expect(draggablePoints(analyse(readSource(TEXT))).map(({ handle }) => handle.id)).toEqual(
      points.map((_, index) => index),
    );
  });

  it("lie where the text puts them, relative and polar ones too", () => {
    expect(point("by (-30 mm, 0 mm)")?.at).toEqual([-50, 12]);
    expect(point("by (6 mm, 0 mm)")?.at).toEqual([-24, 0]);
    expect(point("(10 mm @ 90 deg)")?.at).toEqual([0, 10]);
    expect(point("(half, -40 mm + 5 mm)")?.at).toEqual([-30, -35]);
  });

  it("move along a number or a plain let, with its sign, and not along a computed value", () => {
    expect(point("(reach, 0 mm)")).toMatchObject({ moves: "xy", behind: ["60 mm", "0 mm"], signs: [1, 1] });
    expect(point("(-50 mm, -waist)")).toMatchObject({
      moves: "xy",
      behind: ["50 mm", "12 mm"],
      signs: [-1, -1],
    });
    expect(point("(0 mm, 2 * waist)")?.moves).toBe("x");
    expect(point("(half, -40 mm + 5 mm)")?.moves).toBe("");
  });

  it("move as a whole or not at all where they are polar", () => {
    expect(point("(10 mm @ 90 deg)")?.moves).toBe("xy");
    const polar = pointsOf(
      "let r = 9 mm * 2\noutline { from (r @ 0 deg) line (9 mm @ 1 deg + 2 deg) close }",
    );
    expect(polar.map(({ moves }) => moves)).toEqual(["", ""]);
  });

  it("move one way where one number stands behind both coordinates", () => {
    const [corner] = pointsOf(
      "let h = 9 mm\noutline { from (h, -h) line (0 mm, 9 mm) line (-9 mm, -9 mm) close }",
    );
    expect(corner?.moves).toBe("x");
  });

  it("hang on the number of the chosen variant", () => {
    const longer = pointsOf(TEXT, "long").find(({ text }) => text === "(reach, 0 mm)");
    expect(longer).toMatchObject({ at: [70, 0], behind: ["70 mm", "0 mm"] });
  });

  it("are left out where they cannot be evaluated", () => {
    const text = "outline { from (nobody, 0 mm) line (9 mm, 9 mm) line (-9 mm, 0 mm) close }\nbore 2 mm";
    expect(pointsOf(text).map((candidate) => candidate.text)).not.toContain("(nobody, 0 mm)");
  });
});

/** Everything a shop would send back, put into a good file by hand: the check before hand-out must find it. */
import { describe, expect, it } from "vitest";
import type { DrawingUnit } from "../../geometry/files/drawing-unit.ts";
import { type DxfRelease, toDxf } from "../../geometry/files/dxf.ts";
import { verifyCut } from "../../geometry/files/verify-cut.ts";
import { reversedLoop } from "../../geometry/outline/transform.ts";
import { arc, bulgeLoop, circle, line, loopOf, outlineOf, slot } from "../support/loops.ts";
import { groupsIn, type TestGroup } from "./dxf-structure.ts";

/** A plate with one fillet, a bore, a slot and two equal holes. */
const outline = outlineOf(
  bulgeLoop([
    [-96, -24, 0],
    [106, -24, 0],
    [106, 14, Math.tan(Math.PI / 8)],
    [96, 24, 0],
    [-96, 24, 0],
  ]),
  circle(11),
  slot([-60, 0], [-48, 0], 8),
  circle(3.25, [30, 17]),
  circle(3.25, [30, -17]),
);

/** A quarter of a disc with a corner behind it; the ends of the arc differ in radius by `off`. */
function offCentre(off: number) {
  const round = arc([0, 0], 80 + off / 2, 0, Math.PI / 2);
  const ends = { from: { x: 80, y: 0 }, to: { x: 0, y: 80 + off } };
  return outlineOf(
    loopOf([{ ...round, ...ends }, line([0, 80 + off], [-80, -80]), line([-80, -80], [80, 0])]),
  );
}

const VARIATIONS = (["2000", "r12"] as const).flatMap((release) =>
  (["mm", "in"] as const).map((units) => ({ release, units })),
);

type Edit = (groups: TestGroup[], file: { release: DxfRelease; units: DrawingUnit }) => TestGroup[];

const render = (groups: readonly TestGroup[]) =>
  groups.map(({ code, value }) => `${String(code).padStart(3)}\n${value}\n`).join("");

function check(edit: Edit, file: { release: DxfRelease; units: DrawingUnit }): string[] {
  const text = toDxf(outline, { ...file, name: "Wattlebird" });
  const edited = render(edit(groupsIn(text), file));
  expect(edited, "the edit must change the file").not.toBe(text);
  return verifyCut(outline, edited, file.units);
}

/** Index of the n-th group that fits. */
function find(groups: readonly TestGroup[], fits: (group: TestGroup) => boolean, from = 0): number {
  const index = groups.findIndex((group, i) => i >= from && fits(group));
  if (index < 0) throw new Error("nothing to edit");
  return index;
}

const isRecord = (kind: string) => (group: TestGroup) => group.code === 0 && group.value === kind;
const polylineKind = (release: DxfRelease) => (release === "2000" ? "LWPOLYLINE" : "POLYLINE");
const entities = (groups: readonly TestGroup[]) => find(groups, ({ value }) => value === "ENTITIES");

function spliced(
  groups: readonly TestGroup[],
  start: number,
  remove: number,
  ...more: TestGroup[]
): TestGroup[] {
  return [...groups.slice(0, start), ...more, ...groups.slice(start + remove)];
}

function with_(groups: readonly TestGroup[], index: number, value: (old: string) => string): TestGroup[] {
  return groups.map((group, i) => (i === index ? { ...group, value: value(group.value) } : group));
}

/** The first and last group, exclusive, of the n-th vertex of the outer curve; n from 0. */
function vertex(groups: readonly TestGroup[], release: DxfRelease, n: number): [start: number, end: number] {
  let index = find(groups, isRecord(polylineKind(release)));
  const starts = release === "2000" ? (group: TestGroup) => group.code === 10 : isRecord("VERTEX");
  for (let i = 0; i <= n; i += 1) index = find(groups, starts, index + 1);
  const bulge = find(groups, ({ code }) => code === 42, index);
  return [index, bulge + 1];
}

/** Change a number of a vertex of the outer curve: 10 its x, 20 its y, 42 its bulge. */
function editVertex(n: number, code: number, value: (old: number) => string): Edit {
  return (groups, { release }) => {
    const [start] = vertex(groups, release, n);
    return with_(
      groups,
      find(groups, (group) => group.code === code, start),
      (old) => value(Number(old)),
    );
  };
}

const editCount =
  (by: number): Edit =>
  (groups, { release }) =>
    release === "r12"
      ? groups
      : with_(
          groups,
          find(groups, ({ code }) => code === 90, entities(groups)),
          (n) => String(Number(n) + by),
        );

/** The groups of the n-th record of a kind in the drawing, an old polyline with all its vertices. */
function record(groups: readonly TestGroup[], kind: string, n = 0): [start: number, end: number] {
  let start = entities(groups);
  for (let i = 0; i <= n; i += 1) start = find(groups, isRecord(kind), start + 1);
  const last = kind === "POLYLINE" ? find(groups, isRecord("SEQEND"), start) : start;
  return [start, find(groups, ({ code }) => code === 0, last + 1)];
}

const doubled =
  (kind: (release: DxfRelease) => string): Edit =>
  (groups, { release }) => {
    const [start, end] = record(groups, kind(release));
    return spliced(groups, end, 0, ...groups.slice(start, end));
  };

const setHeader =
  (name: string, code: number, value: string): Edit =>
  (groups) =>
    with_(
      groups,
      find(
        groups,
        (group) => group.code === code,
        find(groups, (group) => group.value === name),
      ),
      () => value,
    );

/** A record more at the end of the drawing. */
const added =
  (...record: [code: number, value: string][]): Edit =>
  (groups, { release }) => {
    const end = find(groups, isRecord("ENDSEC"), entities(groups));
    const marks: [number, string][] = release === "2000" ? [[100, "AcDbEntity"]] : [];
    const [head, ...rest] = record;
    const full = [head ?? [0, ""], ...marks, ...rest] as [number, string][];
    return spliced(groups, end, 0, ...full.map(([code, value]) => ({ code, value })));
  };

const moved = (mm: number, units: DrawingUnit, old: string) =>
  String(Number(old) + (units === "mm" ? mm : mm / 25.4));

const EDITS: readonly [name: string, edit: Edit, fault: RegExp][] = [
  [
    "an open loop",
    (groups, { release }) => {
      const start = find(groups, isRecord(polylineKind(release)));
      return with_(
        groups,
        find(groups, ({ code }) => code === 70, start),
        () => "0",
      );
    },
    /is open/,
  ],
  [
    "a vertex moved by a millionth of a mm",
    editVertex(2, 10, (x) => String(x + 1e-6)),
    /the area|the centroid/,
  ],
  [
    "a vertex moved so that the area stays",
    // Along the line between its neighbours: the triangle over them keeps its height.
    (groups, file) => {
      const along = editVertex(0, 20, (y) => String(y + 1e-5));
      const back = editVertex(1, 20, (y) => String(y - 1e-5));
      return back(along(groups, file), file);
    },
    /the centroid|the length/,
  ],
  ["a bulge with its sign turned", editVertex(2, 42, (bulge) => String(-bulge)), /the area/],
  ["a facet for an arc", editVertex(2, 42, () => "0"), /the area/],
  ["a bulge of more than half a circle", editVertex(2, 42, () => "1.2"), /over half a circle/],
  ["a full circle as one arc", editVertex(2, 42, () => "100000000"), /over half a circle/],
  [
    "a vertex dropped",
    (groups, { release }) => {
      const [start, end] = vertex(groups, release, 3);
      return spliced(groups, start, end - start);
    },
    /states 5 vertices and has 4|the area/,
  ],
  [
    "a vertex dropped and not counted",
    (groups, file) => {
      const [start, end] = vertex(groups, file.release, 3);
      return editCount(-1)(spliced(groups, start, end - start), file);
    },
    /the area/,
  ],
  [
    "a vertex twice",
    (groups, file) => {
      const [start, end] = vertex(groups, file.release, 1);
      return editCount(1)(spliced(groups, end, 0, ...groups.slice(start, end)), file);
    },
    /no length/,
  ],
  [
    "a line run there and back",
    (groups, file) => {
      const [start] = vertex(groups, file.release, 0);
      const [, end] = vertex(groups, file.release, 1);
      const again = groups.slice(start, end);
      return editCount(2)(spliced(groups, end, 0, ...again), file);
    },
    /doubled/,
  ],
  [
    "lines that overlap",
    (groups, file) => {
      const [start, end] = vertex(groups, file.release, 4);
      const at = (mm: number) =>
        with_(
          groups.slice(start, end),
          groups.slice(start, end).findIndex(({ code }) => code === 10),
          () => moved(mm, file.units, "0"),
        );
      return editCount(2)(spliced(groups, start, 0, ...at(20), ...at(40)), file);
    },
    /the length of curve 1 on CUT_OUTER/,
  ],
  ["the outer loop twice", doubled(polylineKind), /doubled/],
  ["a hole twice", doubled(() => "CIRCLE"), /doubled/],
  [
    "a hole lost",
    (groups) => {
      const [start, end] = record(groups, "CIRCLE", 1);
      return spliced(groups, start, end - start);
    },
    /CUT_INNER has 3 curves where the outline has 4 loops/,
  ],
  [
    "two holes moved so that area and centroid of the part stay",
    (groups, { units }) => {
      const [first] = record(groups, "CIRCLE", 1);
      const [second] = record(groups, "CIRCLE", 2);
      const x = (start: number) => find(groups, ({ code }) => code === 10, start);
      const once = with_(groups, x(first), (old) => moved(1e-4, units, old));
      return with_(once, x(second), (old) => moved(-1e-4, units, old));
    },
    /the centroid's x of curve 3 on CUT_INNER/,
  ],
  [
    "a hole of the wrong size",
    (groups) => {
      const [start] = record(groups, "CIRCLE");
      return with_(
        groups,
        find(groups, ({ code }) => code === 40, start),
        (old) => String(Number(old) * (1 + 1e-8)),
      );
    },
    /the area of curve 1 on CUT_INNER/,
  ],
  [
    "a hole on the outer layer",
    (groups) => {
      const [start] = record(groups, "CIRCLE");
      return with_(
        groups,
        find(groups, ({ code }) => code === 8, start),
        () => "CUT_OUTER",
      );
    },
    /CUT_OUTER has 2 curves where the outline has 1 loop/,
  ],
  [
    "a loop on a layer nobody cuts",
    (groups) => {
      const [start] = record(groups, "CIRCLE");
      return with_(
        groups,
        find(groups, ({ code }) => code === 8, start),
        () => "0",
      );
    },
    /on layer 0/,
  ],
  [
    "the wrong unit code",
    (groups, file) => setHeader("$INSUNITS", 70, file.units === "mm" ? "1" : "4")(groups, file),
    /the unit code/,
  ],
  [
    "the wrong measurement",
    (groups, file) => setHeader("$MEASUREMENT", 70, file.units === "mm" ? "0" : "1")(groups, file),
    /measurement code/,
  ],
  [
    "no unit",
    (groups) =>
      spliced(
        groups,
        find(groups, ({ value }) => value === "$INSUNITS"),
        2,
      ),
    /the unit code is missing/,
  ],
  ["not a number for a coordinate", editVertex(1, 10, () => "NaN"), /NaN is not a plain decimal/],
  ["infinity for a coordinate", editVertex(1, 20, () => "Infinity"), /Infinity is not a plain decimal/],
  ["a number too large to be one", editVertex(1, 20, () => `1${"0".repeat(400)}`), /not finite/],
  ["an exponent", editVertex(1, 10, (x) => `${x}e0`), /is not a plain decimal/],
  ["a decimal comma", editVertex(1, 10, () => "1,5"), /1,5 is not a plain decimal/],
  ["a minus before zero", editVertex(0, 42, () => "-0"), /minus before zero/],
  [
    "a line on a cut layer",
    added([0, "LINE"], [8, "CUT_OUTER"], [10, "0"], [20, "0"], [11, "5"], [21, "5"]),
    /a LINE on layer CUT_OUTER/,
  ],
  ["a spline", added([0, "SPLINE"], [8, "CUT_OUTER"]), /a SPLINE on layer CUT_OUTER/],
  ["lettering on a cut layer", added([0, "TEXT"], [8, "CUT_INNER"], [1, "W"]), /a TEXT on layer CUT_INNER/],
  ["a dimension", added([0, "DIMENSION"], [8, "MARK"]), /a DIMENSION on layer MARK/],
  ["a block", added([0, "INSERT"], [8, "MARK"], [2, "part"]), /an? INSERT on layer MARK/],
  [
    "a circle of no size",
    added([0, "CIRCLE"], [8, "CUT_INNER"], [10, "0"], [20, "0"], [40, "0"]),
    /circle of radius 0/,
  ],
  ["extents that are unset", setHeader("$EXTMIN", 10, "100000000000000000000"), /extents/],
  ["extents without the arcs", setHeader("$EXTMAX", 20, "14"), /extents/],
  ["an unknown release", setHeader("$ACADVER", 1, "AC1032"), /the release AC1032/],
  ["no end", (groups) => groups.slice(0, -1), /does not end with EOF/],
  [
    "sections out of order",
    (groups) => {
      const start = find(groups, isRecord("SECTION"), 1);
      const tables = find(groups, ({ value }) => value === "BLOCKS") - 1;
      const end = find(groups, isRecord("ENDSEC"), tables) + 1;
      return spliced(spliced(groups, tables, end - tables), start, 0, ...groups.slice(tables, end));
    },
    /the sections are/,
  ],
  [
    "letters that are not ASCII",
    (groups) =>
      with_(
        groups,
        find(groups, ({ value }) => value === "Wattlebird"),
        () => "Größe",
      ),
    /not printable ASCII/,
  ],
];

describe.each(VARIATIONS)("the check of a cut file, release $release in $units", (file) => {
  it("finds nothing in what was written", () => {
    expect(verifyCut(outline, toDxf(outline, { ...file, name: "Wattlebird" }), file.units)).toEqual([]);
  });

  it.each(EDITS)("finds %s", (_, edit, fault) => {
    expect(check(edit, file).join("\n")).toMatch(fault);
  });

  it("finds coordinates of another unit", () => {
    const other = file.units === "mm" ? "in" : "mm";
    const text = toDxf(outline, { release: file.release, units: other, name: "W" });
    expect(verifyCut(outline, text, file.units).join("\n")).toMatch(/unit code[\s\S]*the area/);
  });

  it("finds the wrong part", () => {
    const text = toDxf(outlineOf(circle(50), circle(11)), { ...file, name: "W" });
    expect(verifyCut(outline, text, file.units)).not.toEqual([]);
  });

  it("finds a slot that lies across", () => {
    const [first, second, ...holes] = outline.inner;
    const across = { ...slot([-54, -6], [-54, 6], 8), kind: "slot" as const };
    if (!first || !second) throw new Error("the bore and the slot are gone");
    const text = toDxf({ ...outline, inner: [first, across, ...holes] }, { ...file, name: "W" });
    expect(verifyCut(outline, text, file.units).join("\n")).toMatch(/^the least x of curve 2 on CUT_INNER/);
  });

  it("finds that the model counts a hole as metal", () => {
    const turned = { ...outline, inner: outline.inner.map(reversedLoop) };
    const faults = verifyCut(turned, toDxf(turned, { ...file, name: "W" }), file.units);
    expect(faults.join("\n")).toMatch(/^the area of the part is/);
  });

  it.each([6, 7, 8, 9, 10, 12])("takes sides that rise by no more than 1e-%i of their length", (digits) => {
    const bulge = 10 ** -digits;
    const shallow = outlineOf(
      bulgeLoop([
        [-30, -20, bulge],
        [70, -23, 0],
        [70, 20, bulge],
        [-30, 20, 0],
      ]),
    );
    expect(verifyCut(shallow, toDxf(shallow, { ...file, name: "W" }), file.units)).toEqual([]);
  });

  it.each([1e-7, 5e-7, 9.9e-7])("takes an arc whose centre is off by %d mm, as the outline does", (off) => {
    const quarter = offCentre(off);
    expect(verifyCut(quarter, toDxf(quarter, { ...file, name: "W" }), file.units)).toEqual([]);
  });

  it("finds an arc of the model that misses its own ends", () => {
    const quarter = offCentre(1e-5);
    const faults = verifyCut(quarter, toDxf(quarter, { ...file, name: "W" }), file.units);
    expect(faults.join("\n")).toMatch(/^an arc of the outline, from \(80, 0\), misses its own ends/);
  });

  it("finds line ends of two kinds, and takes those of one", () => {
    const text = toDxf(outline, { ...file, name: "W" });
    expect(verifyCut(outline, text.replaceAll("\n", "\r\n"), file.units)).toEqual([]);
    expect(verifyCut(outline, text.replace("\n", "\r\n"), file.units)).toContain("the line ends are mixed");
  });

  it("finds that a file was cut short, wherever", () => {
    const text = toDxf(outline, { ...file, name: "W" });
    for (let share = 0; share < 1; share += 0.01)
      expect(verifyCut(outline, text.slice(0, Math.floor(text.length * share)), file.units)).not.toEqual([]);
  });
});

describe("the list of faults", () => {
  it("stays short, and says how many more there are", () => {
    const text = toDxf(outline, { release: "2000", units: "mm", name: "W" }).replaceAll("24\n", "24e0\n");
    const faults = verifyCut(outline, text.replaceAll("\n0\n", "\n-0\n"), "mm");
    expect(faults).toHaveLength(13);
    expect(faults.at(-1)).toMatch(/^\d+ more faults$/);
  });

  it.each(["", "\n", "nothing of the kind", "0\nEOF\n"])("is not empty for %j", (text) => {
    expect(verifyCut(outline, text, "mm")).not.toEqual([]);
  });
});

import { CUT_INNER, CUT_OUTER, MARK } from "../layers.ts";
import { plainDecimal } from "../plain-decimal.ts";
import { BULGE_DIGITS, type CutShape } from "./cut-shapes.ts";
import type { Drawing } from "./drawing.ts";
import { type Group, point, real, section } from "./group.ts";
import { header } from "./header.ts";

/**
 * A drawing as release 12 (AC1009) says it, for the oldest readers: polylines with a record for each vertex, no
 * handles, no subclass markers, no objects. Its readers need not know the unit's variable, so a comment says it too.
 */
export function releaseR12(drawing: Drawing): Group[] {
  const { units, shapes, cross, name } = drawing;
  const unitName = { mm: "millimetres", in: "inches" }[units];
  return [
    [999, `Units: ${unitName}, scale 1:1`],
    ...header(drawing, [
      [9, "$ACADVER"],
      [1, "AC1009"],
    ]),
    ...TABLES,
    ...section("BLOCKS", []),
    ...section("ENTITIES", [
      ...shapes.flatMap(shapeGroups),
      ...cross.flatMap(([from, to]) => entity("LINE", MARK, [...point(10, from, 0), ...point(11, to, 0)])),
      ...entity("TEXT", MARK, [...point(10, name.at, 0), real(40, name.height), [1, name.text]]),
    ]),
    [0, "EOF"],
  ];
}

function entity(type: string, layer: string, groups: readonly Group[]): Group[] {
  return [[0, type], [8, layer], ...groups];
}

function shapeGroups(shape: CutShape): Group[] {
  const { layer } = shape;
  if (shape.kind === "circle")
    return entity("CIRCLE", layer, [...point(10, shape.centre, 0), real(40, shape.radius)]);
  return [
    // 66: vertices follow; 70: closed. The point is a dummy that the format asks for.
    ...entity("POLYLINE", layer, [[66, 1], ...point(10, { x: 0, y: 0 }, 0), [70, 1]]),
    ...shape.vertices.flatMap((vertex) =>
      entity("VERTEX", layer, [...point(10, vertex, 0), [42, plainDecimal(vertex.bulge, BULGE_DIGITS)]]),
    ),
    ...entity("SEQEND", layer, []),
  ];
}

const TABLES: readonly Group[] = section("TABLES", [
  ...table("LTYPE", [lineType("CONTINUOUS", "Solid line")]),
  ...table("LAYER", [layer("0", 7), layer(CUT_OUTER, 7), layer(CUT_INNER, 5), layer(MARK, 3)]),
  ...table("STYLE", [
    [
      [2, "STANDARD"],
      [70, 0],
      [40, 0],
      [41, 1],
      [50, 0],
      [71, 0],
      [42, 2.5],
      [3, "txt"],
      [4, ""],
    ],
  ]),
]);

function table(name: string, records: readonly (readonly Group[])[]): Group[] {
  return [
    [0, "TABLE"],
    [2, name],
    [70, records.length],
    ...records.flatMap((record): Group[] => [[0, name], ...record]),
    [0, "ENDTAB"],
  ];
}

function lineType(name: string, description: string): Group[] {
  return [
    [2, name],
    [70, 0],
    [3, description],
    [72, 65],
    [73, 0],
    [40, 0],
  ];
}

function layer(name: string, colour: number): Group[] {
  return [
    [2, name],
    [70, 0],
    [62, colour],
    [6, "CONTINUOUS"],
  ];
}

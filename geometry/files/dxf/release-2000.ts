import { MARK } from "../layers.ts";
import { plainDecimal } from "../plain-decimal.ts";
import { BULGE_DIGITS, type CutShape } from "./cut-shapes.ts";
import type { Drawing } from "./drawing.ts";
import { type Group, handleText, point, real, section } from "./group.ts";
import { header } from "./header.ts";
import { BLOCKS, CLASSES, FIRST_ENTITY_HANDLE, MODEL_SPACE, OBJECTS, tables } from "./release-2000-tables.ts";

/** A drawing as release 2000 (AC1015) says it: one lightweight polyline a loop, a circle where the loop is one. */
export function release2000(drawing: Drawing): Group[] {
  const entities = entitiesOf(drawing);
  const variables: Group[] = [
    [9, "$ACADVER"],
    [1, "AC1015"],
    [9, "$DWGCODEPAGE"],
    [3, "ANSI_1252"],
    [9, "$HANDSEED"],
    [5, handleText(FIRST_ENTITY_HANDLE + entities.length)],
    // Colours and widths go by layer, so the named plot styles the layers must point to say nothing.
    [9, "$PSTYLEMODE"],
    [290, 1],
  ];
  return [
    ...header(drawing, variables),
    ...CLASSES,
    ...tables(drawing),
    ...BLOCKS,
    ...section("ENTITIES", entities.flatMap(entityGroups)),
    ...OBJECTS,
    [0, "EOF"],
  ];
}

interface Entity {
  readonly type: string;
  readonly layer: string;
  /** From the first subclass marker of its own on. */
  readonly groups: readonly Group[];
}

function entitiesOf({ shapes, cross, name }: Drawing): Entity[] {
  return [
    ...shapes.map(shapeEntity),
    ...cross.map(([from, to]): Entity => {
      return {
        type: "LINE",
        layer: MARK,
        groups: [[100, "AcDbLine"], ...point(10, from, 0), ...point(11, to, 0)],
      };
    }),
    {
      type: "TEXT",
      layer: MARK,
      groups: [
        [100, "AcDbText"],
        ...point(10, name.at, 0),
        real(40, name.height),
        [1, name.text],
        [100, "AcDbText"],
      ],
    },
  ];
}

function shapeEntity(shape: CutShape): Entity {
  if (shape.kind === "circle")
    return {
      type: "CIRCLE",
      layer: shape.layer,
      groups: [[100, "AcDbCircle"], ...point(10, shape.centre, 0), real(40, shape.radius)],
    };
  const { layer, vertices } = shape;
  return {
    type: "LWPOLYLINE",
    layer,
    groups: [
      [100, "AcDbPolyline"],
      [90, vertices.length],
      [70, CLOSED],
      ...vertices.flatMap((vertex): Group[] => [
        ...point(10, vertex),
        [42, plainDecimal(vertex.bulge, BULGE_DIGITS)],
      ]),
    ],
  };
}

const CLOSED = 1;

function entityGroups({ type, layer, groups }: Entity, index: number): Group[] {
  return [
    [0, type],
    [5, handleText(FIRST_ENTITY_HANDLE + index)],
    [330, MODEL_SPACE],
    [100, "AcDbEntity"],
    [8, layer],
    ...groups,
  ];
}

/**
 * What release 2000 (AC1015) wants in every file besides the drawing itself, as data. Handles are fixed here; those
 * of the entities begin above them.
 */
import { CUT_INNER, CUT_OUTER, MARK } from "../layers.ts";
import type { Drawing } from "./drawing.ts";
import { type Group, point, real, section } from "./group.ts";

/** Handles that other records refer to. */
const ROOT = "1";
const GROUPS = "2";
const PLOT_STYLES = "3";
const PLOT_STYLE_NORMAL = "4";
const TEXT_STYLE = "1C";
export const MODEL_SPACE = "24";
const PAPER_SPACE = "25";

/** The first handle of an entity: above all of this file. */
export const FIRST_ENTITY_HANDLE = 0x100;

/** Object kinds that are not built into every reader. */
export const CLASSES: readonly Group[] = section("CLASSES", [
  ...classRecord("ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault"),
  ...classRecord("ACDBPLACEHOLDER", "AcDbPlaceHolder"),
]);

function classRecord(name: string, type: string): Group[] {
  return [
    [0, "CLASS"],
    [1, name],
    [2, type],
    [3, "ObjectDBX Classes"],
    [90, 0],
    [280, 0],
    [281, 0],
  ];
}

/** A table's name, its handle, its records, and what its head says beyond that. */
interface Table {
  readonly name: string;
  readonly handle: string;
  readonly type: string;
  readonly head?: readonly Group[];
  readonly records: readonly TableRecord[];
}

interface TableRecord {
  readonly handle: string;
  readonly groups: readonly Group[];
}

export function tables(drawing: Drawing): Group[] {
  return section("TABLES", [viewports(drawing), ...FIXED_TABLES].flatMap(tableGroups));
}

function tableGroups({ name, handle, type, head, records }: Table): Group[] {
  return [
    [0, "TABLE"],
    [2, name],
    [5, handle],
    [330, 0],
    [100, "AcDbSymbolTable"],
    [70, records.length],
    ...(head ?? []),
    ...records.flatMap((record): Group[] => [
      [0, name],
      // Dimension styles alone have their handle on another code, since 5 was taken.
      [name === "DIMSTYLE" ? 105 : 5, record.handle],
      [330, handle],
      [100, "AcDbSymbolTableRecord"],
      [100, type],
      ...record.groups,
    ]),
    [0, "ENDTAB"],
  ];
}

/** The view a reader opens with: all of the drawing, with a margin, in a window half as wide again as tall. */
function viewports({ least, greatest }: Drawing): Table {
  const aspect = 1.5;
  const margin = 1.1;
  const centre = { x: (least.x + greatest.x) / 2, y: (least.y + greatest.y) / 2 };
  const height = margin * Math.max(greatest.y - least.y, (greatest.x - least.x) / aspect);
  const groups: Group[] = [
    [2, "*Active"],
    [70, 0],
    ...point(10, { x: 0, y: 0 }),
    ...point(11, { x: 1, y: 1 }),
    ...point(12, centre),
    ...point(13, { x: 0, y: 0 }),
    ...point(14, { x: 10, y: 10 }),
    ...point(15, { x: 10, y: 10 }),
    ...[[16, 0] as const, [26, 0] as const, [36, 1] as const],
    ...point(17, { x: 0, y: 0 }, 0),
    real(40, height),
    real(41, aspect),
    real(42, 50),
    ...[43, 44, 50, 51, 71].map((code): Group => [code, 0]),
    [72, 100],
    [73, 1],
    [74, 3],
    ...[75, 76, 77, 78].map((code): Group => [code, 0]),
  ];
  return {
    name: "VPORT",
    handle: "10",
    type: "AcDbViewportTableRecord",
    records: [{ handle: "11", groups }],
  };
}

const FIXED_TABLES: readonly Table[] = [
  {
    name: "LTYPE",
    handle: "12",
    type: "AcDbLinetypeTableRecord",
    records: [
      { handle: "13", groups: lineType("ByBlock", "") },
      { handle: "14", groups: lineType("ByLayer", "") },
      { handle: "15", groups: lineType("Continuous", "Solid line") },
    ],
  },
  {
    name: "LAYER",
    handle: "16",
    type: "AcDbLayerTableRecord",
    records: [
      { handle: "17", groups: layer("0", 7) },
      { handle: "18", groups: layer(CUT_OUTER, 7) },
      { handle: "19", groups: layer(CUT_INNER, 5) },
      { handle: "1A", groups: layer(MARK, 3) },
    ],
  },
  {
    name: "STYLE",
    handle: "1B",
    type: "AcDbTextStyleTableRecord",
    records: [
      {
        handle: TEXT_STYLE,
        groups: [
          [2, "Standard"],
          [70, 0],
          [40, 0],
          [41, 1],
          [50, 0],
          [71, 0],
          [42, 2.5],
          [3, "txt"],
          [4, ""],
        ],
      },
    ],
  },
  { name: "VIEW", handle: "1D", type: "AcDbViewTableRecord", records: [] },
  { name: "UCS", handle: "1E", type: "AcDbUCSTableRecord", records: [] },
  {
    name: "APPID",
    handle: "1F",
    type: "AcDbRegAppTableRecord",
    records: [
      {
        handle: "20",
        groups: [
          [2, "ACAD"],
          [70, 0],
        ],
      },
    ],
  },
  {
    name: "DIMSTYLE",
    handle: "21",
    type: "AcDbDimStyleTableRecord",
    head: [
      [100, "AcDbDimStyleTable"],
      [71, 1],
    ],
    records: [
      {
        handle: "22",
        groups: [
          [2, "Standard"],
          [70, 0],
          [340, TEXT_STYLE],
        ],
      },
    ],
  },
  {
    name: "BLOCK_RECORD",
    handle: "23",
    type: "AcDbBlockTableRecord",
    records: [
      { handle: MODEL_SPACE, groups: blockRecord("*Model_Space") },
      { handle: PAPER_SPACE, groups: blockRecord("*Paper_Space") },
    ],
  },
];

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
    [6, "Continuous"],
    [390, PLOT_STYLE_NORMAL],
  ];
}

function blockRecord(name: string): Group[] {
  return [
    [2, name],
    [340, 0],
  ];
}

export const BLOCKS: readonly Group[] = section("BLOCKS", [
  ...block("*Model_Space", MODEL_SPACE, ["26", "27"], []),
  ...block("*Paper_Space", PAPER_SPACE, ["28", "29"], [[67, 1]]),
]);

function block(name: string, owner: string, handles: [string, string], space: readonly Group[]): Group[] {
  return [
    [0, "BLOCK"],
    [5, handles[0]],
    [330, owner],
    [100, "AcDbEntity"],
    ...space,
    [8, "0"],
    [100, "AcDbBlockBegin"],
    [2, name],
    [70, 0],
    ...point(10, { x: 0, y: 0 }, 0),
    [3, name],
    [1, ""],
    [0, "ENDBLK"],
    [5, handles[1]],
    [330, owner],
    [100, "AcDbEntity"],
    ...space,
    [8, "0"],
    [100, "AcDbBlockEnd"],
  ];
}

/** The root dictionary comes first: readers find the others through it. */
export const OBJECTS: readonly Group[] = section("OBJECTS", [
  ...dictionary("DICTIONARY", ROOT, "0", [
    ["ACAD_GROUP", GROUPS],
    ["ACAD_PLOTSTYLENAME", PLOT_STYLES],
  ]),
  ...dictionary("DICTIONARY", GROUPS, ROOT, []),
  ...dictionary("ACDBDICTIONARYWDFLT", PLOT_STYLES, ROOT, [["Normal", PLOT_STYLE_NORMAL]]),
  [100, "AcDbDictionaryWithDefault"],
  [340, PLOT_STYLE_NORMAL],
  [0, "ACDBPLACEHOLDER"],
  [5, PLOT_STYLE_NORMAL],
  [330, PLOT_STYLES],
]);

function dictionary(
  kind: string,
  handle: string,
  owner: string,
  entries: readonly (readonly [key: string, handle: string])[],
): Group[] {
  return [
    [0, kind],
    [5, handle],
    [330, owner],
    [100, "AcDbDictionary"],
    [281, 1],
    ...entries.flatMap(([key, entry]): Group[] => [
      [3, key],
      [350, entry],
    ]),
  ];
}

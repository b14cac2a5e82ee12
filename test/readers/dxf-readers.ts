import { spawnSync } from "node:child_process";
import { join } from "node:path";
import DxfParser, {
  type ICircleEntity,
  type IDxf,
  type ILwpolylineEntity,
  type IPolylineEntity,
} from "dxf-parser";
import type { FoundCurve, FoundVertex } from "./curve-figures.ts";

/** What an independent reader found in a drawing. */
export interface FoundDrawing {
  readonly version: string;
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly insUnits: number;
  readonly measurement: number;
  readonly least: readonly number[];
  readonly greatest: readonly number[];
  readonly layers: readonly string[];
  readonly curves: readonly FoundCurve[];
  readonly lines: readonly (readonly [number, number, number, number, string])[];
  readonly texts: readonly { readonly layer: string; readonly text: string }[];
  readonly kinds: readonly string[];
  readonly paperspace: number;
}

const PYTHON = "/usr/bin/python3";

/** Every drawing of a folder, read and audited by ezdxf in one process. */
export function readWithEzdxf(folder: string): Map<string, FoundDrawing> {
  const script = join(import.meta.dirname, "read_dxf.py");
  const run = spawnSync(PYTHON, [script, folder], { encoding: "utf8", maxBuffer: 2 ** 28 });
  if (run.error || /ModuleNotFoundError/.test(run.stderr))
    throw new Error("these tests read cut files with ezdxf: install it with  apt-get install python3-ezdxf");
  if (run.status !== 0) throw new Error(`ezdxf could not read the files:\n${run.stderr}`);
  return new Map(Object.entries(JSON.parse(run.stdout)));
}

/** The same by the dxf-parser package, which does not audit. */
export function readWithDxfParser(text: string): Omit<FoundDrawing, "errors" | "fixes" | "paperspace"> {
  const drawing = new DxfParser().parseSync(text);
  if (!drawing) throw new Error("dxf-parser could not read the file");
  const { header, entities } = drawing;
  return {
    version: String(header["$ACADVER"]),
    insUnits: Number(header["$INSUNITS"]),
    measurement: Number(header["$MEASUREMENT"]),
    least: corner(drawing, "$EXTMIN"),
    greatest: corner(drawing, "$EXTMAX"),
    layers: Object.keys(drawing.tables.layer.layers).sort(),
    curves: entities.flatMap(curveOf),
    lines: entities.flatMap((entity) => {
      if (entity.type !== "LINE") return [];
      const [from, to] = (entity as ILwpolylineEntity).vertices;
      return from && to ? [[from.x, from.y, to.x, to.y, entity.layer] as const] : [];
    }),
    texts: entities.flatMap((entity) =>
      "text" in entity ? [{ layer: entity.layer, text: String(entity.text) }] : [],
    ),
    kinds: [...new Set(entities.map(({ type }) => type))].sort(),
  };
}

function corner({ header }: IDxf, name: string): number[] {
  const point = header[name];
  return typeof point === "object" ? [point.x, point.y] : [];
}

function curveOf(entity: IDxf["entities"][number]): FoundCurve[] {
  const { layer, type } = entity;
  if (type === "CIRCLE") {
    const { center, radius } = entity as ICircleEntity;
    return [{ kind: "circle", layer, x: center.x, y: center.y, radius }];
  }
  if (type !== "LWPOLYLINE" && type !== "POLYLINE") return [];
  const { shape, vertices } = entity as ILwpolylineEntity | IPolylineEntity;
  const corners = vertices.map(
    (v): FoundVertex => ({ x: v.x, y: v.y, bulge: "bulge" in v ? (v.bulge ?? 0) : 0 }),
  );
  return [{ kind: "polyline", layer, closed: shape, vertices: corners }];
}

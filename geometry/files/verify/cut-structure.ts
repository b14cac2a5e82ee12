import { type Bounds, unitedBounds } from "../../outline/segment-geometry.ts";
import { type DrawingUnit, mmPerUnit } from "../drawing-unit.ts";
import { CUT_INNER, CUT_OUTER, MARK } from "../layers.ts";
import { chordOf, measureCurve, type Piece, piecesOf } from "./measure-curve.ts";
import { layerOf, numberOf, type ReadCurve, type ReadCut, type ReadEntity } from "./read-cut.ts";

/** Ends nearer than this, in mm, are one point: half of what a cut file resolves, since both ends may be rounded. */
const ONE_POINT_MM = 5e-10;

/** Doubled lines match to the digits that a machine could tell apart by far, in mm. */
const SAME_CURVE_MM = 1e-6;

/** The header's extents are rounded like every coordinate; see `verifyCut` for the share. */
const EXTENTS_MM = 1e-9;

const SECTIONS: Readonly<Record<string, readonly string[]>> = {
  AC1015: ["HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"],
  AC1009: ["HEADER", "TABLES", "BLOCKS", "ENTITIES"],
};

const UNIT_VARIABLES: Readonly<Record<DrawingUnit, { insUnits: string; measurement: string }>> = {
  mm: { insUnits: "4", measurement: "1" },
  in: { insUnits: "1", measurement: "0" },
};

/** What is wrong with a cut file whatever outline it is to be: order, units, layers, open, doubled or lost pieces. */
export function structureFaults(cut: ReadCut, units: DrawingUnit): string[] {
  const scale = mmPerUnit(units);
  return [
    ...orderFaults(cut),
    ...unitFaults(cut, units),
    ...cut.others.flatMap(otherFaults),
    ...cut.curves.flatMap((curve, index) => curveFaults(curve, index, scale)),
    ...doubledFaults(cut.curves, scale),
    ...extentFaults(cut, scale),
  ];
}

function orderFaults({ variables, sections, endsWithEof }: ReadCut): string[] {
  const release = variables.get("$ACADVER")?.get(1) ?? "";
  const wanted = SECTIONS[release];
  const faults: string[] = [];
  if (!wanted) faults.push(`the release ${release || "is missing"} is not one that is written`);
  else if (wanted.join() !== sections.join()) faults.push(`the sections are ${sections.join(", ")}`);
  if (!endsWithEof) faults.push("the file does not end with EOF");
  return faults;
}

function unitFaults({ variables }: ReadCut, units: DrawingUnit): string[] {
  const insUnits = variables.get("$INSUNITS")?.get(70);
  const measurement = variables.get("$MEASUREMENT")?.get(70);
  const wanted = UNIT_VARIABLES[units];
  const faults: string[] = [];
  if (insUnits !== wanted.insUnits)
    faults.push(`the unit code is ${insUnits ?? "missing"}, not ${wanted.insUnits} for ${units}`);
  if (measurement !== wanted.measurement)
    faults.push(
      `the measurement code is ${measurement ?? "missing"}, not ${wanted.measurement} for ${units}`,
    );
  return faults;
}

const MARK_KINDS: ReadonlySet<string> = new Set(["LINE", "TEXT"]);

/** Lines and lettering belong on the layer that is not cut, and nothing else belongs in the file. */
function otherFaults(entity: ReadEntity): string[] {
  const layer = layerOf(entity);
  if (layer === MARK && MARK_KINDS.has(entity.kind)) return [];
  return [`there is a ${entity.kind} on layer ${layer}`];
}

function curveFaults(curve: ReadCurve, index: number, scale: number): string[] {
  const what = `curve ${index + 1} of the file`;
  const faults: string[] = [];
  if (curve.layer !== CUT_OUTER && curve.layer !== CUT_INNER)
    faults.push(`${what} is on layer ${curve.layer}`);
  if (curve.kind === "circle") {
    if (!(curve.radius * scale > ONE_POINT_MM)) faults.push(`${what} is a circle of radius ${curve.radius}`);
    return faults;
  }
  if (!curve.closed) faults.push(`${what} is open`);
  if (curve.vertices.length < 2) faults.push(`${what} has fewer than two vertices`);
  if (curve.statedCount !== null && curve.statedCount !== curve.vertices.length)
    faults.push(`${what} states ${curve.statedCount} vertices and has ${curve.vertices.length}`);
  for (const piece of piecesOf(curve.vertices)) faults.push(...pieceFaults(piece, what, scale));
  return faults;
}

function pieceFaults(piece: Piece, what: string, scale: number): string[] {
  const where = `${what} at (${piece.from.x}, ${piece.from.y})`;
  if (!Number.isFinite(chordOf(piece) + piece.bulge)) return [`${where} has a number missing`];
  if (chordOf(piece) * scale < ONE_POINT_MM) return [`${where} has a piece of no length`];
  if (Math.abs(piece.bulge) > 1) return [`${where} has an arc over half a circle`];
  return [];
}

/** A line or arc that stands twice, in either direction, would be cut twice. */
function doubledFaults(curves: readonly ReadCurve[], scale: number): string[] {
  const seen = new Set<string>();
  const faults: string[] = [];
  for (const { key, where } of curves.flatMap((curve) => curveKeys(curve, scale / SAME_CURVE_MM))) {
    if (seen.has(key)) faults.push(`the ${where} is doubled`);
    seen.add(key);
  }
  return faults;
}

function curveKeys(curve: ReadCurve, perUnit: number): { key: string; where: string }[] {
  const grid = (value: number) => Math.round(value * perUnit) + 0;
  const at = ({ x, y }: { x: number; y: number }) => `${grid(x)} ${grid(y)}`;
  if (curve.kind === "circle") {
    const { centre, radius } = curve;
    return [{ key: `${at(centre)} ${grid(radius)}`, where: `circle at (${centre.x}, ${centre.y})` }];
  }
  return piecesOf(curve.vertices).map((piece) => {
    const from = at(piece.from);
    const to = at(piece.to);
    // The height of the arc tells apart the arcs and the line between two points; its side turns with the direction.
    const height = grid((piece.bulge * chordOf(piece)) / 2);
    const key = from < to ? `${from} ${to} ${height}` : `${to} ${from} ${0 - height}`;
    return { key, where: `piece from (${piece.from.x}, ${piece.from.y}) to (${piece.to.x}, ${piece.to.y})` };
  });
}

/** The header must give the box around what the file draws, curves and cross. */
function extentFaults({ variables, curves, others }: ReadCut, scale: number): string[] {
  const drawn = [...curves.map((curve) => measureCurve(curve).bounds), ...others.flatMap(lineBounds)];
  const first = drawn[0];
  if (!first) return ["the file draws nothing"];
  const box = drawn.reduce(unitedBounds, first);
  const stated = (name: string, code: number) => Number(variables.get(name)?.get(code) ?? Number.NaN);
  const slack = EXTENTS_MM * (1 / scale + Math.hypot(box.maxX - box.minX, box.maxY - box.minY));
  const same =
    Math.abs(stated("$EXTMIN", 10) - box.minX) <= slack &&
    Math.abs(stated("$EXTMIN", 20) - box.minY) <= slack &&
    Math.abs(stated("$EXTMAX", 10) - box.maxX) <= slack &&
    Math.abs(stated("$EXTMAX", 20) - box.maxY) <= slack;
  return same ? [] : ["the header's extents are not those of the drawing"];
}

function lineBounds(entity: ReadEntity): Bounds[] {
  if (entity.kind !== "LINE") return [];
  const [x0, y0, x1, y1] = [10, 20, 11, 21].map((code) => numberOf(entity, code));
  if (x0 === undefined || y0 === undefined || x1 === undefined || y1 === undefined) return [];
  return [{ minX: Math.min(x0, x1), minY: Math.min(y0, y1), maxX: Math.max(x0, x1), maxY: Math.max(y0, y1) }];
}

import type { Point } from "../../language/design.ts";
import { type ReadGroup, readGroups } from "./read-groups.ts";

/** A vertex of a curve in the file, in the file's unit. */
export interface ReadVertex extends Point {
  readonly bulge: number;
}

/** A curve of the file that a machine would follow. */
export type ReadCurve =
  | { readonly kind: "circle"; readonly layer: string; readonly centre: Point; readonly radius: number }
  | {
      readonly kind: "polyline";
      readonly layer: string;
      readonly closed: boolean;
      /** What the file says; `null` where the release does not count. */
      readonly statedCount: number | null;
      readonly vertices: readonly ReadVertex[];
    };

/** A record of the ENTITIES section: its kind and its groups. */
export interface ReadEntity {
  readonly kind: string;
  readonly groups: readonly ReadGroup[];
}

export interface ReadCut {
  /** The values of each header variable, such as `$EXTMIN`, by group code. */
  readonly variables: ReadonlyMap<string, ReadonlyMap<number, string>>;
  readonly sections: readonly string[];
  readonly curves: readonly ReadCurve[];
  /** Entities that are not closed curves, vertices of polylines not among them. */
  readonly others: readonly ReadEntity[];
  readonly endsWithEof: boolean;
  /** What is wrong with the text as such; if anything is, the numbers may not be read. */
  readonly faults: readonly string[];
}

/** Reads a cut file of either release, knowing the format and nothing of the program that wrote it. */
export function readCut(text: string): ReadCut {
  const { groups, faults } = readGroups(text);
  const sections = sectionsOf(groups);
  const entities = recordsOf(sections.get("ENTITIES") ?? []);
  const last = groups.at(-1);
  return {
    variables: variablesOf(sections.get("HEADER") ?? []),
    sections: [...sections.keys()],
    curves: curvesOf(entities),
    others: entities.filter(({ kind }) => !CURVE_KINDS.has(kind)),
    endsWithEof: last?.code === 0 && last.text === "EOF",
    faults,
  };
}

const CURVE_KINDS: ReadonlySet<string> = new Set(["CIRCLE", "LWPOLYLINE", "POLYLINE", "VERTEX", "SEQEND"]);

function sectionsOf(groups: readonly ReadGroup[]): Map<string, ReadGroup[]> {
  const sections = new Map<string, ReadGroup[]>();
  let current: ReadGroup[] | null = null;
  for (const [index, group] of groups.entries()) {
    const previous = groups[index - 1];
    if (group.code === 2 && previous?.code === 0 && previous.text === "SECTION") {
      current = [];
      sections.set(group.text, current);
    } else if (group.code === 0 && group.text === "ENDSEC") current = null;
    else current?.push(group);
  }
  return sections;
}

function variablesOf(groups: readonly ReadGroup[]): Map<string, Map<number, string>> {
  const variables = new Map<string, Map<number, string>>();
  let current: Map<number, string> | undefined;
  for (const { code, text } of groups) {
    if (code === 9) {
      current = new Map();
      variables.set(text, current);
    } else current?.set(code, text);
  }
  return variables;
}

function recordsOf(groups: readonly ReadGroup[]): ReadEntity[] {
  const records: { kind: string; groups: ReadGroup[] }[] = [];
  for (const group of groups) {
    if (group.code === 0) records.push({ kind: group.text, groups: [] });
    else records.at(-1)?.groups.push(group);
  }
  return records;
}

function curvesOf(entities: readonly ReadEntity[]): ReadCurve[] {
  return entities.flatMap((entity, index): ReadCurve[] => {
    if (entity.kind === "CIRCLE") return [circle(entity)];
    if (entity.kind === "LWPOLYLINE") return [lightPolyline(entity)];
    if (entity.kind === "POLYLINE") return [oldPolyline(entity, entities.slice(index + 1))];
    return [];
  });
}

function circle(entity: ReadEntity): ReadCurve {
  const centre = { x: numberOf(entity, 10), y: numberOf(entity, 20) };
  return { kind: "circle", layer: layerOf(entity), centre, radius: numberOf(entity, 40) };
}

function lightPolyline(entity: ReadEntity): ReadCurve {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const { code, text } of entity.groups) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ x: Number(text), y: Number.NaN, bulge: 0 });
    else if (last && code === 20) last.y = Number(text);
    else if (last && code === 42) last.bulge = Number(text);
  }
  const closed = isClosed(entity);
  return { kind: "polyline", layer: layerOf(entity), closed, statedCount: numberOf(entity, 90), vertices };
}

/** The vertices are the records that follow, up to SEQEND. */
function oldPolyline(entity: ReadEntity, following: readonly ReadEntity[]): ReadCurve {
  const end = following.findIndex(({ kind }) => kind !== "VERTEX");
  const vertices = following.slice(0, end).map((vertex): ReadVertex => {
    const bulge = textOf(vertex, 42);
    return {
      x: numberOf(vertex, 10),
      y: numberOf(vertex, 20),
      bulge: bulge === undefined ? 0 : Number(bulge),
    };
  });
  return { kind: "polyline", layer: layerOf(entity), closed: isClosed(entity), statedCount: null, vertices };
}

/** Bit 1 of the flags. */
function isClosed(entity: ReadEntity): boolean {
  return (numberOf(entity, 70) & 1) === 1;
}

export function layerOf(entity: ReadEntity): string {
  return textOf(entity, 8) ?? "";
}

export function numberOf(entity: ReadEntity, code: number): number {
  return Number(textOf(entity, code) ?? Number.NaN);
}

function textOf({ groups }: ReadEntity, code: number): string | undefined {
  return groups.find((group) => group.code === code)?.text;
}

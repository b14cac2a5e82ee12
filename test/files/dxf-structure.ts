/**
 * What strict readers ask of a drawing of release 2000 or 12, checked group by group. Source: ezdxf's documentation
 * of the file structure.
 */
export interface TestGroup {
  readonly code: number;
  readonly value: string;
}

interface Entry {
  readonly kind: string;
  readonly groups: TestGroup[];
}

export interface Structure {
  readonly sections: readonly string[];
  readonly faults: readonly string[];
  readonly entries: ReadonlyMap<string, readonly Entry[]>;
  readonly variables: ReadonlyMap<string, readonly string[]>;
}

/** Two lines a group; anything else throws. */
export function groupsIn(text: string): TestGroup[] {
  const lines = text.split("\n");
  if (lines.pop() !== "" || lines.length % 2 !== 0) throw new Error("not whole groups");
  return Array.from({ length: lines.length / 2 }, (_, i) => {
    const code = lines[2 * i] ?? "";
    if (!/^ {0,2}\d+$/.test(code)) throw new Error(`not a group code: ${code}`);
    return { code: Number(code), value: lines[2 * i + 1] ?? "" };
  });
}

export function structureOf(text: string): Structure {
  const groups = groupsIn(text).filter(({ code }) => code !== 999);
  const sections: string[] = [];
  const entries = new Map<string, Entry[]>();
  const faults: string[] = [];
  let open: Entry[] | null = null;
  const variables: TestGroup[] = [];
  for (const [i, group] of groups.entries()) {
    const previous = groups[i - 1];
    if (previous?.code === 0 && previous.value === "SECTION") {
      sections.push(group.value);
      open = [];
      entries.set(group.value, open);
    } else if (group.code === 0 && group.value === "SECTION") {
      if (open) faults.push(`section ${group.value} inside another`);
    } else if (group.code === 0 && group.value === "ENDSEC") open = null;
    else if (group.code === 0 && group.value === "EOF") {
      if (i !== groups.length - 1) faults.push("EOF is not last");
    } else if (!open) faults.push(`${group.code} ${group.value} between sections`);
    else if (group.code === 0) open.push({ kind: group.value, groups: [] });
    else if (sections.at(-1) === "HEADER") variables.push(group);
    else {
      const entry = open.at(-1);
      if (entry) entry.groups.push(group);
      else faults.push(`${group.code} before the first record of a section`);
    }
  }
  if (groups.at(-1)?.value !== "EOF") faults.push("there is no EOF");
  return { sections, faults, entries, variables: variablesOf(variables) };
}

function variablesOf(groups: readonly TestGroup[]): Map<string, string[]> {
  const variables = new Map<string, string[]>();
  let current: string[] = [];
  for (const { code, value } of groups) {
    if (code === 9) {
      current = [];
      variables.set(value, current);
    } else current.push(value);
  }
  return variables;
}

const all = (entry: Entry, code: number) => entry.groups.filter((g) => g.code === code).map((g) => g.value);
const first = (entry: Entry, code: number) => all(entry, code)[0];

const TABLES_2000 = ["VPORT", "LTYPE", "LAYER", "STYLE", "VIEW", "UCS", "APPID", "DIMSTYLE", "BLOCK_RECORD"];

/** Subclass markers of each kind of record. */
const MARKERS: Readonly<Record<string, readonly string[]>> = {
  LINE: ["AcDbEntity", "AcDbLine"],
  CIRCLE: ["AcDbEntity", "AcDbCircle"],
  LWPOLYLINE: ["AcDbEntity", "AcDbPolyline"],
  TEXT: ["AcDbEntity", "AcDbText", "AcDbText"],
  BLOCK: ["AcDbEntity", "AcDbBlockBegin"],
  ENDBLK: ["AcDbEntity", "AcDbBlockEnd"],
  VPORT: ["AcDbSymbolTableRecord", "AcDbViewportTableRecord"],
  LTYPE: ["AcDbSymbolTableRecord", "AcDbLinetypeTableRecord"],
  LAYER: ["AcDbSymbolTableRecord", "AcDbLayerTableRecord"],
  STYLE: ["AcDbSymbolTableRecord", "AcDbTextStyleTableRecord"],
  APPID: ["AcDbSymbolTableRecord", "AcDbRegAppTableRecord"],
  DIMSTYLE: ["AcDbSymbolTableRecord", "AcDbDimStyleTableRecord"],
  BLOCK_RECORD: ["AcDbSymbolTableRecord", "AcDbBlockTableRecord"],
  DICTIONARY: ["AcDbDictionary"],
  ACDBDICTIONARYWDFLT: ["AcDbDictionary", "AcDbDictionaryWithDefault"],
  ACDBPLACEHOLDER: [],
};

/** Everything wrong with the structure of a release 2000 drawing. */
export function faultsOf2000(text: string): string[] {
  const { sections, faults, entries, variables } = structureOf(text);
  const found = [...faults];
  if (sections.join() !== "HEADER,CLASSES,TABLES,BLOCKS,ENTITIES,OBJECTS") found.push(`sections ${sections}`);
  const records = ["TABLES", "BLOCKS", "ENTITIES", "OBJECTS"].flatMap((name) => entries.get(name) ?? []);
  found.push(...tableFaults(entries.get("TABLES") ?? []));
  found.push(...handleFaults(records, variables.get("$HANDSEED")?.[0] ?? ""));
  found.push(...records.flatMap(markerFaults));
  found.push(...(entries.get("ENTITIES") ?? []).flatMap(polylineFaults));
  found.push(...objectFaults(entries.get("OBJECTS") ?? []));
  return found;
}

function tableFaults(records: readonly Entry[]): string[] {
  const faults: string[] = [];
  const tables = records.filter(({ kind }) => kind === "TABLE").map((table) => first(table, 2));
  if (tables.join() !== TABLES_2000.join()) faults.push(`tables ${tables}`);
  for (const [i, table] of records.entries()) {
    if (table.kind !== "TABLE") continue;
    const end = records.findIndex(({ kind }, k) => k > i && kind === "ENDTAB");
    if (Number(first(table, 70)) !== end - i - 1) faults.push(`table ${first(table, 2)} counts wrongly`);
  }
  const names = (kind: string) =>
    records.filter((r) => r.kind === kind).flatMap((r) => all(r, 2).slice(0, 1));
  const required: [string, string[]][] = [
    ["VPORT", ["*Active"]],
    ["LTYPE", ["ByBlock", "ByLayer", "Continuous"]],
    ["LAYER", ["0", "CUT_OUTER", "CUT_INNER", "MARK"]],
    ["STYLE", ["Standard"]],
    ["APPID", ["ACAD"]],
    ["DIMSTYLE", ["Standard"]],
    ["BLOCK_RECORD", ["*Model_Space", "*Paper_Space"]],
  ];
  for (const [kind, wanted] of required)
    if (names(kind).join() !== wanted.join()) faults.push(`${kind} has ${names(kind)}`);
  return faults;
}

/** Handles unique and below the seed; owners and pointers lead somewhere. */
function handleFaults(records: readonly Entry[], seed: string): string[] {
  const faults: string[] = [];
  const handles = new Set<number>();
  for (const record of records) {
    if (record.kind === "ENDTAB") continue;
    const text = first(record, record.kind === "DIMSTYLE" ? 105 : 5) ?? "";
    const handle = Number.parseInt(text, 16);
    if (!/^[0-9A-F]+$/.test(text) || handle === 0) faults.push(`${record.kind} has no handle`);
    if (handles.has(handle)) faults.push(`handle ${text} stands twice`);
    if (!(handle < Number.parseInt(seed, 16))) faults.push(`handle ${text} is not below the seed ${seed}`);
    handles.add(handle);
  }
  const known = (text: string) => text === "0" || handles.has(Number.parseInt(text, 16));
  for (const record of records) {
    if (record.kind === "ENDTAB") continue;
    if (all(record, 330).length !== 1) faults.push(`${record.kind} has not one owner`);
    for (const code of [330, 340, 350, 390])
      for (const target of all(record, code))
        if (!known(target)) faults.push(`${record.kind} ${code} to ${target}`);
  }
  return faults;
}

function markerFaults(record: Entry): string[] {
  const found = all(record, 100).join();
  if (record.kind === "ENDTAB") return [];
  if (record.kind === "TABLE") {
    const wanted = first(record, 2) === "DIMSTYLE" ? "AcDbSymbolTable,AcDbDimStyleTable" : "AcDbSymbolTable";
    return found === wanted ? [] : [`table markers ${found}`];
  }
  return MARKERS[record.kind]?.join() === found ? [] : [`${record.kind} has the markers ${found}`];
}

function polylineFaults(entity: Entry): string[] {
  if (entity.kind !== "LWPOLYLINE") return [];
  const codes = entity.groups.map(({ code }) => code);
  const count = Number(first(entity, 90));
  const wanted = [5, 330, 100, 8, 100, 90, 70, ...Array.from({ length: count }, () => [10, 20, 42]).flat()];
  const faults = codes.join() === wanted.join() ? [] : ["polyline groups out of order"];
  if (first(entity, 70) !== "1") faults.push("polyline not closed");
  return faults;
}

function objectFaults(objects: readonly Entry[]): string[] {
  const [root] = objects;
  if (root?.kind !== "DICTIONARY" || first(root, 330) !== "0") return ["the root dictionary is not first"];
  return all(root, 3).includes("ACAD_GROUP") ? [] : ["the root dictionary has no ACAD_GROUP"];
}

/** Everything wrong with the structure of a release 12 drawing. */
export function faultsOfR12(text: string): string[] {
  const { sections, faults, entries } = structureOf(text);
  const found = [...faults];
  if (sections.join() !== "HEADER,TABLES,BLOCKS,ENTITIES") found.push(`sections ${sections}`);
  const tables = entries.get("TABLES") ?? [];
  const entities = entries.get("ENTITIES") ?? [];
  for (const record of [...tables, ...entities]) {
    if (all(record, 100).length > 0) found.push(`${record.kind} has a subclass marker`);
    if (all(record, 330).length > 0) found.push(`${record.kind} has an owner`);
  }
  const layers = tables.filter(({ kind }) => kind === "LAYER").map((layer) => first(layer, 2) ?? "");
  if (layers.some((name) => !/^[A-Z0-9$_-]{1,31}$/.test(name))) found.push(`layer names ${layers}`);
  let inside = false;
  for (const entity of entities) {
    if (!layers.includes(first(entity, 8) ?? "")) found.push(`${entity.kind} on layer ${first(entity, 8)}`);
    if (!["POLYLINE", "VERTEX", "SEQEND", "CIRCLE", "LINE", "TEXT"].includes(entity.kind))
      found.push(entity.kind);
    if (inside !== ["VERTEX", "SEQEND"].includes(entity.kind)) found.push(`${entity.kind} out of place`);
    inside = entity.kind === "POLYLINE" || entity.kind === "VERTEX";
    if (entity.kind === "POLYLINE" && `${all(entity, 66)} ${all(entity, 70)}` !== "1 1")
      found.push("polyline flags");
    if (entity.kind === "VERTEX" && all(entity, 42).length !== 1) found.push("vertex without a bulge");
  }
  if (inside) found.push("a polyline does not end");
  return found;
}

import { type Section, sectionOf } from "../figures/section.ts";
import type { Loop, Outline } from "../outline/segment.ts";
import { type Bounds, unitedBounds } from "../outline/segment-geometry.ts";
import { type DrawingUnit, mmPerUnit } from "./drawing-unit.ts";
import { CUT_INNER, CUT_OUTER } from "./layers.ts";
import { structureFaults } from "./verify/cut-structure.ts";
import { type CurveMeasure, measureCurve } from "./verify/measure-curve.ts";
import { misfitFaults, misfitOf } from "./verify/model-misfit.ts";
import { type ReadCurve, readCut } from "./verify/read-cut.ts";

/** Area, centroid and extents in the file may differ from the model's by this share. */
const RELATIVE = 1e-9;

/** What a cut file resolves, in mm: coordinates are rounded, and pieces shorter than this left out. */
const RESOLUTION_MM = 1e-9;

/** More would bury the first, which most often is the cause of the rest. */
const MOST_FAULTS = 12;

/**
 * Reads a cut file again, before it is handed out, and compares it with the outline it is to be: every curve closed
 * and on its layer, every number finite, nothing doubled, open or of no length, the unit as asked for, and area,
 * centroid, length and extents the model's, for each loop and for the part as a whole.
 * @param units what the file is to be in
 * @returns what is wrong, in words; nothing if the file is fine
 */
export function verifyCut(outline: Outline, dxfText: string, units: DrawingUnit): string[] {
  const cut = readCut(dxfText);
  const structure = [...cut.faults, ...structureFaults(cut, units)];
  // Numbers that cannot be read would only be reported over again as areas that differ.
  const faults =
    cut.faults.length > 0 ? structure : [...structure, ...shapeFaults(outline, cut.curves, units)];
  if (faults.length <= MOST_FAULTS) return faults;
  return [...faults.slice(0, MOST_FAULTS), `${faults.length - MOST_FAULTS} more faults`];
}

function shapeFaults(outline: Outline, curves: readonly ReadCurve[], units: DrawingUnit): string[] {
  const scale = mmPerUnit(units);
  const measures = (layer: string) =>
    curves.filter((curve) => curve.layer === layer).map((curve) => inMm(measureCurve(curve), scale));
  const outer = measures(CUT_OUTER);
  const inner = measures(CUT_INNER);
  return [
    ...misfitFaults([outline.outer, ...outline.inner]),
    ...loopFaults([outline.outer], outer, CUT_OUTER),
    ...loopFaults(outline.inner, inner, CUT_INNER),
    ...wholeFaults(outline, outer, inner),
  ];
}

function loopFaults(loops: readonly Loop[], measures: readonly CurveMeasure[], layer: string): string[] {
  if (loops.length !== measures.length)
    return [
      `${layer} has ${count(measures.length, "curve")} where the outline has ${count(loops.length, "loop")}`,
    ];
  return loops.flatMap((loop, index) => {
    const measure = measures[index];
    const section = sectionOf({ outer: loop, inner: [] });
    return measure ? differences(section, misfitOf([loop]), measure, `curve ${index + 1} on ${layer}`) : [];
  });
}

/** The part as a whole: outer curves less inner ones. */
function wholeFaults(
  outline: Outline,
  outer: readonly CurveMeasure[],
  inner: readonly CurveMeasure[],
): string[] {
  const signed = [...outer.map((m) => [m, 1] as const), ...inner.map((m) => [m, -1] as const)];
  const sum = (value: (m: CurveMeasure) => number) => signed.reduce((s, [m, sign]) => s + sign * value(m), 0);
  const first = outer[0];
  if (!first) return [];
  const area = sum((m) => m.area);
  const whole: CurveMeasure = {
    area,
    centroid: { x: sum((m) => m.area * m.centroid.x) / area, y: sum((m) => m.area * m.centroid.y) / area },
    length: [...outer, ...inner].reduce((length, m) => length + m.length, 0),
    bounds: outer.map((m) => m.bounds).reduce(unitedBounds, first.bounds),
  };
  return differences(sectionOf(outline), misfitOf([outline.outer, ...outline.inner]), whole, "the part");
}

/** Where a measure of the file is not that of the model, both in mm. */
function differences(section: Section, misfit: number, measure: CurveMeasure, what: string): string[] {
  const [minX, minY, maxX, maxY] = section.boundsMm;
  const size = Math.hypot(maxX - minX, maxY - minY);
  const finest = RESOLUTION_MM + misfit;
  const lengthSlack = RELATIVE * size + finest;
  const areaSlack = RELATIVE * Math.abs(section.areaMm2) + finest * section.perimeterMm;
  const perimeterSlack = RELATIVE * section.perimeterMm + finest;
  const { centroidMm: centroid } = section;
  const drawn: Bounds = { minX, minY, maxX, maxY };
  return [
    differ(`the area of ${what}`, measure.area, Math.abs(section.areaMm2), areaSlack, "mm²"),
    differ(`the length of ${what}`, measure.length, section.perimeterMm, perimeterSlack, "mm"),
    centroid && differ(`the centroid's x of ${what}`, measure.centroid.x, centroid.x, lengthSlack, "mm"),
    centroid && differ(`the centroid's y of ${what}`, measure.centroid.y, centroid.y, lengthSlack, "mm"),
    ...BOUNDS.map(([key, name]) =>
      differ(`${name} of ${what}`, measure.bounds[key], drawn[key], lengthSlack, "mm"),
    ),
  ].filter((fault) => fault !== null);
}

const BOUNDS = [
  ["minX", "the least x"],
  ["minY", "the least y"],
  ["maxX", "the greatest x"],
  ["maxY", "the greatest y"],
] as const;

/** NaN differs from everything. */
function differ(what: string, inFile: number, inModel: number, slack: number, unit: string): string | null {
  if (Math.abs(inFile - inModel) <= slack) return null;
  return `${what} is ${inFile} ${unit} in the file and ${inModel} ${unit} in the outline`;
}

function inMm({ area, centroid, length, bounds }: CurveMeasure, scale: number): CurveMeasure {
  return {
    area: area * scale * scale,
    centroid: { x: centroid.x * scale, y: centroid.y * scale },
    length: length * scale,
    bounds: {
      minX: bounds.minX * scale,
      minY: bounds.minY * scale,
      maxX: bounds.maxX * scale,
      maxY: bounds.maxY * scale,
    },
  };
}

function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? "" : "s"}`;
}

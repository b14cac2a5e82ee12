/** A made-up view for looking at the page and for its tests: every part of the protocol is filled. */

import type {
  AheadDrawing,
  BitePoint,
  Drawing,
  DrawnLoop,
  DrawnSegment,
  PlanePoint,
  ShownBite,
  View,
} from "../../extension/preview/protocol.ts";
import { presentMeasure, type UnitSystem } from "../../geometry/figures/present.ts";
import { CAUTIONS } from "../../geometry/files/cautions.ts";
import type { ReportRow, ReportSummary } from "../../geometry/files/report.ts";

type Pair = readonly [x: number, y: number];

const at = ([x, y]: Pair): PlanePoint => ({ x, y });

/** Corners with an arc between where a radius is given (positive: turning left). */
function loop(
  kind: DrawnLoop["kind"],
  corners: readonly (readonly [Pair, number?])[],
  start: number,
): DrawnLoop {
  const segments = corners.map(([from, radius], index): DrawnSegment => {
    const [to] = corners[(index + 1) % corners.length] ?? [from];
    const source = { start: start + index * 20, end: start + index * 20 + 18 };
    if (radius === undefined) return { kind: "line", from: at(from), to: at(to), source };
    return { ...arcBetween(at(from), at(to), radius), source };
  });
  return { kind, segments };
}

function arcBetween(from: PlanePoint, to: PlanePoint, radius: number) {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const rise = Math.sqrt(radius ** 2 - (chord / 2) ** 2) * Math.sign(radius);
  const centre = {
    x: (from.x + to.x) / 2 - ((to.y - from.y) / chord) * rise,
    y: (from.y + to.y) / 2 + ((to.x - from.x) / chord) * rise,
  };
  const sweepRad = 2 * Math.asin(chord / 2 / Math.abs(radius)) * Math.sign(radius);
  const startRad = Math.atan2(from.y - centre.y, from.x - centre.x);
  return { kind: "arc" as const, from, to, centre, radiusMm: Math.abs(radius), startRad, sweepRad };
}

function circle(kind: DrawnLoop["kind"], centre: Pair, diameter: number, start: number): DrawnLoop {
  const middle = at(centre);
  const from = { x: middle.x + diameter / 2, y: middle.y };
  const source = { start, end: start + 30 };
  const arc = { centre: middle, radiusMm: diameter / 2, startRad: 0, sweepRad: -2 * Math.PI, source };
  return { kind, segments: [{ kind: "arc", from, to: from, ...arc }] };
}

/** A one-tooth bar with its tail at a place. */
export function bar(tail: number): DrawnLoop[] {
  return [
    loop(
      "outer",
      [
        [[130, 0]],
        [[34, 24], 30],
        [[24, 26]],
        [[12 - tail, 26], 12],
        [[-tail, 14]],
        [[-tail, -14], 12],
        [[12 - tail, -26]],
        [[20, -26], -160],
        [[124, -22]],
      ],
      200,
    ),
    circle("bore", [0, 0], 22, 500),
    circle("hole", [42, 0], 10.5, 540),
    circle("hole", [-42, 0], 10.5, 580),
    loop("slot", [[[-78, 5], 5], [[-78, -5]], [[-62, -5], 5], [[-62, 5]]], 620),
  ];
}

/** A curve with a knee: clean up to the speed where the tail comes first. */
export const CURVE: readonly BitePoint[] = Array.from({ length: 40 }, (_, index) => {
  const closingMPerS = 0.5 + (5.5 * index) / 39;
  const idealMm = closingMPerS / 70e-3;
  const past = Math.max(0, closingMPerS - 3.1);
  return {
    closingMPerS,
    idealMm,
    maxMm: idealMm - 9 * past,
    meanMm: idealMm / 2 - 4 * past,
    tenthMm: idealMm / 10,
    ninetiethMm: 0.9 * idealMm - 8 * past,
    squareShare: Math.max(0.2, 1 - past / 4),
    toothShare: Math.max(0.4, 1 - past / 5),
    passedShare: 0,
  };
});

export const BITE: ShownBite = {
  target: { kind: "edge", radiusMm: 0, offsetMm: 0 },
  direction: "ccw",
  radPerS: 439.8,
  squareStrikeRad: 0.6109,
  curve: CURVE,
  cleanMPerS: 3.1,
  teethOnlyMPerS: 4.2,
};

function row(key: string, label: string, value: ReportRow["value"], meaning: string): ReportRow {
  return { key, label, value, meaning };
}

export function madeUpReport(units: UnitSystem, variant: string | null = null): ReportSummary {
  const show = (measure: Parameters<typeof presentMeasure>[0], value: number) =>
    presentMeasure(measure, value, units);
  return {
    title: "Wattlebird one-tooth",
    variant,
    subtitle: `${units === "mm" ? "12 mm" : "0.4724 in"} plate · Wear steel, 450 HBW · 4200 rpm ccw`,
    sections: [
      {
        group: "shape",
        title: "Shape",
        rows: [
          row("areaMm2", "Area", show("area", 10412.6), "Area of the plate that is left, holes taken off."),
          row("perimeterMm", "Cut length", show("length", 702.31), "Length of all edges to be cut."),
          row("maxRadiusMm", "Largest radius", show("length", 130), "From the spin axis to the tip circle."),
        ],
      },
      {
        group: "mass",
        title: "Mass and balance",
        rows: [
          row("massKg", "Mass", show("mass", 1.1524), "Area × thickness × density."),
          row("imbalanceGMm", "Imbalance", show("imbalance", 126.4), "Mass × distance of the centroid."),
          row("imbalanceDeg", "Heavy side", show("angle", 187.5), "Counter-clockwise from +x."),
          row("balanceGrade", "Balance", show("grade", 48.2), "Balance grade of ISO 21940-11."),
        ],
      },
      {
        group: "spin",
        title: "Spin",
        rows: [
          row("tipSpeedMPerS", "Tip speed", show("speed", 57.18), "Spin × largest radius."),
          row("energyJ", "Energy", show("energy", 612.3), "Kinetic energy of the bar alone, ½·I·ω²."),
        ],
      },
      {
        group: "bite",
        title: "Bite",
        rows: [
          row(
            "cleanBiteMPerS",
            "Clean bite up to",
            show("speed", 3.1),
            "Lowest speed at which something else strikes.",
          ),
        ],
      },
    ],
    requirements: [
      { label: "Mass", value: "1.152 kg", limit: "at most 1.6 kg", holds: true },
      { label: "Balance", value: "G48.2", limit: "at most G40", holds: false },
    ],
  };
}

/** The view; parts are replaced by those given. */
export function madeUpView(parts: Partial<View> = {}): View {
  return {
    version: 1,
    documentUri: "file:///arena/wattlebird.bar",
    fileName: "wattlebird.bar",
    variant: null,
    variants: ["long tail", "practice speed"],
    stale: false,
    drawing: {
      loops: bar(96),
      boundsMm: [-96, -26, 130, 26],
      maxRadiusMm: 130,
      centroid: { x: -6.2, y: -0.8 },
      imbalanceDeg: 187.5,
      balanced: false,
      finelyBalanced: false,
      imbalanceShare: 1.2,
      tips: [{ x: 130, y: 0 }],
      direction: "ccw",
      handles: [
        { id: 0, at: { x: 130, y: 0 }, source: { start: 205, end: 217 }, movesX: true, movesY: true },
        { id: 1, at: { x: 20, y: -26 }, source: { start: 340, end: 352 }, movesX: true, movesY: true },
        { id: 2, at: { x: -96, y: 14 }, source: { start: 290, end: 296 }, movesX: true, movesY: false },
        { id: 3, at: { x: 42, y: 0 }, source: { start: 545, end: 557 }, movesX: true, movesY: true },
        { id: 4, at: { x: 24, y: 26 }, source: { start: 245, end: 257 }, movesX: false, movesY: false },
      ],
    },
    description: {
      mm: "Wattlebird one-tooth: 12 mm plate of wear steel. It measures 226 × 52 mm and reaches 130 mm.",
      in: "Wattlebird one-tooth: 0.4724 in plate of wear steel. It measures 8.8976 × 2.0472 in.",
    },
    ghosts: [{ variant: "long tail", loops: bar(112) }],
    reports: { mm: madeUpReport("mm"), in: madeUpReport("in") },
    bite: BITE,
    problems: [
      {
        severity: "warning",
        code: "thin-bridge",
        message: "Only 7.4 mm of metal between this slot and the edge; the plate is 12 mm thick.",
        line: 27,
        source: { start: 620, end: 650 },
        at: { x: -70, y: 0 },
      },
      {
        severity: "error",
        code: "imbalance-over-grade",
        message: "Balance is G48.2, over the limit of G40 by G8.2 (20 %).",
        line: 36,
        source: { start: 800, end: 825 },
        at: { x: -6.2, y: -0.8 },
      },
      {
        severity: "information",
        code: "unused-name",
        message: "Nothing uses `waist`.",
        line: 9,
        source: { start: 90, end: 95 },
        at: null,
      },
    ],
    cautions: CAUTIONS,
    ...parts,
  };
}

/** The drawing of a view that has one, and the same without its points. */
export function drawingOfView({ drawing }: View): { readonly whole: Drawing; readonly ahead: AheadDrawing } {
  if (!drawing) throw new Error("the view has no drawing");
  const { handles: _, ...ahead } = drawing;
  return { whole: drawing, ahead };
}

/**
 * The catalogue of figures: the one list from which the JSON, the report, the preview and the comparison are made.
 * A new figure is a new entry here, in the order it is to be read.
 */
import type { BarPart, BitePoint } from "../bite/bite.ts";
import type { Dimension } from "../language/quantity.ts";
import type { Assessment } from "./assessment.ts";
import { balanceGradeMmPerS, permissibleGMm } from "./balance.ts";
import { type BudgetSums, budgetSums } from "./budget.ts";
import type { Figure, FigureGroup, FigureValue, Requirable } from "./figure.ts";
import { FIGURE_GROUPS } from "./figure.ts";
import { OPPONENT_FIGURES } from "./opponent-entries.ts";
import { ROBOT_FIGURES } from "./robot-entries.ts";
import { angularMomentumKgM2PerS, energyJ, imbalanceForceN, tipSpeedMPerS } from "./spin.ts";

/** The grades whose permissible residual is always told (ISO 21940-11: fans and machinery; crushers; drive shafts). */
export const TOLD_GRADES = { "G6.3": 6.3, G16: 16, G40: 40 } as const;

const NONE: Dimension = { length: 0, mass: 0, time: 0, current: 0, angle: 0 };
const LENGTH: Dimension = { ...NONE, length: 1 };
const SPEED: Dimension = { ...NONE, length: 1, time: -1 };

function requirable(
  name: string,
  example: string,
  dimension: Dimension,
  baseFactor: number,
  takes: { grade?: boolean; speed?: boolean } = {},
): Requirable {
  return {
    name,
    example,
    dimension,
    baseFactor,
    takesGrade: takes.grade ?? false,
    takesSpeed: takes.speed ?? false,
  };
}

const SHAPE: readonly Figure[] = [
  {
    group: "shape",
    key: "areaMm2",
    label: "Area",
    meaning: "Area of the plate that is left, holes taken off.",
    measure: "area",
    better: null,
    requirable: null,
    of: ({ section }) => section?.areaMm2 ?? null,
  },
  {
    group: "shape",
    key: "perimeterMm",
    label: "Cut length",
    meaning: "Length of all edges to be cut, holes included.",
    measure: "length",
    better: "less",
    requirable: null,
    of: ({ section }) => section?.perimeterMm ?? null,
  },
  {
    group: "shape",
    key: "centroidMm",
    label: "Centroid",
    meaning: "Where the plate would balance on a point, from the spin axis.",
    measure: "point",
    better: null,
    requirable: null,
    of: ({ section }) => (section?.centroidMm ? [section.centroidMm.x, section.centroidMm.y] : null),
  },
  {
    group: "shape",
    key: "maxRadiusMm",
    label: "Largest radius",
    meaning: "From the spin axis to the farthest point of the outline: the tip circle.",
    measure: "length",
    better: null,
    requirable: requirable("max_radius", "150 mm", LENGTH, 1),
    of: ({ section }) => section?.maxRadiusMm ?? null,
  },
  {
    group: "shape",
    key: "boundsMm",
    label: "Extent",
    meaning: "The upright rectangle around the outline: least x, least y, greatest x, greatest y.",
    measure: "bounds",
    better: null,
    requirable: null,
    of: ({ section }) => section?.boundsMm ?? null,
  },
  {
    group: "shape",
    key: "secondMomentsMm4",
    label: "Second moments",
    meaning: "Of area about the spin axis: xx = ∫y² dA, yy = ∫x² dA, xy = ∫xy dA.",
    measure: "secondMoments",
    better: null,
    requirable: null,
    of: ({ section }) => (section ? { ...section.secondMomentsMm4 } : null),
  },
  {
    group: "shape",
    key: "segments",
    label: "Segments",
    meaning: "Lines and arcs of all loops.",
    measure: "count",
    better: "less",
    requirable: null,
    of: ({ outline }) => (outline ? segmentCount(outline) : null),
  },
  {
    group: "shape",
    key: "holes",
    label: "Holes",
    meaning: "Inner loops: bore, holes, slots and cutouts.",
    measure: "count",
    better: null,
    requirable: null,
    of: ({ outline }) => outline?.inner.length ?? null,
  },
];

const MASS: readonly Figure[] = [
  {
    group: "mass",
    key: "massKg",
    label: "Mass",
    meaning: "Area × thickness × density.",
    measure: "mass",
    better: "less",
    requirable: requirable("mass", "1.6 kg", { ...NONE, mass: 1 }, 1),
    of: ({ mass }) => mass?.massKg ?? null,
  },
  {
    group: "mass",
    key: "inertiaKgM2",
    label: "Moment of inertia",
    meaning: "About the spin axis.",
    measure: "inertia",
    better: "more",
    requirable: requirable("inertia", "0.02 kg*m^2", { ...NONE, mass: 1, length: 2 }, 1e6),
    of: ({ mass }) => mass?.inertiaKgM2 ?? null,
  },
  {
    group: "mass",
    key: "imbalanceGMm",
    label: "Imbalance",
    meaning: "Mass × distance of the centroid from the spin axis.",
    measure: "imbalance",
    better: "less",
    requirable: requirable("imbalance", "100 g*mm", { ...NONE, mass: 1, length: 1 }, 1e-3),
    of: ({ mass }) => mass?.imbalanceGMm ?? null,
  },
  {
    group: "mass",
    key: "imbalanceDeg",
    label: "Heavy side",
    meaning: "Direction of the heavy side, counter-clockwise from +x; unknown for a balanced bar.",
    measure: "angle",
    better: null,
    requirable: null,
    of: ({ mass }) => mass?.imbalanceDeg ?? null,
  },
  {
    group: "mass",
    key: "eccentricityMm",
    label: "Eccentricity",
    meaning: "Distance of the centroid from the spin axis.",
    measure: "length",
    better: "less",
    requirable: null,
    of: ({ mass }) => mass?.eccentricityMm ?? null,
  },
  {
    group: "mass",
    key: "balanceGrade",
    label: "Balance",
    meaning: "Balance grade of ISO 21940-11: eccentricity × spin, in mm/s. Smaller is smoother.",
    measure: "grade",
    better: "less",
    requirable: requirable("balance", "G40", SPEED, 1, { grade: true }),
    of: ({ mass, design }) =>
      mass && design.spin ? balanceGradeMmPerS(mass.eccentricityMm, design.spin.radPerS) : null,
  },
  {
    group: "mass",
    key: "permissibleGMm",
    label: "Permissible imbalance",
    meaning: "The residual imbalance that each balance grade allows at this mass and spin (ISO 21940-11).",
    measure: "permissible",
    better: null,
    requirable: null,
    of: permissible,
  },
];

const SPIN: readonly Figure[] = [
  {
    group: "spin",
    key: "rpm",
    label: "Spin",
    meaning: "The spin of the file, best the one measured at the event.",
    measure: "rotation",
    better: null,
    requirable: null,
    of: ({ design }) => design.spin?.rpm ?? null,
  },
  {
    group: "spin",
    key: "tipSpeedMPerS",
    label: "Tip speed",
    meaning: "Spin × largest radius.",
    measure: "speed",
    better: "more",
    requirable: requirable("tip_speed", "90 m/s", SPEED, 1e3),
    of: ({ section, design }) =>
      section && design.spin ? tipSpeedMPerS(section.maxRadiusMm, design.spin.radPerS) : null,
  },
  {
    group: "spin",
    key: "energyJ",
    label: "Energy",
    meaning: "Kinetic energy of the bar alone, ½·I·ω².",
    measure: "energy",
    better: "more",
    requirable: requirable("energy", "2000 J", { ...NONE, mass: 1, length: 2, time: -2 }, 1e6),
    of: ({ mass, design }) => (mass && design.spin ? energyJ(mass.inertiaKgM2, design.spin.radPerS) : null),
  },
  {
    group: "spin",
    key: "angularMomentumKgM2PerS",
    label: "Angular momentum",
    meaning: "I·ω: what the robot has to turn against.",
    measure: "angularMomentum",
    better: null,
    requirable: null,
    of: ({ mass, design }) =>
      mass && design.spin ? angularMomentumKgM2PerS(mass.inertiaKgM2, design.spin.radPerS) : null,
  },
  {
    group: "spin",
    key: "imbalanceForceN",
    label: "Imbalance force",
    meaning: "The force that turns with the bar and shakes the axle, U·ω².",
    measure: "force",
    better: "less",
    requirable: null,
    of: ({ mass, design }) =>
      mass && design.spin ? imbalanceForceN(mass.imbalanceGMm, design.spin.radPerS) : null,
  },
];

const BITE: readonly Figure[] = [
  {
    group: "bite",
    key: "target",
    label: "Target",
    meaning: "What the bar meets.",
    measure: "word",
    better: null,
    requirable: null,
    of: ({ design }) => design.target.kind,
  },
  {
    group: "bite",
    key: "targetRadiusMm",
    label: "Radius of its edge",
    meaning: "The radius of a rounded edge that the bar meets; 0 for an edge and for a face.",
    measure: null,
    better: null,
    requirable: null,
    of: ({ design }) => design.target.radiusMm,
  },
  {
    group: "bite",
    key: "targetOffsetMm",
    label: "Offset of its line",
    meaning:
      "How far from the spin axis the target's line of approach passes, towards the side to which the struck part of the bar moves.",
    measure: null,
    better: null,
    requirable: null,
    of: ({ design }) => design.target.offsetMm,
  },
  {
    group: "bite",
    key: "direction",
    label: "Turning",
    meaning: "Direction of the spin as drawn: ccw or cw.",
    measure: "word",
    better: null,
    requirable: null,
    of: ({ design }) => design.spin?.direction ?? null,
  },
  {
    group: "bite",
    key: "teeth",
    label: "Teeth at the tip circle",
    meaning: "Tips at the largest radius with a face that can strike square.",
    measure: "count",
    better: null,
    requirable: null,
    of: ({ bite }) => bite?.teeth ?? null,
  },
  {
    group: "bite",
    key: "cleanBiteMPerS",
    label: "Clean bite up to",
    meaning:
      "The lowest closing speed at which something else than the square face of a tooth strikes first; 0 for a rounded tip, whose top skids at any speed.",
    measure: "speed",
    better: "more",
    requirable: requirable("clean_bite", "3 m/s", SPEED, 1e3),
    of: ({ bite }) => bite?.clean.closingMPerS ?? null,
  },
  {
    group: "bite",
    key: "cleanBiteEndsAtMm",
    label: "Clean bite ends at",
    meaning:
      "The place on the outline that strikes first, and not as a tooth should, from that closing speed on.",
    measure: "point",
    better: null,
    requirable: null,
    of: ({ bite }) => {
      const point = bite?.clean.endedBy?.point;
      return point ? [point.x, point.y] : null;
    },
  },
  {
    group: "bite",
    key: "cleanBiteEndedBy",
    label: "Clean bite ended by",
    meaning: "What of the bar is struck there.",
    measure: "word",
    better: null,
    requirable: null,
    of: ({ bite }) => partText(bite?.clean.endedBy?.part),
  },
  {
    group: "bite",
    key: "teethOnlyMPerS",
    label: "Teeth only up to",
    meaning:
      "The lowest closing speed at which something that is no tooth strikes first; a tooth's flat or rounded top counts as tooth.",
    measure: "speed",
    better: "more",
    requirable: requirable("teeth_only", "4 m/s", SPEED, 1e3),
    of: ({ bite }) => bite?.teethOnly.closingMPerS ?? null,
  },
  {
    group: "bite",
    key: "teethOnlyEndsAtMm",
    label: "Teeth only ends at",
    meaning: "The place on the outline that is no tooth and strikes first from that closing speed on.",
    measure: "point",
    better: null,
    requirable: null,
    of: ({ bite }) => {
      const point = bite?.teethOnly.endedBy?.point;
      return point ? [point.x, point.y] : null;
    },
  },
  {
    group: "bite",
    key: "teethOnlyEndedBy",
    label: "Teeth only ended by",
    meaning: "What of the bar is struck there.",
    measure: "word",
    better: null,
    requirable: null,
    of: ({ bite }) => partText(bite?.teethOnly.endedBy?.part),
  },
  {
    group: "bite",
    key: "curve",
    label: "Bite against closing speed",
    meaning:
      "Depth of bite over all starting phases, shares of strikes and the familiar ideal at each closing speed.",
    measure: null,
    better: null,
    requirable: requirable("bite", "6 mm", LENGTH, 1, { speed: true }),
    of: ({ bite }) => bite?.curve.map(biteValues) ?? null,
  },
];

const BUDGET: readonly Figure[] = [
  {
    ...ofBudget("partsMassKg", "Parts"),
    meaning: "All parts of the budget, the bar apart.",
    better: "less",
  },
  {
    ...ofBudget("totalMassKg", "Parts and bar"),
    meaning: "All parts of the budget and the bar of this file, by its outline.",
    better: "less",
    requirable: requirable("total_mass", "6 kg", { ...NONE, mass: 1 }, 1),
  },
  {
    ...ofBudget("limitKg", "Weight limit"),
    meaning: "What the robot may weigh in all.",
  },
  {
    ...ofBudget("marginKg", "Margin to the limit"),
    meaning: "The limit less the parts and the bar; negative for a robot that is too heavy.",
    better: "more",
  },
  {
    ...ofBudget("scaleMassKg", "Scale reads"),
    meaning: "What the file says a scale reads with everything on.",
  },
  {
    ...ofBudget("scaleDifferenceKg", "Scale less estimate"),
    meaning: "The reading less the parts and the bar: what the budget forgets, or has too much of.",
  },
];

function ofBudget(key: keyof BudgetSums, label: string): Omit<Figure, "meaning"> {
  return {
    group: "budget",
    key,
    label,
    measure: "mass",
    better: null,
    requirable: null,
    unknownBecause: "the file has no budget, or the mass of something in it is not known",
    of: (assessment) => budgetSums(assessment)?.[key] ?? null,
  };
}

const EVENT: readonly Figure[] = [
  {
    group: "event",
    key: "measuredSpinDownS",
    label: "Spin-down",
    meaning: "From full spin to standstill, as it was timed.",
    measure: "time",
    better: "less",
    requirable: requirable("spin_down", "60 s", { ...NONE, time: 1 }, 1),
    unknownBecause: "time it on the robot and write it in the event, such as measured_spin_down 42 s",
    of: ({ design }) => design.event?.measuredSpinDownS ?? null,
  },
];

/** Every figure, in reading order. */
export const FIGURES: readonly Figure[] = [
  ...SHAPE,
  ...MASS,
  ...SPIN,
  ...BITE,
  ...ROBOT_FIGURES,
  ...OPPONENT_FIGURES,
  ...BUDGET,
  ...EVENT,
];

/** The figures that `require` can name. */
export const REQUIRABLE_FIGURES: readonly Requirable[] = FIGURES.flatMap((figure) => figure.requirable ?? []);

/**
 * All figures of an assessment as one plain object: group, then key.
 * Numbers that are not finite become `null`, so that the JSON never holds one.
 */
export function figureValues(assessment: Assessment): Record<FigureGroup, Record<string, FigureValue>> {
  const entries = FIGURE_GROUPS.map((group) => [group, groupValues(group, assessment)]);
  return Object.fromEntries(entries);
}

/**
 * One figure of an assessment by its key, without the others; `null` where it cannot be known or no finite number.
 * @throws RangeError for a key that the catalogue has not: a bug, not a matter of the file
 */
export function figureValue(key: string, assessment: Assessment): FigureValue {
  const figure = FIGURES.find((candidate) => candidate.key === key);
  if (!figure) throw new RangeError(`no figure "${key}"`);
  return finite(figure.of(assessment));
}

function groupValues(group: FigureGroup, assessment: Assessment): Record<string, FigureValue> {
  const figures = FIGURES.filter((figure) => figure.group === group);
  return Object.fromEntries(figures.map((figure) => [figure.key, finite(figure.of(assessment))]));
}

function finite(value: FigureValue): FigureValue {
  if (typeof value === "number") return Number.isFinite(value) ? value : null;
  if (value === null || typeof value === "string") return value;
  if (isList(value)) return value.map(finite);
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, finite(inner)]));
}

function isList(value: object): value is readonly FigureValue[] {
  return Array.isArray(value);
}

function segmentCount(outline: NonNullable<Assessment["outline"]>): number {
  return outline.inner.reduce((sum, loop) => sum + loop.segments.length, outline.outer.segments.length);
}

function permissible({ mass, design }: Assessment): FigureValue {
  const { spin } = design;
  if (!mass || !spin) return null;
  const entries = Object.entries(TOLD_GRADES).map(([name, grade]) => [
    name,
    permissibleGMm(grade, mass.massKg, spin.radPerS),
  ]);
  return Object.fromEntries(entries);
}

const PARTS: Readonly<Record<BarPart, string>> = {
  face: "the face of a tooth, where it is not square",
  top: "the top of a tooth",
  back: "the back of a tooth",
  rest: "what is no tooth",
  nothing: "nothing: the target passes the axis",
};

function partText(part: BarPart | undefined): string | null {
  return part === undefined ? null : PARTS[part];
}

/**
 * The first five keys are the oldest; scripts may count on their order. What costs more than all of these, quantiles
 * and strikes, is left to the faces that tell it.
 */
function biteValues(point: BitePoint): FigureValue {
  const { closingMPerS, maxMm, meanMm, squareShare, idealMm, minMm } = point;
  return {
    closingMPerS,
    maxMm,
    meanMm,
    squareShare,
    idealMm,
    minMm,
    cleanShare: point.cleanShare,
    toothShare: point.toothShare,
    passedShare: point.passedShare,
  };
}

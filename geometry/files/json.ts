import type { Analysis } from "../analysis/analyse.ts";
import { biteSpinningUp } from "../analysis/bite-spinning-up.ts";
import { standingOf } from "../analysis/judge.ts";
import { wantedDepths } from "../analysis/wanted-depths.ts";
import type { BitePoint, Range, Strike } from "../bite/bite.ts";
import { budgetSums, leaveOff } from "../figures/budget.ts";
import type { FigureValue } from "../figures/figure.ts";
import type { LineIndex } from "../language/line-index.ts";
import type { Problem } from "../language/problem.ts";
import { CAUTIONS } from "./cautions.ts";

/** A problem as scripts read it: line and column from 1. */
export function problemJson(problem: Problem, lines: LineIndex) {
  const { severity, code, message, range } = problem;
  return { severity, code, message, ...lines.position(range.start) };
}

/** The whole analysis as one plain object with stable keys, units in the names; unknown values are `null`. */
export function analysisJson(analysis: Analysis) {
  const { source, variant, design, figures, problems } = analysis;
  return {
    bar: design.name,
    variant,
    ...figures,
    bite: {
      ...figures.bite,
      curve: curveJson(analysis),
      forDepth: wantedDepths(analysis.assessment, 1),
      spinningUp: biteSpinningUp(analysis.assessment).map((at) => ({ ...at })),
    },
    budget: { ...figures.budget, ...budgetJson(analysis) },
    event: { ...figures.event, limits: eventJson(analysis) },
    problems: problems.map((problem) => problemJson(problem, source.lines)),
    cautions: CAUTIONS,
  };
}

/** The parts as written, and what could be left off, what saves most first; null without a budget. */
function budgetJson({ design: { budget }, assessment }: Analysis) {
  if (budget === null) return { parts: null, leaveOff: null };
  const marginKg = budgetSums(assessment)?.marginKg ?? null;
  return {
    parts: budget.parts.map(({ name, massKg, count, isSpare }) => ({ name, massKg, count, spare: isSpare })),
    leaveOff: leaveOff(budget, marginKg).map(({ part, savesKg, marginKg: then }) => {
      return { name: part.name, savesKg, marginKg: then };
    }),
  };
}

/** The limits of the event and how they stand, in the unit of the key; null without an event. */
function eventJson({ design: { event }, assessment }: Analysis) {
  if (event === null) return null;
  return event.limits.flatMap((stated) => {
    const standing = standingOf(stated, assessment);
    if (standing === null) return [];
    const { figure, value, limit, holds, margin } = standing;
    const { relation, atMPerS } = stated;
    const key = atMPerS === null ? figure.key : "maxMm";
    return [{ figure: stated.figure, key, relation, atMPerS, limit, value, margin, holds }];
  });
}

/** The bite curve with what strikes first at each closing speed. */
function curveJson({ figures, assessment }: Analysis): FigureValue {
  const { curve } = figures.bite;
  const points = assessment.bite?.curve;
  if (!Array.isArray(curve) || !points) return null;
  return curve.map((values: object, i) => ({ ...values, ...spreadJson(points[i]) }));
}

function spreadJson(point: BitePoint | undefined): Record<string, FigureValue> {
  if (point === undefined) return {};
  const { tenthMm, medianMm, ninetiethMm, strikes } = point;
  return { tenthMm, medianMm, ninetiethMm, strikes: strikes.map(strikeJson) };
}

function strikeJson({ place, share, depthMm, radiusMm, strikeAngleRad, parts }: Strike): FigureValue {
  const pair = ({ least, most }: Range) => [least, most];
  const degrees = ({ least, most }: Range) => [(least * 180) / Math.PI, (most * 180) / Math.PI];
  return {
    [place.kind]: place.index,
    share,
    depthMm: pair(depthMm),
    radiusMm: pair(radiusMm),
    strikeAngleDeg: degrees(strikeAngleRad),
    parts: parts.map(pair),
  };
}

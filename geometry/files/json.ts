import type { Analysis } from "../analysis/analyse.ts";
import { biteSpinningUp } from "../analysis/bite-spinning-up.ts";
import { wantedDepths } from "../analysis/wanted-depths.ts";
import type { BitePoint, Range, Strike } from "../bite/bite.ts";
import type { FigureValue } from "../figures/figure.ts";
import type { LineIndex } from "../language/line-index.ts";
import type { Problem } from "../language/problem.ts";

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
    problems: problems.map((problem) => problemJson(problem, source.lines)),
  };
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

/** The limits of an aim: those it names, the requirements of the file, and the balance that is expected where neither does. */

import type { Analysis } from "../../analysis/analyse.ts";
import { requirementLabel, standingOf } from "../../analysis/judge.ts";
import { FIGURES } from "../../figures/catalogue.ts";
import type { Requirement } from "../../language/design.ts";
import { SPEED } from "../../language/dimension.ts";
import { quantity } from "../../language/quantity-arithmetic.ts";
import { statedLimits } from "../../language/stated-limits.ts";
import type { LimitOrigin, LimitStanding } from "./aiming.ts";
import { LIMIT_TOLERANCE } from "./rating.ts";

export interface AimLimit {
  readonly stated: Requirement;
  readonly origin: LimitOrigin;
}

/**
 * The limits as these values of the lets have them.
 * @param expectedGrade the balance grade that is expected, in mm/s; null where none is
 */
export function limitsOf({ design }: Analysis, expectedGrade: number | null): readonly AimLimit[] {
  const limits: readonly AimLimit[] = [
    ...(design.aim?.keeping ?? []).map((stated) => ({ stated, origin: "aim" as const })),
    ...statedLimits(design).map((stated) => ({ stated, origin: "require" as const })),
  ];
  if (expectedGrade === null || limits.some(({ stated }) => isOfCentroid(stated.figure))) return limits;
  const range = design.aim?.range ?? { start: 0, end: 0 };
  const stated: Requirement = {
    figure: "balance",
    relation: "<=",
    limit: quantity(expectedGrade, SPEED),
    atMPerS: null,
    limitRange: range,
    range,
  };
  return [...limits, { stated, origin: "expected" }];
}

/** The grade that the checker expects of the bar, where it is kept now: an aim is not to spoil it. */
export function expectedGradeOf({ assessment }: Analysis): number | null {
  const { balanceGrade } = assessment.settings;
  const now = FIGURES.find(({ key }) => key === "balanceGrade")?.of(assessment);
  return typeof now === "number" && now <= balanceGrade ? balanceGrade : null;
}

/** Figures that are 0 where the centroid is on the axis, with a kink there. */
export function isOfCentroid(figure: string): boolean {
  return figure === "balance" || figure === "imbalance";
}

/** By which share of it a limit is missed, negative while it holds; null where its figure is not known. */
export function excessOf({ stated }: AimLimit, { assessment }: Analysis): number | null {
  const standing = standingOf(stated, assessment);
  if (standing?.margin == null) return null;
  return -standing.margin / (Math.abs(standing.limit) || 1);
}

/** Sides of the polygon inside the circle that the centroid is kept in: the circle less half a percent of its radius. */
const SIDES = 32;
const DIRECTIONS = Array.from({ length: SIDES }, (_, i) => (2 * Math.PI * i) / SIDES);

/**
 * The same in functions without kinks. A limit on the balance says that the centroid lies in a circle about the axis:
 * as half planes, so that a step towards the axis knows where it is.
 */
export function smoothExcessOf(
  { stated }: AimLimit,
  excess: number,
  { assessment }: Analysis,
): readonly number[] {
  const centroid = assessment.section?.centroidMm;
  if (!isOfCentroid(stated.figure) || stated.relation !== "<=" || !centroid) return [excess];
  const distanceMm = Math.hypot(centroid.x, centroid.y);
  const shareOfRadius = 1 + excess;
  const perMm = distanceMm === 0 ? 0 : shareOfRadius / distanceMm / Math.cos(Math.PI / SIDES);
  return DIRECTIONS.map(
    (angleRad) => (Math.cos(angleRad) * centroid.x + Math.sin(angleRad) * centroid.y) * perMm - 1,
  );
}

/** How a bar stands to a limit; null for a figure that the catalogue does not know. */
export function limitStanding(
  { stated, origin }: AimLimit,
  { assessment }: Analysis,
): Omit<LimitStanding, "isReached"> | null {
  const standing = standingOf(stated, assessment);
  if (standing === null) return null;
  const { figure, limit, value, margin } = standing;
  const { relation, atMPerS } = stated;
  const share = margin === null ? Number.NEGATIVE_INFINITY : margin / (Math.abs(limit) || 1);
  return {
    origin,
    figure,
    label: requirementLabel(stated, figure),
    measure: atMPerS === null ? (figure.measure ?? "count") : "length",
    relation,
    atMPerS,
    limit,
    value,
    margin,
    holds: share >= -LIMIT_TOLERANCE,
  };
}

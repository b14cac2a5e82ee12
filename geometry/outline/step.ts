import type { ArcDesign, Point, StepDesign } from "../language/design.ts";
import { failure, rewrite } from "../language/evaluate/problems.ts";
import type { Fix, Report } from "../language/problem.ts";
import type { TextRange } from "../language/text.ts";
import { arcAbout, arcOfRadius, arcThrough, fullTurn, halfCircle, lineBetween, signOf } from "./arc.ts";
import { fixLength, lengthText, placeText, pointText } from "./length-text.ts";
import type { Segment } from "./segment.ts";
import { spiralSegments } from "./spiral.ts";
import { HALF_CIRCLE_SHARE, SAME_POINT_MM } from "./tolerance.ts";
import { cross, direction, distance, minus, norm, ORIGIN, plus, times } from "./vector.ts";

/** A step that draws something. */
export type DrawingStep = Exclude<StepDesign, { kind: "from" | "close" }>;
type ArcStep = Extract<DrawingStep, { kind: "arc" }>;
type SpiralStep = Extract<DrawingStep, { kind: "spiral" }>;
type ArcBy<K extends ArcDesign["by"]> = Extract<ArcDesign, { by: K }>;

/**
 * The segments of one step from the point that the last one reached; null where the step makes none, and then a
 * problem says why.
 */
export function stepSegments(step: DrawingStep, from: Point, report: Report): readonly Segment[] | null {
  switch (step.kind) {
    case "line":
      return goesNowhere(step, from, report) ? null : [lineBetween(from, step.to, step.range)];
    case "arc":
      return arcSegments(step, from, report);
    case "spiral":
      return spiralOf(step, from, report);
  }
}

const isSamePoint = (a: Point, b: Point): boolean => distance(a, b) <= SAME_POINT_MM;

/** The step without its corner treatment, which a fix that rewrites the step leaves alone. */
function stepBody(step: StepDesign): TextRange {
  const end = Math.min(step.range.end, step.corner?.range.start ?? step.range.end);
  return { start: step.range.start, end };
}

/** The fix that writes a step anew, its corner treatment kept. */
export function rewriteStep(title: string, step: StepDesign, newText: string) {
  const body = stepBody(step);
  return rewrite(title, body, body.end < step.range.end ? `${newText} ` : newText);
}

function goesNowhere(step: DrawingStep, from: Point, report: Report): boolean {
  if (!isSamePoint(from, step.to)) return false;
  const message = `This step goes nowhere: it ends at ${placeText(step.to)}, where the last one ended.`;
  report(failure("zero-length", step.range, message, [rewrite("Delete this step", step.range, "")]));
  return true;
}

function arcSegments(step: ArcStep, from: Point, report: Report): readonly Segment[] | null {
  switch (step.shape.by) {
    case "radius":
      return arcByRadius(step, step.shape, from, report);
    case "through":
      return arcByThrough(step, step.shape.through, from, report);
    case "about":
      return arcByCentre(step, step.shape, from, report);
  }
}

function arcByRadius(step: ArcStep, shape: ArcBy<"radius">, from: Point, report: Report) {
  if (goesNowhere(step, from, report)) return null;
  const { radiusMm, turning, long } = shape;
  const leastMm = distance(from, step.to) / 2;
  if (Math.abs(radiusMm.value - leastMm) <= HALF_CIRCLE_SHARE * leastMm) {
    return [halfCircle(from, step.to, signOf(turning), step.range)];
  }
  if (radiusMm.value > leastMm) {
    return [arcOfRadius(from, step.to, radiusMm.value, turning, long, step.range)];
  }
  const { unit } = radiusMm;
  const least = fixLength(leastMm, radiusMm, "up");
  const message =
    `This arc cannot reach its end: the ends are ${lengthText(2 * leastMm, unit)} apart, so the radius must be ` +
    `at least ${least.text}, not ${lengthText(radiusMm.value, unit)}.`;
  const fixes = [rewrite(`Make the radius ${least.text}`, radiusMm.range, least.text)];
  report(failure("arc-cannot-reach", radiusMm.range, message, fixes));
  return null;
}

function arcByThrough(step: ArcStep, through: Point, from: Point, report: Report) {
  const undefinedArc = (message: string, fixes = [rewrite("Delete this step", step.range, "")]) => {
    report(failure("arc-undefined", step.range, message, fixes));
    return null;
  };
  const { to } = step;
  if (isSamePoint(from, to)) {
    const advice = "for a full circle write arc … about its centre";
    return undefinedArc(`This arc ends where it starts, at ${placeText(to)}: ${advice}.`);
  }
  const straighten = [rewriteStep("Make it a line", step, `line ${pointText(to)}`)];
  if (isSamePoint(through, from) || isSamePoint(through, to)) {
    const message = `This arc goes through one of its own ends, ${placeText(through)}: it needs a third point between them.`;
    return undefinedArc(message, straighten);
  }
  const rise = Math.abs(cross(direction(from, to), minus(through, from)));
  if (rise <= SAME_POINT_MM) {
    const message = `This arc is no arc: ${placeText(through)} lies in line with its ends. Choose a point to one side, or write a line.`;
    return undefinedArc(message, straighten);
  }
  return [arcThrough(from, through, to, step.range)];
}

function arcByCentre(step: ArcStep, shape: ArcBy<"about">, from: Point, report: Report) {
  const { centre, centreRange, turning } = shape;
  const { to } = step;
  const startMm = distance(centre, from);
  const endMm = distance(centre, to);
  if (startMm <= SAME_POINT_MM) {
    const message = `This arc turns about its own start, ${placeText(centre)}: the centre must be elsewhere.`;
    report(failure("arc-undefined", centreRange, message));
    return null;
  }
  if (Math.abs(startMm - endMm) > SAME_POINT_MM) {
    const message =
      `The centre of this arc is ${lengthText(startMm)} from its start but ${lengthText(endMm)} from its end; ` +
      `both must be equal.`;
    report(failure("centre-off", centreRange, message, centreFixes(step, shape, from)));
    return null;
  }
  if (isSamePoint(from, to)) return [fullTurn(centre, from, signOf(turning), step.range)];
  return [arcAbout(centre, from, to, signOf(turning), step.range)];
}

/** Moves the centre along the chord to where both ends are equally far: the nearest centre that serves. */
function centreFixes(step: ArcStep, { centre, centreRange }: ArcBy<"about">, from: Point) {
  const chord = distance(from, step.to);
  if (chord <= SAME_POINT_MM) return [];
  const excess = distance(centre, from) ** 2 - distance(centre, step.to) ** 2;
  const nearest = plus(centre, times(direction(from, step.to), -excess / (2 * chord)));
  const text = pointText(nearest);
  return [rewrite(`Move the centre to ${placeText(nearest)}`, centreRange, text)];
}

function spiralOf(step: SpiralStep, from: Point, report: Report): readonly Segment[] | null {
  const { to, turning, range } = step;
  const undefinedSpiral = (message: string, fixes: readonly Fix[] = []) => {
    report(failure("spiral-undefined", range, message, fixes));
    return null;
  };
  if (isSamePoint(from, ORIGIN) || isSamePoint(to, ORIGIN)) {
    return undefinedSpiral(
      "This spiral touches the spin axis, which it turns about: its ends must be off it.",
    );
  }
  if (isSamePoint(from, to)) return undefinedSpiral(SAME_RAY, [rewrite("Delete this step", range, "")]);
  // The point of `to`'s circle on the ray of `from`: where the two coincide, the sweep is nothing or a full turn.
  const onRay = times(from, norm(to) / norm(from));
  if (!isSamePoint(onRay, to)) return spiralSegments(from, to, turning, range);
  return undefinedSpiral(SAME_RAY, [rewriteStep("Make it a line", step, `line ${pointText(to)}`)]);
}

const SAME_RAY =
  "This spiral starts and ends in the same direction from the spin axis: it must sweep more than nothing and less " +
  "than a full turn. Break a full turn into two spirals, or write a line.";

/** The straight stand-in for a step that failed, so that the rest can still be drawn and checked. */
export function standIn(step: DrawingStep, from: Point): readonly Segment[] {
  return isSamePoint(from, step.to) ? [] : [lineBetween(from, step.to, step.range)];
}

import type { CornerDesign } from "../language/design.ts";
import { failure, rewrite } from "../language/evaluate/problems.ts";
import type { Report } from "../language/problem.ts";
import type { Chain } from "./chain.ts";
import { type CornerCut, cornerCut, cornerFault, cornerTurn, runLength } from "./corner.ts";
import { fixLength, lengthText, placeText } from "./length-text.ts";
import type { Segment } from "./segment.ts";
import { SAME_POINT_MM } from "./tolerance.ts";
import { joined, partOf } from "./trim.ts";

/** The end of one run and the start of the next, with the treatment of the corner between them. */
interface Joint {
  readonly before: readonly Segment[];
  readonly after: readonly Segment[];
  readonly beforeLengthMm: number;
  readonly afterLengthMm: number;
  /** Null where there is no treatment, or none is possible. */
  readonly corner: CornerDesign | null;
  /** The cut on the whole runs, before it is known what the corners at their other ends take. */
  readonly cut: CornerCut | null;
}

/**
 * The segments of a loop with its corners treated. Each treatment is worked out on the whole runs beside it; then all
 * must find room together. One that does not is reported, with the largest size that fits, and left sharp.
 */
export function treatCorners(chain: Chain, report: Report): Segment[] {
  const joints = chain.map((_, i) => jointAt(chain, i, report));
  const crowded = new Set(joints.flatMap((_, i) => crowdedOut(joints, i)));
  const cuts = joints.map((joint, i) => (crowded.has(i) ? null : joint.cut));
  for (const [i, { corner }] of joints.entries()) {
    if (corner !== null && cuts[i] === null) reportTooLarge(joints, i, corner, report);
  }
  return joined(chain.flatMap((run, i) => treatedRun(run.segments, cuts.at(i - 1) ?? null, cuts[i] ?? null)));
}

function jointAt(chain: Chain, i: number, report: Report): Joint {
  const before = chain[i]?.segments ?? [];
  const after = chain[(i + 1) % chain.length]?.segments ?? [];
  const wanted = chain[i]?.corner ?? null;
  const corner = wanted !== null && isThere(before, after, wanted, report) ? wanted : null;
  const lengths = { beforeLengthMm: runLength(before), afterLengthMm: runLength(after) };
  const cut = corner && cornerCut(before, after, corner.kind, corner.sizeMm.value, corner.range);
  return { before, after, ...lengths, corner, cut };
}

function isThere(
  before: readonly Segment[],
  after: readonly Segment[],
  corner: CornerDesign,
  report: Report,
): boolean {
  const fault = cornerFault(cornerTurn(before, after));
  if (fault === null) return true;
  const place = placeText(after[0]?.from ?? { x: 0, y: 0 });
  const verb = corner.kind === "round" ? "round" : "bevel";
  const reason = fault === "straight" ? "the outline runs on smoothly" : "the outline doubles back on itself";
  const message = `There is no corner to ${verb} at ${place}: ${reason}.`;
  const fixes = [rewrite(`Delete this ${verb}`, corner.range, "")];
  report(failure("corner-impossible", corner.range, message, fixes));
  return false;
}

/** Which of the two corners of the run before joint `i` finds no room: the one that is written later, or both in one. */
function crowdedOut(joints: readonly Joint[], i: number): number[] {
  const start = joints.at(i - 1);
  const end = joints[i];
  if (!start?.cut || !end?.cut || !start.corner || !end.corner) return [];
  if (start.cut.afterMm + end.cut.beforeMm <= end.beforeLengthMm + SAME_POINT_MM) return [];
  const startIndex = (i - 1 + joints.length) % joints.length;
  if (start.corner === end.corner) return [startIndex, i];
  return [start.corner.range.start > end.corner.range.start ? startIndex : i];
}

function reportTooLarge(joints: readonly Joint[], i: number, corner: CornerDesign, report: Report): void {
  const { kind, sizeMm, range } = corner;
  const what = `A ${kind === "round" ? "fillet" : "bevel"} of ${lengthText(sizeMm.value, sizeMm.unit)}`;
  const largestMm = largestSize(sizeMm.value, (size) => fits(joints, i, corner, size));
  const place = placeText(joints[i]?.after[0]?.from ?? { x: 0, y: 0 });
  if (largestMm === null) {
    const message = `${what} finds no room at the corner ${place}: the treatments of its neighbours take all there is.`;
    const fixes = [rewrite(`Delete this ${kind}`, range, "")];
    report(failure("corner-too-large", range, message, fixes));
    return;
  }
  const largest = fixLength(largestMm, sizeMm, "down");
  const message = `${what} is too large for the corner at ${place}: at most ${largest.text} fits.`;
  const fixes = [rewrite(`Make it ${largest.text}`, sizeMm.range, largest.text)];
  report(failure("corner-too-large", range, message, fixes));
}

/** Whether a corner of some size finds room beside its neighbours; its copies in a repeated loop change with it. */
function fits(joints: readonly Joint[], i: number, corner: CornerDesign, sizeMm: number): boolean {
  const cutOf = (joint: Joint | undefined): CornerCut | null => {
    if (joint === undefined || joint.corner !== corner) return joint?.cut ?? null;
    return cornerCut(joint.before, joint.after, corner.kind, sizeMm, corner.range);
  };
  const joint = joints[i];
  const cut = cutOf(joint);
  if (joint === undefined || cut === null) return false;
  const takenBefore = cutOf(joints.at(i - 1))?.afterMm ?? 0;
  const takenAfter = cutOf(joints[(i + 1) % joints.length])?.beforeMm ?? 0;
  return (
    cut.beforeMm + takenBefore <= joint.beforeLengthMm + SAME_POINT_MM &&
    cut.afterMm + takenAfter <= joint.afterLengthMm + SAME_POINT_MM
  );
}

/** A corner treatment smaller than this is not worth offering: no cutting head follows it. */
const LEAST_SIZE_MM = 1e-3;

/** Bisections between a size and its double: to the last digit. */
const BISECTIONS = 52;

/** The largest size below one that does not fit; null where none worth cutting fits. */
function largestSize(tooLargeMm: number, fitsAt: (sizeMm: number) => boolean): number | null {
  let high = tooLargeMm;
  let low = high / 2;
  while (!fitsAt(low)) {
    if (low < LEAST_SIZE_MM) return null;
    high = low;
    low /= 2;
  }
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (low + high) / 2;
    if (fitsAt(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** What is left of a run, followed by the piece at its end. */
function treatedRun(run: readonly Segment[], atStart: CornerCut | null, atEnd: CornerCut | null): Segment[] {
  const from = atStart?.piece.to ?? run[0]?.from;
  const to = atEnd?.piece.from ?? run.at(-1)?.to;
  if (from === undefined || to === undefined) return [];
  const end = runLength(run) - (atEnd?.beforeMm ?? 0);
  const left = partOf(run, atStart?.afterMm ?? 0, end, from, to);
  return atEnd === null ? left : [...left, atEnd.piece];
}

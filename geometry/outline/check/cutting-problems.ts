import type { Design, HoleDesign, Located } from "../../language/design.ts";
import { doubt, rewrite } from "../../language/evaluate/problems.ts";
import { formatNumber } from "../../language/number-text.ts";
import type { Problem } from "../../language/problem.ts";
import type { TextRange } from "../../language/text.ts";
import { fixLength, lengthText, placeText } from "../length-text.ts";
import { type Bridge, bridgesBelow } from "./bridges.ts";
import { firstOfEach, laterLast, otherHole, sourcesKey } from "./causes.ts";
import type { Layout } from "./layout.ts";
import type { NamedLoop } from "./placed-segments.ts";
import type { OutlineRules } from "./rules.ts";

/** The doubts of a cutting shop; each is common practice, without a published source, and says so. */
export function cuttingProblems(
  layout: Layout,
  design: Design,
  rules: OutlineRules,
  outlineWord: TextRange,
): Problem[] {
  const count = segmentProblems(layout, rules, outlineWord);
  const { thicknessMm } = design;
  if (thicknessMm === null) return count;
  return [
    ...count,
    ...holeProblems(design.holes, thicknessMm, rules.leastHoleToThickness),
    ...bridgeProblems(layout, thicknessMm, rules.leastBridgeToThickness),
  ];
}

function segmentProblems({ segments }: Layout, { mostSegments }: OutlineRules, range: TextRange): Problem[] {
  if (segments.length <= mostSegments) return [];
  const message =
    `The bar has ${segments.length} segments, more than ${mostSegments}: a cutting head stops and starts on many ` +
    `short pieces (common practice). Draw curves as arcs.`;
  return [doubt("too-many-segments", range, message)];
}

/** A length less than a limit by no more than rounding is the limit. */
const ROUNDING_SHARE = 1e-9;
const isLess = (lengthMm: number, leastMm: number): boolean => lengthMm < leastMm * (1 - ROUNDING_SHARE);

function limitText(leastMm: number, timesThickness: number, unit: string | null): string {
  const times =
    timesThickness === 1 ? "the thickness" : `${formatNumber(timesThickness)} times the thickness`;
  return `${lengthText(leastMm, unit)}, ${times} of the plate`;
}

function holeProblems(holes: readonly HoleDesign[], thicknessMm: Located<number>, times: number): Problem[] {
  const leastMm = times * thicknessMm.value;
  const problems = holes.flatMap((hole) => {
    const size = sizeOf(hole);
    return size && isLess(size.value, leastMm) ? [holeProblem(hole, size, thicknessMm, times)] : [];
  });
  return firstOfEach(problems, ({ range }) => `${range.start}-${range.end}`);
}

function sizeOf(hole: HoleDesign): Located<number> | null {
  if (hole.kind === "cutout") return null;
  return hole.kind === "slot" ? hole.widthMm : hole.diameterMm;
}

function holeProblem(
  hole: HoleDesign,
  size: Located<number>,
  thicknessMm: Located<number>,
  times: number,
): Problem {
  const leastMm = times * thicknessMm.value;
  const least = fixLength(leastMm, size, "up");
  const what = hole.kind === "slot" ? "width of this slot" : `diameter of this ${hole.kind}`;
  const message =
    `The ${what}, ${lengthText(size.value, size.unit)}, is under the least for waterjet and laser (common ` +
    `practice): ${limitText(leastMm, times, thicknessMm.unit)}.`;
  return doubt("hole-too-small", size.range, message, [
    rewrite(`Make it ${least.text}`, size.range, least.text),
  ]);
}

/** For each statement its narrowest bridge to the edge and its narrowest to another hole. */
function bridgeProblems(layout: Layout, thicknessMm: Located<number>, times: number): Problem[] {
  const leastMm = times * thicknessMm.value;
  const isLaidWell = (of: NamedLoop): boolean => !layout.crossed.has(of) && !layout.outside.has(of);
  const touching = new Set(layout.touching.map(([a, b]) => `${a.number} ${b.number}`));
  const bridges = bridgesBelow(
    layout.segments,
    leastMm,
    (a, b) => isLaidWell(a) && isLaidWell(b) && !touching.has(`${a.number} ${b.number}`),
  );
  const narrowestFirst = bridges
    .filter(({ gap }) => isLess(gap.distanceMm, leastMm))
    .sort((a, b) => a.gap.distanceMm - b.gap.distanceMm);
  return firstOfEach(narrowestFirst, bridgeCause).map((bridge) => {
    const [other, hole] = endsOf(bridge);
    const to = other.name === "outline" ? "the edge" : otherHole(other, hole);
    const { distanceMm, from } = bridge.gap;
    const message =
      `Only ${lengthText(distanceMm, thicknessMm.unit)} of metal is left between this ${hole.name} and ${to}, at ` +
      `${placeText(from)}; the least for waterjet and laser (common practice) is ` +
      `${limitText(leastMm, times, thicknessMm.unit)}.`;
    return doubt("thin-bridge", hole.loop.source, message);
  });
}

/** The loop that is the farther side of a bridge, and the hole that the problem is put at. */
function endsOf({ a, b }: Bridge): [other: NamedLoop, hole: NamedLoop] {
  return a.name === "outline" ? [a, b] : laterLast([a, b]);
}

function bridgeCause(bridge: Bridge): string {
  const [other, hole] = endsOf(bridge);
  return `${sourcesKey(hole)} ${other.name === "outline" ? "edge" : "hole"}`;
}

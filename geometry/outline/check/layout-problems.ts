import { failure } from "../../language/evaluate/problems.ts";
import { formatNumber } from "../../language/number-text.ts";
import type { Problem } from "../../language/problem.ts";
import type { TextRange } from "../../language/text.ts";
import { placeText } from "../length-text.ts";
import type { Loop, Outline } from "../segment.ts";
import { signedAreaOf } from "../segment-geometry.ts";
import { firstOfEach, laterLast, otherHole, sourcesKey } from "./causes.ts";
import type { Layout } from "./layout.ts";
import type { Meeting } from "./meetings.ts";
import type { NamedLoop } from "./placed-segments.ts";
import { areaOutsideMm2, noAreaMm2, sharedAreaMm2 } from "./region.ts";

/** The errors in how the loops of an outline lie; copies in a ring or a repeated path share theirs. */
export function layoutProblems(layout: Layout, outline: Outline, outlineWord: TextRange): Problem[] {
  return [
    ...[...layout.crossed].map(([of, meetings]) => crossingProblem(of, meetings)),
    ...axisProblems(layout, outlineWord),
    ...outsideProblems(layout, outline),
    ...touchingProblems(layout),
  ];
}

/** At the step that completes the crossing: of the two that meet, the one written later. */
function crossingProblem({ name, loop }: NamedLoop, meetings: readonly Meeting[]): Problem {
  const ordered = [...meetings].sort((a, b) => laterSource(a).start - laterSource(b).start);
  const places = [...new Set(ordered.flatMap(({ points }) => points.map(placeText)))];
  const more = places.length - 1;
  const rest = more === 0 ? "" : ` and at ${more} more ${more === 1 ? "place" : "places"}`;
  const message = `The ${name} crosses or touches itself at ${places[0]}${rest}.`;
  const range = ordered[0] ? laterSource(ordered[0]) : loop.source;
  return failure("loop-crosses-itself", range, message);
}

function laterSource({ a, b }: Meeting): TextRange {
  const [first, second] = [a.segment.source, b.segment.source];
  return first.start > second.start ? first : second;
}

function axisProblems({ axisIsOutside }: Layout, outlineWord: TextRange): Problem[] {
  if (!axisIsOutside) return [];
  const message = "The spin axis, (0 mm, 0 mm), lies outside the outline or on its edge; it must lie inside.";
  return [failure("axis-outside", outlineWord, message)];
}

/** A bore outside says nothing new where the axis is outside. */
function outsideProblems({ outside, axisIsOutside, loops }: Layout, { outer }: Outline): Problem[] {
  const holes = [...outside].filter(({ name }) => !(name === "bore" && axisIsOutside));
  return firstOfEach(holes, (hole) => sourcesKey(hole)).map((hole) => {
    const { name, loop } = hole;
    const isSameRing = (other: NamedLoop): boolean => sourcesKey(other) === sourcesKey(hole);
    const ring = loops.filter(isSameRing).length;
    const message =
      ring > 1
        ? `${holes.filter(isSameRing).length} of the ${ring} holes of this ring do not lie within the outline.`
        : `This ${name} does not lie within the outline: ${outsideText(loop, outer)}.`;
    return failure("hole-outside", loop.source, message);
  });
}

function outsideText(hole: Loop, outer: Loop): string {
  const outsideMm2 = areaOutsideMm2(hole, outer);
  if (outsideMm2 < noAreaMm2(hole)) return "it touches the edge";
  const isWhole = Math.abs(signedAreaOf(hole)) - outsideMm2 < noAreaMm2(hole);
  return `${isWhole ? "all" : areaText(outsideMm2)} of it lies outside`;
}

function touchingProblems({ touching }: Layout): Problem[] {
  const pairs = touching.map(laterLast);
  return firstOfEach(pairs, ([a, b]) => sourcesKey(a, b)).map(([a, b]) => {
    const other = otherHole(a, b);
    const shared = sharedAreaMm2(a.loop, b.loop);
    const how = shared < noAreaMm2(b.loop) ? `touches ${other}` : `overlaps ${other} by ${areaText(shared)}`;
    return failure("holes-touch", b.loop.source, `This ${b.name} ${how}.`);
  });
}

const areaText = (areaMm2: number): string => `${formatNumber(areaMm2, 3)} mm²`;

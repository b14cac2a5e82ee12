/**
 * What it does to a bar's static moment when a piece of its edge lies a little farther out or in: metal of the width δ
 * comes on along it, so the moment changes by ρt·δ·∫p ds, to first order in δ. The integrals are exact.
 */
import type { Point } from "../../language/design.ts";
import type { ArcSegment, Segment } from "../../outline/segment.ts";
import { lengthOf } from "../../outline/segment-geometry.ts";
import { dot, midpoint, plus, times } from "../../outline/vector.ts";

/** ∫p ds in mm²: the length times the centroid of the line or arc. */
export function momentOfEdge(segment: Segment): Point {
  const length = lengthOf(segment);
  if (segment.kind === "line") return times(midpoint(segment.from, segment.to), length);
  return plus(times(segment.centre, length), arcMoment(segment, 0, 1));
}

/** ∫(p − centre) ds over a part of an arc, given by fractions. */
function arcMoment({ radiusMm, startRad, sweepRad }: ArcSegment, first: number, last: number): Point {
  const [a, b] = [startRad + first * sweepRad, startRad + last * sweepRad];
  const square = radiusMm * radiusMm * Math.sign(sweepRad);
  return { x: square * (Math.sin(b) - Math.sin(a)), y: square * (Math.cos(a) - Math.cos(b)) };
}

/** ∫max(0, p·w) ds in mm²: what the edge on one side of the axis weighs towards it. `towards` is a unit vector. */
export function reachOfEdge(segment: Segment, towards: Point): number {
  return segment.kind === "line"
    ? reachOfLine(dot(segment.from, towards), dot(segment.to, towards), lengthOf(segment))
    : reachOfArc(segment, towards);
}

/** Heights at both ends of a straight piece: the triangle or trapezium above zero. */
function reachOfLine(from: number, to: number, length: number): number {
  if (from >= 0 && to >= 0) return ((from + to) / 2) * length;
  if (from <= 0 && to <= 0) return 0;
  const highest = Math.max(from, to);
  return (highest * highest * length) / (2 * Math.abs(to - from));
}

/** Along an arc p·w = a + r·cos(θ − φ): the parts above zero are found by where that vanishes. */
function reachOfArc(arc: ArcSegment, towards: Point): number {
  const { radiusMm, startRad, sweepRad, centre } = arc;
  const middle = dot(centre, towards);
  const heightAt = (share: number): number => {
    const angle = startRad + share * sweepRad;
    return middle + radiusMm * (Math.cos(angle) * towards.x + Math.sin(angle) * towards.y);
  };
  const cuts = [0, ...zerosOf(arc, towards, middle), 1].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 1; i < cuts.length; i += 1) {
    const [first = 0, last = 1] = [cuts[i - 1], cuts[i]];
    if (heightAt((first + last) / 2) <= 0) continue;
    const length = radiusMm * Math.abs(sweepRad) * (last - first);
    sum += middle * length + dot(arcMoment(arc, first, last), towards);
  }
  return sum;
}

/** Fractions strictly within the arc where the height is zero. */
function zerosOf({ radiusMm, startRad, sweepRad }: ArcSegment, towards: Point, middle: number): number[] {
  if (Math.abs(middle) >= radiusMm) return [];
  const phi = Math.atan2(towards.y, towards.x);
  const half = Math.acos(-middle / radiusMm);
  return [phi - half, phi + half].flatMap((angle) => {
    const turned = ((angle - startRad) * Math.sign(sweepRad)) / (2 * Math.PI);
    const share = ((turned - Math.floor(turned)) * 2 * Math.PI) / Math.abs(sweepRad);
    return share > 0 && share < 1 ? [share] : [];
  });
}

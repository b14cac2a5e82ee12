/** Outlines for tests, built from points, bulges and arcs. Lengths in mm, angles in rad, counter-clockwise positive. */
import type { Point } from "../../geometry/language/design.ts";
import type {
  ArcSegment,
  InnerLoop,
  LineSegment,
  Loop,
  Outline,
  Segment,
} from "../../geometry/outline/segment.ts";
import { signedAreaOf } from "../../geometry/outline/segment-geometry.ts";
import { reversedLoop } from "../../geometry/outline/transform.ts";
import { polar } from "../../geometry/outline/vector.ts";

export type Pair = readonly [x: number, y: number];
/** A corner and the bulge tan(sweep/4) of the piece that leaves it: 0 for a line, positive turning left. */
export type BulgeCorner = readonly [x: number, y: number, bulge: number];

const source = { start: 0, end: 0 };
const pointOf = ([x, y]: Pair): Point => ({ x, y });

export function line(from: Pair, to: Pair): LineSegment {
  return { kind: "line", from: pointOf(from), to: pointOf(to), source };
}

export function arc(centre: Pair, radiusMm: number, startRad: number, sweepRad: number): ArcSegment {
  const middle = pointOf(centre);
  const from = polar(middle, radiusMm, startRad);
  const full = Math.abs(sweepRad) >= 2 * Math.PI;
  const to = full ? from : polar(middle, radiusMm, startRad + sweepRad);
  return { kind: "arc", from, to, centre: middle, radiusMm, startRad, sweepRad, source };
}

/** From the drawing-exchange definition of the bulge: radius c(1+b²)/4|b|, centre left of the chord by c(1−b²)/4b. */
export function bulgeSegment(from: Pair, to: Pair, bulge: number): Segment {
  if (bulge === 0) return line(from, to);
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const left = (1 - bulge * bulge) / (4 * bulge);
  const centre = { x: (from[0] + to[0]) / 2 - dy * left, y: (from[1] + to[1]) / 2 + dx * left };
  return {
    kind: "arc",
    from: pointOf(from),
    to: pointOf(to),
    centre,
    radiusMm: (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    startRad: Math.atan2(from[1] - centre.y, from[0] - centre.x),
    sweepRad: 4 * Math.atan(bulge),
    source,
  };
}

export function loopOf(segments: readonly Segment[]): Loop {
  return { segments, source };
}

/** Segments chained end to end exactly: each starts where the one before ends, the last ends where the first starts. */
export function chain(segments: readonly Segment[]): Loop {
  return loopOf(
    segments.map((segment, i) => ({
      ...segment,
      to: (segments[(i + 1) % segments.length] ?? segment).from,
    })),
  );
}

export function bulgeLoop(corners: readonly BulgeCorner[]): Loop {
  return loopOf(
    corners.map(([x, y, bulge], i) => {
      const [toX, toY] = corners[(i + 1) % corners.length] ?? [x, y];
      return bulgeSegment([x, y], [toX, toY], bulge);
    }),
  );
}

export function polygon(points: readonly Pair[]): Loop {
  return bulgeLoop(points.map(([x, y]) => [x, y, 0]));
}

export function rectangle(x0: number, y0: number, x1: number, y1: number): Loop {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}

/** One arc all the way round. */
export function circle(radiusMm: number, centre: Pair = [0, 0]): Loop {
  return loopOf([arc(centre, radiusMm, 0, 2 * Math.PI)]);
}

/** A pie piece with its apex at the origin, symmetrical about +x. */
export function sector(radiusMm: number, sweepRad: number): Loop {
  const round = arc([0, 0], radiusMm, -sweepRad / 2, sweepRad);
  const [from, to] = [round.from, round.to];
  return loopOf([line([0, 0], [from.x, from.y]), round, line([to.x, to.y], [0, 0])]);
}

/** What a chord cuts off a circle about the origin, symmetrical about +x. */
export function circularSegment(radiusMm: number, sweepRad: number): Loop {
  const round = arc([0, 0], radiusMm, -sweepRad / 2, sweepRad);
  return loopOf([round, line([round.to.x, round.to.y], [round.from.x, round.from.y])]);
}

/** A slot with round ends about the axis from `a` to `b`. */
export function slot(a: Pair, b: Pair, widthMm: number): Loop {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [sideX, sideY] = [
    (-(b[1] - a[1]) / length) * (widthMm / 2),
    ((b[0] - a[0]) / length) * (widthMm / 2),
  ];
  return bulgeLoop([
    [a[0] - sideX, a[1] - sideY, 0],
    [b[0] - sideX, b[1] - sideY, 1],
    [b[0] + sideX, b[1] + sideY, 0],
    [a[0] + sideX, a[1] + sideY, 1],
  ]);
}

/** An outline whose loops are turned the way they have to run. */
export function outlineOf(outer: Loop, ...holes: readonly Loop[]): Outline {
  return {
    outer: signedAreaOf(outer) < 0 ? reversedLoop(outer) : outer,
    inner: holes.map((hole): InnerLoop => {
      return { ...(signedAreaOf(hole) > 0 ? reversedLoop(hole) : hole), kind: "cutout" };
    }),
  };
}

export function annulus(outerRadiusMm: number, innerRadiusMm: number): Outline {
  return outlineOf(circle(outerRadiusMm), circle(innerRadiusMm));
}

/** A toothed disc of so many straight pieces. */
export function toothed(count: number, middleMm: number): Loop {
  const points = Array.from({ length: count }, (_, i): Pair => {
    const angle = (2 * Math.PI * i) / count;
    const radius = middleMm + (i % 2) * 0.01;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
  return polygon(points);
}

import type { ArcSegment, Loop } from "../../geometry/outline/segment.ts";

/** A loop as a polygon, each arc in as many even chords as asked. */
export function chordsOf(loop: Loop, chordsIn: (arc: ArcSegment) => number): [x: number, y: number][] {
  const points: [number, number][] = [];
  for (const segment of loop.segments) {
    points.push([segment.from.x, segment.from.y]);
    if (segment.kind === "line") continue;
    const { centre, radiusMm, startRad, sweepRad } = segment;
    const chords = chordsIn(segment);
    for (let i = 1; i < chords; i++) {
      const angle = startRad + (sweepRad * i) / chords;
      points.push([centre.x + radiusMm * Math.cos(angle), centre.y + radiusMm * Math.sin(angle)]);
    }
  }
  return points;
}

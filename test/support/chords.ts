import type { Loop } from "../../geometry/outline/segment.ts";

/** A loop as a polygon, every arc in the same number of chords: what extrapolation over that number needs. */
export function chordsOf(loop: Loop, chordsPerArc: number): [x: number, y: number][] {
  const points: [number, number][] = [];
  for (const segment of loop.segments) {
    points.push([segment.from.x, segment.from.y]);
    if (segment.kind === "line") continue;
    const { centre, radiusMm, startRad, sweepRad } = segment;
    for (let i = 1; i < chordsPerArc; i++) {
      const angle = startRad + (sweepRad * i) / chordsPerArc;
      points.push([centre.x + radiusMm * Math.cos(angle), centre.y + radiusMm * Math.sin(angle)]);
    }
  }
  return points;
}

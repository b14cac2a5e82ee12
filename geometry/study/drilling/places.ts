import type { Point } from "../../language/design.ts";
import { distance, FULL_TURN, wrapped } from "../../outline/vector.ts";
import type { Metal } from "./metal.ts";
import type { DrillWindow } from "./request.ts";

/** Where a hole may be, as a shop measures it: whole steps of a radius, whole tenths of a degree. */
export interface Place extends Point {
  readonly radiusSteps: number;
  readonly angleTenths: number;
}

const TENTHS_A_TURN = 3600;

export function placeAt(radiusSteps: number, angleTenths: number, stepMm: number): Place {
  const tenths = ((angleTenths % TENTHS_A_TURN) + TENTHS_A_TURN) % TENTHS_A_TURN;
  const [cos, sin] = unitAt(tenths);
  const radiusMm = radiusSteps * stepMm;
  return { radiusSteps, angleTenths: tenths, x: radiusMm * cos, y: radiusMm * sin };
}

/** Along an axis the other coordinate is 0 and not the rounding of π. */
function unitAt(tenths: number): readonly [number, number] {
  const angleRad = (tenths / TENTHS_A_TURN) * FULL_TURN;
  const cos = tenths % 1800 === 900 ? 0 : Math.cos(angleRad);
  return [cos, tenths % 1800 === 0 ? 0 : Math.sin(angleRad)];
}

export function isInWindow(
  { radiusSteps, angleTenths }: Place,
  stepMm: number,
  window: DrillWindow,
): boolean {
  const { radiusMm, angleDeg } = window;
  const radius = radiusSteps * stepMm;
  if (radiusMm && (radius < radiusMm[0] - 1e-9 || radius > radiusMm[1] + 1e-9)) return false;
  if (!angleDeg) return true;
  const [from, to] = angleDeg.map((deg) => (deg * Math.PI) / 180) as [number, number];
  // A window of a whole turn is everywhere.
  if (Math.abs(to - from) >= FULL_TURN) return true;
  const along = wrapped((angleTenths / TENTHS_A_TURN) * FULL_TURN - from + 1e-9);
  return along <= wrapped(to - from) + 2e-9;
}

/** A place of the coarse net with the metal around it. */
export interface Spot extends Place {
  /** To the nearest edge, or `mostRoomMm` where that is farther. */
  readonly roomMm: number;
}

/** The coarse net has about so many places, and no more places × segments than that: both keep a search short. */
const MOST_SPOTS = 12_000;
const MOST_SPOT_SEGMENTS = 6e6;
const FINEST_NET_MM = 1;

/** How far apart the places of a coarse net over a bar of this area are. */
export function netStepMm(areaMm2: number, segments: number): number {
  const most = Math.min(MOST_SPOTS, MOST_SPOT_SEGMENTS / Math.max(1, segments));
  return Math.max(FINEST_NET_MM, Math.sqrt(areaMm2 / most));
}

/**
 * The places of a net where there is at least `leastRoomMm` of metal all round: rings `netMm` apart, the places of a
 * ring half a degree apart or a multiple of it. All round the bar and not on the heavy side alone: where that is
 * narrow, two holes to both hands of it do what none on it can.
 */
export function spotsOf(
  metal: Metal,
  { maxRadiusMm, netMm, stepMm, leastRoomMm, mostRoomMm, window }: NetTask,
): readonly Spot[] {
  const ringSteps = Math.max(1, Math.round(netMm / stepMm));
  const rings = Math.floor(maxRadiusMm / stepMm / ringSteps);
  const spots: Spot[] = [];
  for (let ring = 1; ring <= rings; ring += 1) {
    const radiusSteps = ring * ringSteps;
    const wantedDeg = ((netMm / (radiusSteps * stepMm)) * 180) / Math.PI;
    const tenths = HALF_DEGREE * Math.max(1, Math.round(wantedDeg / 0.5));
    let last: Looked | null = null;
    for (let at = 0; at < TENTHS_A_TURN; at += tenths) {
      const place = placeAt(radiusSteps, at, stepMm);
      last = lookAt(metal, place, mostRoomMm, last);
      if (last.isInside && last.roomMm >= leastRoomMm && isInWindow(place, stepMm, window))
        spots.push({ ...place, roomMm: last.roomMm });
    }
  }
  return spots;
}

interface Looked {
  readonly place: Point;
  readonly roomMm: number;
  readonly isInside: boolean;
}

/** Nearer to the last place than that was to any edge, a place lies on the same side of all of them. */
function lookAt(metal: Metal, place: Point, mostRoomMm: number, last: Looked | null): Looked {
  const isBeside = last !== null && distance(place, last.place) < last.roomMm;
  const isInside = isBeside ? last.isInside : metal.holds(place);
  return { place, roomMm: metal.toEdgeMm(place, mostRoomMm), isInside };
}

/** Half a degree, in tenths: what a shop sets an angle to, where that will do. */
export const HALF_DEGREE = 5;

export interface NetTask {
  readonly maxRadiusMm: number;
  readonly netMm: number;
  /** A shop's step of a radius. */
  readonly stepMm: number;
  readonly leastRoomMm: number;
  readonly mostRoomMm: number;
  readonly window: DrillWindow;
}

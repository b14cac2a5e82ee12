import type { Point } from "../../language/design.ts";
import type { Bounds } from "../../outline/segment-geometry.ts";
import type { ReadCurve, ReadVertex } from "./read-cut.ts";

/** What a closed curve of the file encloses, whichever way round it runs, and how far it reaches. */
export interface CurveMeasure {
  readonly area: number;
  readonly centroid: Point;
  readonly length: number;
  readonly bounds: Bounds;
}

/** Worked out from the curve's own vertices and bulges, in the file's unit; arcs are not flattened. */
export function measureCurve(curve: ReadCurve): CurveMeasure {
  return curve.kind === "circle"
    ? measureCircle(curve.centre, curve.radius)
    : measurePolyline(curve.vertices);
}

function measureCircle(centre: Point, radius: number): CurveMeasure {
  const bounds = {
    minX: centre.x - radius,
    minY: centre.y - radius,
    maxX: centre.x + radius,
    maxY: centre.y + radius,
  };
  return { area: Math.PI * radius * radius, centroid: centre, length: 2 * Math.PI * radius, bounds };
}

/**
 * Shoelace formula for the chords, a circular segment besides for each bulge; about the first vertex, so that a curve
 * far from the origin keeps its digits.
 */
function measurePolyline(vertices: readonly ReadVertex[]): CurveMeasure {
  const reference = vertices[0] ?? { x: 0, y: 0 };
  let area = 0;
  let firstX = 0;
  let firstY = 0;
  let length = 0;
  const reach: Point[] = [];
  for (const piece of piecesOf(vertices)) {
    const x0 = piece.from.x - reference.x;
    const y0 = piece.from.y - reference.y;
    const x1 = piece.to.x - reference.x;
    const y1 = piece.to.y - reference.y;
    const cross = x0 * y1 - x1 * y0;
    const cap = capOf(piece);
    area += cross / 2 + cap.area;
    firstX += (cross * (x0 + x1)) / 6 + (cap.area * (x0 + x1)) / 2 + cap.first * cap.left.x;
    firstY += (cross * (y0 + y1)) / 6 + (cap.area * (y0 + y1)) / 2 + cap.first * cap.left.y;
    length += lengthOf(piece);
    reach.push(piece.from, ...outermostOf(piece));
  }
  const centroid = { x: reference.x + firstX / area, y: reference.y + firstY / area };
  return { area: Math.abs(area), centroid, length, bounds: boundsOf(reach) };
}

/** A line or arc of a curve. */
export interface Piece {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
}

/** The pieces of a closed polyline, the closing one last. */
export function piecesOf(vertices: readonly ReadVertex[]): Piece[] {
  return vertices.map((from, index) => {
    const to = vertices[(index + 1) % vertices.length] ?? from;
    return { from, to, bulge: from.bulge };
  });
}

export function chordOf({ from, to }: Piece): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/**
 * The circular segment between chord and arc: its area, and its first moment about the middle of the chord, which
 * points along the chord's left normal. Both have the sign of the bulge's side.
 *
 * With r = c(1+b²)/4b and θ = 4·atan b, area = r²(θ − sin θ)/2; the moment about the circle's centre is c³/12 away from
 * it, and the centre lies c(1−b²)/4b to the left of the middle of the chord.
 */
function capOf(piece: Piece): { area: number; first: number; left: Point } {
  const { from, to, bulge } = piece;
  const chord = chordOf(piece);
  if (bulge === 0 || chord === 0) return { area: 0, first: 0, left: { x: 0, y: 0 } };
  const left = { x: -(to.y - from.y) / chord, y: (to.x - from.x) / chord };
  const square = bulge * bulge;
  /** (θ − sin θ)/b³ */
  const share = angleLessSine(bulge);
  const area = (chord * chord * (1 + square) ** 2 * bulge * share) / 32;
  const areaTimesOffset = (chord ** 3 * (1 - square) * (1 + square) ** 2 * share) / 128;
  return { area, first: areaTimesOffset - chord ** 3 / 12, left };
}

/** Where the closed form has lost three digits and the series below needs no more than its terms. */
const SHALLOW_BULGE = 0.1;
const SERIES_TERMS = 9;

/** (θ − sin θ)/b³ for θ = 4·atan b. For small b a series: θ and sin θ agree in more digits than a number has. */
function angleLessSine(bulge: number): number {
  const square = bulge * bulge;
  if (Math.abs(bulge) > SHALLOW_BULGE) {
    const sine = (4 * bulge * (1 - square)) / (1 + square) ** 2;
    return (4 * Math.atan(bulge) - sine) / (square * bulge);
  }
  // θ/4 = Σ ±b^n/n and sin θ/4 = Σ ±n·b^n over odd n.
  let sum = 0;
  for (let k = SERIES_TERMS; k >= 1; k -= 1) sum = 2 * k + 1 - 1 / (2 * k + 1) - square * sum;
  return 4 * sum;
}

function lengthOf(piece: Piece): number {
  const { bulge } = piece;
  if (bulge === 0) return chordOf(piece);
  const angle = 4 * Math.atan(bulge);
  return radiusOf(piece) * Math.abs(angle);
}

function radiusOf(piece: Piece): number {
  return (chordOf(piece) * (1 + piece.bulge ** 2)) / (4 * Math.abs(piece.bulge));
}

const OUTWARD: readonly Point[] = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
  { x: 0, y: -1 },
];

/**
 * The points of an arc that reach farthest left, right, up or down. They are measured from the chord and not from the
 * centre, which for a shallow arc is so far away that it has no digits left for them.
 */
function outermostOf(piece: Piece): Point[] {
  const chord = chordOf(piece);
  if (piece.bulge === 0 || chord === 0) return [];
  const side = Math.sign(piece.bulge);
  const along = { x: (piece.to.x - piece.from.x) / chord, y: (piece.to.y - piece.from.y) / chord };
  const out = { x: side * along.y, y: -side * along.x };
  const half = 2 * Math.atan(Math.abs(piece.bulge));
  const radius = radiusOf(piece);
  return OUTWARD.flatMap((direction) => {
    const angle = Math.atan2(dot(direction, along), dot(direction, out));
    if (Math.abs(angle) > half) return [];
    const across = 2 * radius * Math.sin((half + angle) / 2) * Math.sin((half - angle) / 2);
    const beside = radius * Math.sin(angle);
    return {
      x: (piece.from.x + piece.to.x) / 2 + beside * along.x + across * out.x,
      y: (piece.from.y + piece.to.y) / 2 + beside * along.y + across * out.y,
    };
  });
}

function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

function boundsOf(points: readonly Point[]): Bounds {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const least = (values: readonly number[]) =>
    values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = (values: readonly number[]) =>
    values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  return { minX: least(xs), minY: least(ys), maxX: most(xs), maxY: most(ys) };
}

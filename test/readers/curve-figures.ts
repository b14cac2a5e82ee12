/**
 * Area, centroid and extents of curves as a drawing's reader hands them over, by numerical quadrature and search: no
 * formula is shared with the code that is tested.
 */
export interface FoundVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

export type FoundCurve =
  | {
      readonly kind: "circle";
      readonly layer: string;
      readonly x: number;
      readonly y: number;
      readonly radius: number;
    }
  | {
      readonly kind: "polyline";
      readonly layer: string;
      readonly closed: boolean;
      readonly vertices: readonly FoundVertex[];
    };

export interface CurveFigures {
  readonly area: number;
  readonly centroid: readonly [x: number, y: number];
  readonly bounds: readonly [x0: number, y0: number, x1: number, y1: number];
}

/** A place on a curve at parameter t from 0 to 1, and how fast it moves with t. */
interface Motion {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}
type Path = (t: number) => Motion;

/** Outer curves less inner ones. */
export function figuresOf(outer: readonly FoundCurve[], inner: readonly FoundCurve[]): CurveFigures {
  let [area, firstX, firstY] = [0, 0, 0];
  const add = (sign: number) => (curve: FoundCurve) => {
    const own = integralsOf(pathsOf(curve));
    const turn = sign * Math.sign(own.area);
    area += turn * own.area;
    firstX += turn * own.firstX;
    firstY += turn * own.firstY;
  };
  outer.forEach(add(1));
  inner.forEach(add(-1));
  return { area, centroid: [firstX / area, firstY / area], bounds: boundsOf(outer.flatMap(pathsOf)) };
}

function pathsOf(curve: FoundCurve): Path[] {
  if (curve.kind === "circle") return [0, 1, 2, 3].map((quarter) => quarterCircle(curve, quarter));
  const { vertices } = curve;
  return vertices.map((from, i) => piece(from, vertices[(i + 1) % vertices.length] ?? from));
}

function quarterCircle({ x, y, radius }: { x: number; y: number; radius: number }, quarter: number): Path {
  return (t) => {
    const angle = ((quarter + t) * Math.PI) / 2;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const rate = (radius * Math.PI) / 2;
    return { x: x + radius * cos, y: y + radius * sin, dx: -rate * sin, dy: rate * cos };
  };
}

/** A line, or the arc of included angle 4·atan(bulge) that turns left for a positive bulge. */
function piece(from: FoundVertex, to: FoundVertex): Path {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const sweep = 4 * Math.atan(from.bulge);
  if (sweep === 0) return (t) => ({ x: from.x + t * dx, y: from.y + t * dy, dx, dy });
  // The chord at parameter t is turned by −sweep(1 − t)/2 against the whole, and is sin(sweep·t/2)/sin(sweep/2) as long.
  const half = sweep / 2;
  return (t) => {
    const scale = Math.sin(half * t) / Math.sin(half);
    const turn = -half * (1 - t);
    const rate = half / Math.sin(half);
    const direction = -half * (1 - 2 * t);
    const along = (s: number, angle: number): [number, number] => [
      s * (dx * Math.cos(angle) - dy * Math.sin(angle)),
      s * (dx * Math.sin(angle) + dy * Math.cos(angle)),
    ];
    const [x, y] = along(scale, turn);
    const [vx, vy] = along(rate, direction);
    return { x: from.x + x, y: from.y + y, dx: vx, dy: vy };
  };
}

/** Green's theorem, about the first point: ½∮(x dy − y dx), ½∮x² dy, −½∮y² dx. */
function integralsOf(paths: readonly Path[]): { area: number; firstX: number; firstY: number } {
  const start = paths[0]?.(0) ?? { x: 0, y: 0 };
  let [area, firstX, firstY] = [0, 0, 0];
  for (const path of paths) {
    for (const [t, weight] of NODES) {
      const at = path(t);
      const [x, y] = [at.x - start.x, at.y - start.y];
      area += (weight * (x * at.dy - y * at.dx)) / 2;
      firstX += (weight * x * x * at.dy) / 2;
      firstY -= (weight * y * y * at.dx) / 2;
    }
  }
  return { area, firstX: firstX + area * start.x, firstY: firstY + area * start.y };
}

/** Gauss–Legendre nodes and weights on 0 to 1, enough for arcs of a full turn: found by Newton's method. */
const NODES: readonly (readonly [t: number, weight: number])[] = gaussLegendre(24);

function gaussLegendre(order: number): [number, number][] {
  return Array.from({ length: order }, (_, k) => {
    let x = Math.cos((Math.PI * (k + 0.75)) / (order + 0.5));
    let slope = 1;
    for (let step = 0; step < 8; step += 1) {
      const [value, derivative] = legendre(order, x);
      slope = derivative;
      x -= value / derivative;
    }
    [, slope] = legendre(order, x);
    return [(x + 1) / 2, 1 / ((1 - x * x) * slope * slope)];
  });
}

function legendre(order: number, x: number): [value: number, derivative: number] {
  let [before, value] = [1, x];
  for (let n = 2; n <= order; n += 1)
    [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n];
  return [value, (order * (x * value - before)) / (x * x - 1)];
}

function boundsOf(paths: readonly Path[]): [number, number, number, number] {
  const most = (value: (at: Motion) => number) =>
    paths.reduce(
      (best, path) =>
        Math.max(
          best,
          greatest((t) => value(path(t))),
        ),
      Number.NEGATIVE_INFINITY,
    );
  return [-most(({ x }) => -x), -most(({ y }) => -y), most(({ x }) => x), most(({ y }) => y)];
}

/** The greatest value on 0 to 1 of a function that rises and falls at most twice. */
function greatest(value: (t: number) => number): number {
  const steps = 12;
  const samples = Array.from({ length: steps + 1 }, (_, i) => value(i / steps));
  const top = samples.indexOf(Math.max(...samples));
  let [low, high] = [Math.max(0, top - 1) / steps, Math.min(steps, top + 1) / steps];
  for (let i = 0; i < 50; i += 1) {
    const [left, right] = [low + (high - low) / 3, high - (high - low) / 3];
    if (value(left) < value(right)) low = left;
    else high = right;
  }
  return Math.max(samples[top] ?? Number.NaN, value((low + high) / 2));
}

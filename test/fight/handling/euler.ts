/**
 * Turning bodies followed step by step, knowing nothing of gyroscopes: angular momentum and its rate of change, rotation
 * matrices, small steps. x ahead, y left, z up, the spin axis along y.
 */
type Vector = readonly [number, number, number];
type Matrix = readonly [Vector, Vector, Vector];

const dot = ([a, b, c]: Vector, [p, q, r]: Vector) => a * p + b * q + c * r;
const add = ([a, b, c]: Vector, [p, q, r]: Vector, share: number): Vector => [
  a + share * p,
  b + share * q,
  c + share * r,
];
const apply = (m: Matrix, v: Vector): Vector => [dot(m[0], v), dot(m[1], v), dot(m[2], v)];
const transposed = ([a, b, c]: Matrix): Matrix => [
  [a[0], b[0], c[0]],
  [a[1], b[1], c[1]],
  [a[2], b[2], c[2]],
];
const product = (m: Matrix, n: Matrix): Matrix => {
  const columns = transposed(n);
  const row = (r: Vector): Vector => [dot(r, columns[0]), dot(r, columns[1]), dot(r, columns[2])];
  return [row(m[0]), row(m[1]), row(m[2])];
};

/** A turn by a vector's length about it, by Rodrigues' formula. */
function turn([x, y, z]: Vector): Matrix {
  const angle = Math.hypot(x, y, z);
  if (angle === 0)
    return [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
  const [a, b, c] = [x / angle, y / angle, z / angle];
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const k = 1 - cos;
  return [
    [cos + a * a * k, a * b * k - c * sin, a * c * k + b * sin],
    [b * a * k + c * sin, cos + b * b * k, b * c * k - a * sin],
    [c * a * k - b * sin, c * b * k + a * sin, cos + c * c * k],
  ];
}

const STEP_S = 1e-6;

/**
 * Where the axle of a free disc points after a time: it starts along y, spinning and turning about z, with a torque
 * about what is ahead of it. Its angular momentum is changed by the torque; from it comes how it turns.
 */
export function axisAfterTorque(of: {
  inertia: number;
  spin: number;
  yaw: number;
  onRotor: number;
  seconds: number;
}): { x: number; y: number; z: number } {
  const across = of.inertia / 2;
  let attitude: Matrix = turn([0, 0, 0]);
  let momentum: Vector = [0, of.inertia * of.spin, across * of.yaw];
  for (let i = 0; i < Math.round(of.seconds / STEP_S); i++) {
    const forward: Vector = [Math.cos(of.yaw * i * STEP_S), Math.sin(of.yaw * i * STEP_S), 0];
    momentum = add(momentum, forward, of.onRotor * STEP_S);
    const inBody = apply(transposed(attitude), momentum);
    const turning = apply(attitude, [inBody[0] / across, inBody[1] / of.inertia, inBody[2] / across]);
    attitude = product(turn([turning[0] * STEP_S, turning[1] * STEP_S, turning[2] * STEP_S]), attitude);
  }
  const [x, y, z] = apply(attitude, [0, 1, 0]);
  return { x, y, z };
}

/**
 * The moment about x, in the robot's frame, that a slender bar puts on a robot which carries it round at an even yaw rate: its
 * angular momentum at each moment from its own inertia, differenced. Mean and largest size over one turn.
 */
export function meanMomentOfCarriedBar(of: { inertia: number; spin: number; yaw: number }): {
  mean: number;
  most: number;
} {
  const along = (t: number): Matrix => product(turn([0, 0, of.yaw * t]), turn([0, of.spin * t, 0]));
  /** Slender: no inertia about its length, which is along x as it starts. */
  const momentumAt = (t: number): Vector => {
    const attitude = along(t);
    const turning = add(apply(turn([0, 0, of.yaw * t]), [0, of.spin, 0]), [0, 0, of.yaw], 1);
    const inBody = apply(transposed(attitude), turning);
    return apply(attitude, [0, of.inertia * inBody[1], of.inertia * inBody[2]]);
  };
  const count = 2000;
  const period = (2 * Math.PI) / Math.abs(of.spin);
  const moments = Array.from({ length: count }, (_, i) => {
    const t = (period * i) / count;
    const rate = add(momentumAt(t + STEP_S), momentumAt(t - STEP_S), -1);
    // On the robot the opposite of what changes the bar.
    return -apply(turn([0, 0, -of.yaw * t]), rate)[0] / (2 * STEP_S);
  });
  const mean = moments.reduce((sum, moment) => sum + moment, 0) / count;
  return { mean, most: Math.max(...moments.map(Math.abs)) };
}

/**
 * Bars at random, by seed: hooked teeth, loops that run back under themselves, lines and arcs. The axis is
 * well inside.
 */
import { flatten } from "../../geometry/outline/flatten.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { type BulgeCorner, bulgeLoop, type Pair } from "../support/loops.ts";

/** Mulberry32: a small generator of known good spread, so that a seed names a bar on every machine. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const LEAST_CLEARANCE = 4;

/**
 * A simple counter-clockwise loop with the axis inside. In turns a twisted star, one grown into tendrils, a
 * saw blade; some of the sides are bent into arcs, or some of the corners rounded.
 */
export function randomBar(seed: number): Loop {
  const random = seeded(seed);
  const makers = [twistedStar, grownPolygon, sawBlade];
  const make = makers[seed % makers.length] ?? twistedStar;
  for (;;) {
    const corners = make(random);
    if (!isSound(corners)) continue;
    return bulgeLoop(random() < 0.6 ? withArcs(corners, random) : withRounds(corners, random));
  }
}

/**
 * `randomBar`, and in turns with it a bar of one to four arms with waists and hooks. What `randomBar` gives for a
 * seed stays as it is.
 */
export function variedBar(seed: number): Loop {
  return seed % 3 === 2 ? hookedBar(seed) : randomBar(seed);
}

/**
 * One to four arms, each with a waist and a head. The head hooks forwards or backwards over the gullet below it,
 * and the gullet may run on outwards under the hook.
 */
export function hookedBar(seed: number): Loop {
  const random = seeded(seed);
  for (;;) {
    const corners = hookedArms(random);
    if (!isSound(corners)) continue;
    return bulgeLoop(random() < 0.6 ? withArcs(corners, random) : withRounds(corners, random));
  }
}

function hookedArms(random: () => number): Pair[] {
  const arms = 1 + Math.floor(random() * 4);
  const between = (low: number, high: number) => low + (high - low) * random();
  const hub = between(14, 26);
  const forwards = random() < 0.5;
  const alike = random() < 0.5 ? hookedArm(between, hub) : null;
  return Array.from({ length: arms }, (_, i) => {
    const arm = alike ?? hookedArm(between, hub);
    const sided = forwards ? arm : arm.map(([along, across]): Pair => [along, -across]).reverse();
    const placed = sided.map((point) => turnedBy(point, (2 * Math.PI * i) / arms));
    const flanks = arms === 1 ? [0.33, 0.5, 0.67] : arms === 2 ? [0.25] : [];
    return [...placed, ...flanks.map((share) => turnedBy([hub, 0], 2 * Math.PI * (i / arms + share)))];
  }).flat();
}

/** An arm along +x, its hook on the left of it: up along its right side, over the head and back. */
function hookedArm(between: (low: number, high: number) => number, hub: number): Pair[] {
  const waist = between(4, 9);
  const head = between(10, 20);
  const beak = between(head + 4, head + 22);
  const root = between(62, 78);
  const beakAt = between(55, root + 4);
  return [
    [hub, -between(waist, 11)],
    [between(35, 50), -waist],
    [between(70, 85), -head],
    [between(92, 104), -between(2, head)],
    [between(96, 110), between(4, head)],
    [beakAt + between(8, 20), beak],
    [beakAt, beak - between(1, 6)],
    [root + between(2, 12), between(waist + 1, head)],
    [between(hub + 12, 45), waist],
    [hub, between(waist, 11)],
  ];
}

function turnedBy([x, y]: Pair, angleRad: number): Pair {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  return [cos * x - sin * y, sin * x + cos * y];
}

/** A star whose outer parts are turned ahead or behind, so that its spikes lean over their gullets. */
function twistedStar(random: () => number): Pair[] {
  const count = 5 + Math.floor(random() * 12);
  const twist = (random() - 0.5) * 3;
  return Array.from({ length: count * 3 }, (_, i) => {
    const spike = i % 3 === 0;
    const radius = spike ? 50 + 60 * random() : 15 + 50 * random();
    const angle = ((i + 0.7 * (random() - 0.5)) * 2 * Math.PI) / (count * 3) + twist * (radius / 110) ** 2;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** Equal or uneven saw teeth, the face raked forwards or back, some with a step in the gullet. */
function sawBlade(random: () => number): Pair[] {
  const teeth = 1 + Math.floor(random() * 4);
  const rake = (random() - 0.5) * 0.5;
  const stepped = random() < 0.5;
  const points: Pair[] = [];
  const put = (radius: number, angle: number) =>
    points.push([radius * Math.cos(angle), radius * Math.sin(angle)]);
  for (let i = 0; i < teeth; i++) {
    const angle = (2 * Math.PI * i) / teeth;
    const width = (2 * Math.PI) / teeth;
    const root = 40 + 30 * random();
    put(root * (0.9 + 0.2 * random()), angle + width * (0.1 + 0.1 * random()));
    put(root + (100 - root) * random() * 0.6, angle + width * 0.4);
    put(100 - 10 * random(), angle + width * 0.8);
    put(100, angle + width * 0.95);
    if (stepped) put(root + 20, angle + width * 0.95 - rake * 0.4);
    put(root, angle + width * 0.95 - rake);
  }
  return points;
}

/** A triangle round the axis into whose sides random points are pulled as long as it stays simple. */
function grownPolygon(random: () => number): Pair[] {
  let points: Pair[] = [
    [60, 0],
    [-30, 50],
    [-30, -50],
  ];
  const wanted = 8 + Math.floor(random() * 22);
  for (let tries = 0; points.length < wanted && tries < 4000; tries++) {
    const at = Math.floor(random() * points.length);
    const radius = 10 + 100 * Math.sqrt(random());
    const angle = 2 * Math.PI * random();
    const point: Pair = [radius * Math.cos(angle), radius * Math.sin(angle)];
    const grown = [...points.slice(0, at + 1), point, ...points.slice(at + 1)];
    if (isSound(grown)) points = grown;
  }
  return points;
}

/** Some sides bent into arcs, each bend kept only if the loop stays sound. */
function withArcs(corners: readonly Pair[], random: () => number): BulgeCorner[] {
  let bent: BulgeCorner[] = corners.map(([x, y]) => [x, y, 0]);
  for (let i = 0; i < corners.length; i++) {
    if (random() < 0.5) continue;
    const bulge = (random() - 0.5) * 1.6;
    const tried = bent.map((corner, k): BulgeCorner => (k === i ? [corner[0], corner[1], bulge] : corner));
    if (isSound(flatCorners(tried))) bent = tried;
  }
  return bent;
}

/** Some corners rounded by arcs that leave their sides smoothly: by the bulge tan(turn/4). */
function withRounds(corners: readonly Pair[], random: () => number): BulgeCorner[] {
  const rounded = corners.flatMap((corner, i): BulgeCorner[] => {
    if (random() < 0.4) return [[...corner, 0]];
    const before = corners.at(i - 1) ?? corner;
    const after = corners[(i + 1) % corners.length] ?? corner;
    const [ax, ay] = [corner[0] - before[0], corner[1] - before[1]];
    const [bx, by] = [after[0] - corner[0], after[1] - corner[1]];
    const setback = (0.1 + 0.35 * random()) * Math.min(Math.hypot(ax, ay), Math.hypot(bx, by));
    const [a, b] = [setback / Math.hypot(ax, ay), setback / Math.hypot(bx, by)];
    const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    return [
      [corner[0] - a * ax, corner[1] - a * ay, Math.tan(turn / 4)],
      [corner[0] + b * bx, corner[1] + b * by, 0],
    ];
  });
  return isSound(flatCorners(rounded)) ? rounded : corners.map(([x, y]) => [x, y, 0]);
}

function flatCorners(corners: readonly BulgeCorner[]): Pair[] {
  return flatten(bulgeLoop(corners), 0.02).map(({ x, y }): Pair => [x, y]);
}

/** Simple, counter-clockwise, and the axis inside with some room. */
function isSound(points: readonly Pair[]): boolean {
  const edges = points.map((from, i) => [from, points[(i + 1) % points.length] ?? from] as const);
  if (edges.some(([a, b]) => distanceToAxis(a, b) < LEAST_CLEARANCE)) return false;
  const turned = edges.reduce(
    (sum, [a, b]) => sum + Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]),
    0,
  );
  if (Math.abs(turned - 2 * Math.PI) > 1e-6) return false;
  return edges.every(([a, b], i) =>
    edges.every(
      ([c, d], k) => k <= i || k === i + 1 || (i === 0 && k === edges.length - 1) || apart(a, b, c, d),
    ),
  );
}

function distanceToAxis(a: Pair, b: Pair): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const share = Math.min(1, Math.max(0, -(a[0] * dx + a[1] * dy) / (dx * dx + dy * dy)));
  return Math.hypot(a[0] + share * dx, a[1] + share * dy);
}

/** Whether two edges neither cross nor come nearer than a hair. */
function apart(a: Pair, b: Pair, c: Pair, d: Pair): boolean {
  const clear =
    Math.max(a[0], b[0]) < Math.min(c[0], d[0]) - 0.1 ||
    Math.max(c[0], d[0]) < Math.min(a[0], b[0]) - 0.1 ||
    Math.max(a[1], b[1]) < Math.min(c[1], d[1]) - 0.1 ||
    Math.max(c[1], d[1]) < Math.min(a[1], b[1]) - 0.1;
  if (clear) return true;
  const side = (p: Pair, q: Pair, r: Pair) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  const crosses = side(a, b, c) > 0 !== side(a, b, d) > 0 && side(c, d, a) > 0 !== side(c, d, b) > 0;
  const near = [gap(a, c, d), gap(b, c, d), gap(c, a, b), gap(d, a, b)].some((distance) => distance < 0.1);
  return !crosses && !near;
}

function gap(p: Pair, a: Pair, b: Pair): number {
  return distanceToAxis([a[0] - p[0], a[1] - p[1]], [b[0] - p[0], b[1] - p[1]]);
}

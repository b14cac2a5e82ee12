import { aroundAt, outwardAt } from "./curve.ts";
import type { Piece } from "./piece.ts";

/**
 * A pencil of rays over a stretch of outline. `x` tells the rays apart and grows once from the first point of
 * the stretch to the last; `far` grows along a ray from the light. Pieces are counted from the start of the
 * stretch.
 */
export interface Light {
  /** `x` of the first point: the light stops there, as if a wall stood on the first point. */
  readonly start: number;
  readonly count: number;
  pieceAt(index: number): Piece;
  xFrom(index: number): number;
  xTo(index: number): number;
  /** No part of the piece has a larger `x`. */
  xBound(index: number): number;
  /** Where on the piece `x` turns about, or null. There is at most one such place. */
  turnOf(index: number): number | null;
  xAt(index: number, s: number): number;
  /** Where a part of the piece on which `x` runs one way meets a ray. */
  find(index: number, from: number, to: number, x: number): number;
  farAt(index: number, s: number): number;
}

/** A part of a piece that the light reaches; `x` grows along it. */
export interface Lit {
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly xFrom: number;
  readonly xTo: number;
}

/** A part of a piece along which `x` runs one way. */
interface Run {
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly xFrom: number;
  readonly xTo: number;
}

/** A lit part as far as it is known: `xTo` shrinks while something nearer is drawn over it. */
interface Open {
  readonly run: Run;
  readonly xFrom: number;
  xTo: number;
  /**
   * How far out the edge is that throws the shadow in which this part begins; null where no shadow ends here.
   */
  readonly shadowEdge: number | null;
}

/** What the walk along the outline is doing. README.md draws each of these. */
type Walk =
  /** In the light, `x` growing. */
  | { readonly kind: "lit" }
  /** In front of what was lit, `x` falling: what lies behind is struck off. */
  | { readonly kind: "covering" }
  /**
   * In the pocket behind an edge: out of it where `x` grows past the gate, nearer than all that passed the
   * gate before.
   */
  | { readonly kind: "pocket"; readonly gate: number; readonly edge: number; readonly nearest: number }
  /**
   * Between something lit and what has been drawn over it: out where `x` falls below the gate, into what it
   * was before.
   */
  | { readonly kind: "covered"; readonly gate: number; readonly under: Walk };

const LIT: Walk = { kind: "lit" };
const COVERING: Walk = { kind: "covering" };

/** Everything the light reaches, `x` growing without a gap. One walk along the stretch. */
export function litBy(light: Light): Lit[] {
  const open: Open[] = [];
  let walk: Walk = { kind: "pocket", gate: light.start, edge: -Infinity, nearest: Infinity };
  let before: Run | null = null;
  for (let index = 0; index < light.count; index++) {
    // Nothing in a pocket matters until it comes out: most of an outline is passed over here.
    if (walk.kind === "pocket" && light.xBound(index) <= walk.gate) continue;
    for (const run of runsOf(light, index)) {
      walk = walkOn(light, open, walk, before, run);
      before = run;
    }
  }
  return open.filter(({ xFrom, xTo }) => xTo > xFrom).map((part) => settled(light, part));
}

/** A piece in one or two runs; a run whose ends share a ray is left out. */
function runsOf(light: Light, index: number): Run[] {
  const { from, to } = light.pieceAt(index);
  const [xFrom, xTo] = [light.xFrom(index), light.xTo(index)];
  const turn = light.turnOf(index);
  if (turn === null) return xFrom === xTo ? [] : [{ index, from, to, xFrom, xTo }];
  const x = light.xAt(index, turn);
  return [
    { index, from, to: turn, xFrom, xTo: x },
    { index, from: turn, to, xFrom: x, xTo },
  ].filter((run) => run.xFrom !== run.xTo);
}

function walkOn(light: Light, open: Open[], walk: Walk, before: Run | null, run: Run): Walk {
  const forward = run.xTo > run.xFrom;
  switch (walk.kind) {
    case "lit":
      if (forward) return enterLight(open, run, run.xFrom, null);
      if (before === null || foldsNearer(light, before, run)) return cover(light, open, run);
      return {
        kind: "pocket",
        gate: run.xFrom,
        edge: light.farAt(before.index, before.to),
        nearest: Infinity,
      };
    case "covering":
      if (!forward) return cover(light, open, run);
      if (before === null || foldsNearer(light, before, run)) return enterLight(open, run, run.xFrom, null);
      return { kind: "covered", gate: run.xFrom, under: COVERING };
    case "pocket":
      return forward && run.xTo > walk.gate ? leavePocket(light, open, walk, run) : walk;
    case "covered":
      if (forward || run.xTo >= walk.gate) return walk;
      return walk.under.kind === "covering" ? cover(light, open, run) : walk.under;
  }
}

function enterLight(open: Open[], run: Run, xFrom: number, shadowEdge: number | null): Walk {
  open.push({ run, xFrom, xTo: run.xTo, shadowEdge });
  return LIT;
}

function leavePocket(light: Light, open: Open[], pocket: Walk & { kind: "pocket" }, run: Run): Walk {
  const { gate, edge, nearest } = pocket;
  const seen = nearest === Infinity || farOnRay(light, run, gate) < nearest;
  return seen ? enterLight(open, run, gate, edge) : { kind: "covered", gate, under: pocket };
}

/**
 * Strike off what a run that goes back in front of it hides, until the run ends or slips in behind an edge.
 */
function cover(light: Light, open: Open[], run: Run): Walk {
  for (let last = open.at(-1); last !== undefined; last = open.at(-1)) {
    if (last.xFrom <= run.xTo) {
      last.xTo = run.xTo;
      return COVERING;
    }
    open.pop();
    if (last.shadowEdge === null) continue;
    const gate = last.xFrom;
    const nearest = farOnRay(light, run, gate);
    if (nearest > last.shadowEdge) return { kind: "pocket", gate, edge: last.shadowEdge, nearest };
  }
  return COVERING;
}

function farOnRay(light: Light, run: Run, x: number): number {
  return light.farAt(run.index, placeOnRay(light, run, x));
}

function placeOnRay(light: Light, run: Run, x: number): number {
  if (x === run.xFrom) return run.from;
  return x === run.xTo ? run.to : light.find(run.index, run.from, run.to, x);
}

function settled(light: Light, { run, xFrom, xTo }: Open): Lit {
  return {
    index: run.index,
    from: placeOnRay(light, run, xFrom),
    to: placeOnRay(light, run, xTo),
    xFrom,
    xTo,
  };
}

/** A step along a ray that is lower than this share of the radius is rounding. */
const NO_HEIGHT_SHARE = 1e-12;
/**
 * Headings that turn by less than this go straight on, or straight back; rounding of coordinates is far below
 * it.
 */
const STRAIGHT_SINE = 1e-9;

/**
 * Whether, where `x` turns about between two runs, the second lies nearer to the light. The outline's inside
 * is on the right of the walk, so a turn to the left goes nearer where `x` grew before, a turn to the right
 * where it fell.
 */
function foldsNearer(light: Light, before: Run, run: Run): boolean {
  const [first, second] = [light.pieceAt(before.index), light.pieceAt(run.index)];
  if (before.index === run.index) return first.rises;
  // Anything between the two runs stands along the ray: what is farther out is nearer to the light.
  const climbed = second.alongFrom - first.alongTo;
  if (Math.abs(climbed) > NO_HEIGHT_SHARE * first.alongTo) return climbed > 0;
  const [outA, aroundA] = [outwardAt(first.curve, first.to), aroundAt(first.curve, first.to)];
  const [outB, aroundB] = [outwardAt(second.curve, second.from), aroundAt(second.curve, second.from)];
  const left = aroundA * outB - outA * aroundB;
  if (Math.abs(left) > STRAIGHT_SINE) return left > 0 === before.xTo > before.xFrom;
  return aroundA * aroundB + outA * outB > 0 ? first.rises : cuspFoldsNearer(light, before, run);
}

/** The outline goes back the way it came: compare the two runs where the shorter one ends. */
function cuspFoldsNearer(light: Light, before: Run, run: Run): boolean {
  const forward = before.xTo > before.xFrom;
  const x = forward ? Math.max(before.xFrom, run.xTo) : Math.min(before.xFrom, run.xTo);
  return farOnRay(light, run, x) < farOnRay(light, before, x);
}

/** The closed way round the outside, out of pieces that are clear of the outline. */
import { boundsOf, signedAreaOf, tangentAt } from "../segment-geometry.ts";
import { times, turnBetween, wrapped } from "../vector.ts";
import type { Piece } from "./pieces.ts";

/**
 * The outer boundary as a row of pieces, the last one ending where the first begins, no node passed twice; null where
 * there is none.
 *
 * All pieces run the way of the outline and lie on the outer boundary or inside it. So the one that reaches farthest
 * to the right is on it, and the rest is a way from its end back to its start. No way leads wrong: where the boundary
 * touches itself and a pocket opens, that can be left through the same node only.
 */
export function outerBoundary(pieces: readonly Piece[], leastAreaMm2: number): Piece[] | null {
  const live = withoutDeadEnds(pieces);
  const leaving = groupBy(live, ({ fromNode }) => fromNode);
  const starts = live.map((piece) => ({ piece, maxX: boundsOf(piece.segment).maxX }));
  starts.sort((a, b) => b.maxX - a.maxX);
  for (const { piece } of starts) {
    const loop = wayBack(piece, leaving);
    if (loop === null) continue;
    const source = piece.segment.source;
    if (signedAreaOf({ segments: loop.map(({ segment }) => segment), source }) >= leastAreaMm2) return loop;
  }
  return null;
}

function groupBy(pieces: readonly Piece[], nodeOf: (piece: Piece) => number): Map<number, Piece[]> {
  const groups = new Map<number, Piece[]>();
  for (const piece of pieces) {
    const group = groups.get(nodeOf(piece));
    if (group === undefined) groups.set(nodeOf(piece), [piece]);
    else group.push(piece);
  }
  return groups;
}

/** Without the pieces that nothing leads to or that lead nowhere, such as the ends of curves at concave corners. */
function withoutDeadEnds(pieces: readonly Piece[]): Piece[] {
  const leaving = groupBy(pieces, ({ fromNode }) => fromNode);
  const arriving = groupBy(pieces, ({ toNode }) => toNode);
  const out = new Map([...leaving].map(([node, group]) => [node, group.length]));
  const into = new Map([...arriving].map(([node, group]) => [node, group.length]));
  const dead = new Set<Piece>();
  const waiting = pieces.filter(({ fromNode, toNode }) => !into.has(fromNode) || !out.has(toNode));
  for (let piece = waiting.pop(); piece !== undefined; piece = waiting.pop()) {
    if (dead.has(piece)) continue;
    dead.add(piece);
    const { fromNode, toNode } = piece;
    out.set(fromNode, (out.get(fromNode) ?? 0) - 1);
    into.set(toNode, (into.get(toNode) ?? 0) - 1);
    if (out.get(fromNode) === 0) waiting.push(...(arriving.get(fromNode) ?? []));
    if (into.get(toNode) === 0) waiting.push(...(leaving.get(toNode) ?? []));
  }
  return pieces.filter((piece) => !dead.has(piece));
}

/** From a piece on, back to its start: depth first, the outermost turn first, each node once. */
function wayBack(first: Piece, leaving: ReadonlyMap<number, readonly Piece[]>): Piece[] | null {
  const goal = first.fromNode;
  const path = [first];
  const open = [choicesAfter(first, leaving)];
  const seen = new Set([first.toNode]);
  while (path.length > 0) {
    if (path.at(-1)?.toNode === goal) return path;
    const next = open.at(-1)?.pop();
    if (next === undefined) {
      path.pop();
      open.pop();
    } else if (next.toNode === goal || !seen.has(next.toNode)) {
      seen.add(next.toNode);
      path.push(next);
      open.push(choicesAfter(next, leaving));
    }
  }
  return null;
}

/** The pieces that leave where one ends, the outermost turn, which is the one farthest to the right, last. */
function choicesAfter(piece: Piece, leaving: ReadonlyMap<number, readonly Piece[]>): Piece[] {
  const choices = leaving.get(piece.toNode) ?? [];
  if (choices.length < 2) return [...choices];
  const back = times(tangentAt(piece.segment, 1), -1);
  const fromBack = (choice: Piece): number => wrapped(turnBetween(back, tangentAt(choice.segment, 0)));
  return [...choices].sort((a, b) => fromBack(b) - fromBack(a));
}

import type { Analysis } from "../analysis/analyse.ts";
import type { Point } from "../language/design.ts";
import { formatQuantity } from "../language/format-quantity.ts";
import type { TextEdit } from "../language/text.ts";
import type { PointExpression } from "../language/tree.ts";
import { angleOf, minus, norm, turnBetween } from "../outline/vector.ts";
import { type DraggablePoint, draggablePoints } from "./drag/draggable-points.ts";
import type { DrivingNumber } from "./drag/driving-number.ts";
import { type Rewriting, rewriteNumber } from "./drag/rewrite-number.ts";

export type MoveResult = { readonly edits: readonly TextEdit[] } | { readonly refused: string };

/** As far as the language lets a coordinate be. */
const FARTHEST_MM = 1e5;

/**
 * The edits that take a point to another place, as near as the digits allow that a person would write (0.01 mm, 0.001
 * in, 0.01 deg): each changes one number, in the unit it is written in. A coordinate that is computed stays where it
 * is. Refused where neither can move, or where a let would leave its bounds.
 * @param handleId of `handles` of the same analysis
 */
export function movePoint(analysis: Analysis, handleId: number, to: Point): MoveResult {
  const dragged = draggablePoints(analysis)[handleId];
  if (dragged === undefined) return { refused: "There is no such point in the text." };
  if (!(Math.abs(to.x) <= FARTHEST_MM && Math.abs(to.y) <= FARTHEST_MM))
    return { refused: "That is too far away." };
  const moves =
    dragged.point.kind === "polar" ? polarMoves(analysis, dragged, to) : straightMoves(dragged, to);
  if (moves.length === 0) return { refused: COMPUTED };
  const edits: TextEdit[] = [];
  for (const move of moves) {
    const rewriting = rewritten(analysis, move);
    const refused = rewriting === null ? COMPUTED : boundsRefusal(analysis, move.driving, rewriting);
    if (rewriting === null || refused !== null) return { refused: refused ?? COMPUTED };
    edits.push(...rewriting.edits);
  }
  return { edits: edits.sort((a, b) => a.start - b.start) };
}

const COMPUTED = "This point is computed from other values: change it in the text.";

/** By how much a coordinate is to change, in mm or rad, and the number that it follows. */
interface Move {
  readonly driving: DrivingNumber;
  readonly by: number;
}

function straightMoves({ at, first, second }: DraggablePoint, to: Point): readonly Move[] {
  const { x, y } = minus(to, at);
  const alongX = first === null ? [] : [{ driving: first, by: x }];
  return second === null ? alongX : [...alongX, { driving: second, by: y }];
}

/** Radius and angle move together or not at all. */
function polarMoves(
  analysis: Analysis,
  { point, at, first, second }: DraggablePoint,
  to: Point,
): readonly Move[] {
  const radius = radiusOf(analysis, point);
  if (first === null || second === null || radius === null) return [];
  // A negative radius stays one: the angle is that of the opposite direction.
  const side = radius < 0 ? -1 : 1;
  const byRadius = { driving: first, by: side * norm(to) - radius };
  // On the axis every direction is right; from it, the written angle says in which direction the point lies.
  if (norm(to) === 0) return [byRadius];
  return [byRadius, { driving: second, by: turnTo(analysis, point, at, side, to) }];
}

function radiusOf({ quantityOf }: Analysis, { first }: PointExpression): number | null {
  return first === null ? null : (quantityOf(first)?.value ?? null);
}

function turnTo(
  { quantityOf }: Analysis,
  { second }: PointExpression,
  at: Point,
  side: number,
  to: Point,
): number {
  const angle = second === null ? null : (quantityOf(second)?.value ?? null);
  const written = angle === null ? angleOf(at) : angle;
  const direction = { x: side * Math.cos(written), y: side * Math.sin(written) };
  return turnBetween(direction, to);
}

function rewritten({ source, quantityOf }: Analysis, { driving, by }: Move): Rewriting | null {
  const { number, sign, place } = driving;
  const value = quantityOf(number)?.value;
  return value === undefined ? null : rewriteNumber(source.text, number, place, value + sign * by);
}

function boundsRefusal(
  { design }: Analysis,
  { drivenLet, number }: DrivingNumber,
  { value }: Rewriting,
): string | null {
  const known = design.lets.find(({ name }) => name === drivenLet?.name);
  if (drivenLet === null || known === undefined || known.bounds === null) return null;
  const { from, to } = known.bounds;
  const worth = drivenLet.sign * value;
  const slack = BOUND_TOLERANCE * Math.max(Math.abs(from.value), Math.abs(to.value));
  if (worth >= from.value - slack && worth <= to.value + slack) return null;
  const show = (bound: typeof from) => formatQuantity(bound, number.unit.text);
  return `'${known.name}' has bounds: it stays from ${show(from)} to ${show(to)}.`;
}

/** Bounds are written values, and so is the new one: they differ by rounding alone or not at all. */
const BOUND_TOLERANCE = 1e-12;

import type { Point } from "../design.ts";
import { cosSin } from "../exact-angles.ts";
import type { PointExpression } from "../tree.ts";
import { failure } from "./problems.ts";
import { angle, coordinate, type Scope } from "./values.ts";

/** The last point before: `null` where it could not be evaluated, `undefined` where there is none. */
export type LastPoint = Point | null | undefined;

/** A point from polar coordinates about the spin axis. Quarter turns are exact. */
export function polarPoint(radiusMm: number, angleRad: number): Point {
  const { cos, sin } = cosSin(angleRad);
  return { x: radiusMm * cos + 0, y: radiusMm * sin + 0 };
}

/** The absolute point; null where a problem was reported, here or at the point that this one is relative to. */
export function evaluatePoint(scope: Scope, point: PointExpression | null, last: LastPoint): Point | null {
  if (point === null) return null;
  switch (point.kind) {
    case "cartesian":
      return pair(coordinate(scope, point.first, "x"), coordinate(scope, point.second, "y"), (x, y) => ({
        x,
        y,
      }));
    case "polar":
      return pair(
        coordinate(scope, point.first, "The radius of a polar point"),
        angle(scope, point.second, "The angle of a polar point"),
        polarPoint,
      );
    case "relative":
      return relativePoint(scope, point, last);
  }
}

function relativePoint(scope: Scope, point: PointExpression, last: LastPoint): Point | null {
  const dx = coordinate(scope, point.first, "The step in x");
  const dy = coordinate(scope, point.second, "The step in y");
  if (last === undefined) {
    const message = "'by' counts from the last point, and there is none before this one; write (x, y).";
    scope.report(failure("misplaced-statement", point.range, message));
    return null;
  }
  return last === null ? null : pair(dx, dy, (x, y) => ({ x: last.x + x, y: last.y + y }));
}

function pair<T>(first: number | null, second: number | null, join: (a: number, b: number) => T): T | null {
  return first === null || second === null ? null : join(first, second);
}

/// <reference path="./quadprog.d.ts" />
import { solveQP } from "quadprog";

/** Least ½·d'·B·d + g·d where every row keeps rows·d ≤ room. */
export interface QuadraticProgram {
  /** Symmetric and positive definite. */
  readonly curvature: readonly (readonly number[])[];
  readonly slope: readonly number[];
  readonly rows: readonly (readonly number[])[];
  readonly room: readonly number[];
}

export interface QuadraticSolution {
  readonly step: readonly number[];
  /** One multiplier a row, 0 where it does not press. */
  readonly multipliers: readonly number[];
}

/** Solves the program; null where no step keeps all rows, or where numbers are not finite. */
export function solveQuadratic(program: QuadraticProgram): QuadraticSolution | null {
  const { curvature, slope, rows, room } = program;
  const areNumbers = [...curvature, slope, ...rows, room].every((row) => row.every(Number.isFinite));
  // The library looks for its stopping mark among numbers: what is none would keep it looking.
  if (!areNumbers) return null;
  const { solution, Lagrangian, message } = solveQP(
    fromOne(curvature.map(fromOne)),
    fromOne(slope.map((value) => -value)),
    fromOne(slope.map((_, i) => fromOne(rows.map((row) => -(row[i] ?? 0))))),
    fromOne(room.map((value) => -value)),
  );
  const step = solution?.slice(1) ?? [];
  if (message !== "" || !step.every(Number.isFinite)) return null;
  return { step, multipliers: Lagrangian.slice(1) };
}

/** The library counts from one. */
function fromOne<T>(list: readonly T[]): T[] {
  const [first] = list;
  return first === undefined ? [] : [first, ...list];
}

/** The part of quadprog 1.6.1 that the descent uses; the package brings no types. Every index starts at 1. */
declare module "quadprog" {
  interface Solution {
    solution: number[];
    Lagrangian: number[];
    /** Empty where the program was solved. */
    message: string;
  }
  /** Least ½·d'·D·d − v'·d with A'·d ≥ b, by the dual method of Goldfarb and Idnani (1983). It writes to D and v. */
  export function solveQP(D: number[][], v: number[], A: number[][], b: number[]): Solution;
}

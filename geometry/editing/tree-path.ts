/** The innermost of the nodes around a place; they are given outer ones first. */
import type { CornerTreatment, Expression, Step } from "../language/tree.ts";
import type { TreeNode } from "../language/tree-walk.ts";

export function innermostExpression(path: readonly TreeNode[]): Expression | null {
  return path.flatMap((node) => (node.type === "expression" ? [node.node] : [])).at(-1) ?? null;
}

export function innermostStep(path: readonly TreeNode[]): Step | null {
  return path.flatMap((node) => (node.type === "step" ? [node.node] : [])).at(-1) ?? null;
}

export function innermostCorner(path: readonly TreeNode[]): CornerTreatment | null {
  return path.flatMap((node) => (node.type === "corner" ? [node.node] : [])).at(-1) ?? null;
}

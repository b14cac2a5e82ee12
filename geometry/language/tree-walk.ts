/** Ways through the tree for editor features: every node with its children, in the order of the text. */
import { isBlock } from "./blocks/blocks.ts";
import type { TextRange } from "./text.ts";
import type {
  ArcShape,
  BlockItem,
  CornerTreatment,
  Expression,
  FigureLimit,
  GradeLiteral,
  Identifier,
  Path,
  PointExpression,
  Statement,
  Step,
  Symmetry,
  SyntaxTree,
  UnitExpression,
  UnitFactor,
} from "./tree.ts";

/** A node with what it is, so that nodes without a `kind` of their own can be told apart. */
export type TreeNode =
  | { readonly type: "statement"; readonly node: Statement }
  | { readonly type: "block-item"; readonly node: BlockItem }
  | { readonly type: "symmetry"; readonly node: Symmetry }
  | { readonly type: "path"; readonly node: Path }
  | { readonly type: "step"; readonly node: Step }
  | { readonly type: "corner"; readonly node: CornerTreatment }
  | { readonly type: "point"; readonly node: PointExpression }
  | { readonly type: "expression"; readonly node: Expression }
  | { readonly type: "grade"; readonly node: GradeLiteral }
  | { readonly type: "unit"; readonly node: UnitExpression }
  | { readonly type: "unit-factor"; readonly node: UnitFactor }
  /** The name of a let, an override, a material, a figure or a called function. */
  | { readonly type: "name"; readonly node: Identifier };

export type ExpressionVisitor = (expression: Expression, statement: Statement) => void;

/** Calls the visitor for every node, outer ones first and in the order of the text. */
export function visitTree(tree: SyntaxTree, visitor: (node: TreeNode) => void): void {
  for (const statement of tree.statements) {
    visitNode({ type: "statement", node: statement }, visitor);
  }
}

function visitNode(node: TreeNode, visitor: (node: TreeNode) => void): void {
  visitor(node);
  for (const child of childrenOf(node)) {
    visitNode(child, visitor);
  }
}

/**
 * Calls the visitor for every expression, those inside other expressions included, outer ones first and in the order of
 * the text. `statement` is the innermost statement it stands in: an override rather than its variant.
 */
export function visitExpressions(tree: SyntaxTree, visitor: ExpressionVisitor): void {
  for (const statement of tree.statements) {
    visitStatement(statement, visitor);
  }
}

function visitStatement(statement: Statement, visitor: ExpressionVisitor): void {
  visitNodes(childrenOf({ type: "statement", node: statement }), statement, visitor);
}

function visitNodes(nodes: readonly TreeNode[], statement: Statement, visitor: ExpressionVisitor): void {
  for (const child of nodes) {
    if (child.type === "statement") {
      visitStatement(child.node, visitor);
      continue;
    }
    if (child.type === "expression") {
      visitor(child.node, statement);
    }
    visitNodes(childrenOf(child), statement, visitor);
  }
}

/**
 * The nodes that contain an offset, from the statement to the innermost; empty between statements. An offset right
 * behind a node still belongs to it, as the cursor does behind a word, unless another node starts there.
 */
export function nodeAt(tree: SyntaxTree, offset: number): readonly TreeNode[] {
  const path: TreeNode[] = [];
  let candidates: readonly TreeNode[] = tree.statements.map((node) => ({ type: "statement", node }));
  for (;;) {
    const found = pick(candidates, offset);
    if (found === null) {
      return path;
    }
    path.push(found);
    candidates = childrenOf(found);
  }
}

function pick(nodes: readonly TreeNode[], offset: number): TreeNode | null {
  const touching = nodes.filter(({ node }) => touches(node.range, offset));
  return touching.find(({ node }) => offset < node.range.end) ?? touching.at(-1) ?? null;
}

function touches(range: TextRange, offset: number): boolean {
  return range.start <= offset && offset <= range.end;
}

/** The children of a node, in the order of the text. Parts that are missing are left out. */
export function childrenOf(parent: TreeNode): readonly TreeNode[] {
  switch (parent.type) {
    case "statement":
      return statementChildren(parent.node);
    case "block-item":
      return blockItemChildren(parent.node);
    case "symmetry":
      return parent.node.kind === "repeat" ? expressions(parent.node.count) : [];
    case "path":
      return parent.node.steps.map((node) => ({ type: "step", node }));
    case "step":
      return stepChildren(parent.node);
    case "corner":
      return expressions(parent.node.size);
    case "point":
      return expressions(parent.node.first, parent.node.second);
    case "expression":
      return expressionChildren(parent.node);
    case "unit":
      return parent.node.factors.map((node) => ({ type: "unit-factor", node }));
    case "grade":
    case "unit-factor":
    case "name":
      return [];
  }
}

function statementChildren(statement: Statement): readonly TreeNode[] {
  if (isBlock(statement)) {
    return statement.body.map((node) => ({ type: "block-item", node }));
  }
  switch (statement.kind) {
    case "bar":
      return [];
    case "thickness":
    case "density":
    case "yield":
    case "bore":
      return expressions(statement.value);
    case "material":
      return names(statement.name);
    case "let": {
      const { name, value, bounds } = statement;
      return [...names(name), ...expressions(value, bounds?.from ?? null, bounds?.to ?? null)];
    }
    case "override":
      return [...names(statement.name), ...expressions(statement.value)];
    case "outline":
      return [...symmetries(statement.symmetry), ...paths(statement.path)];
    case "cutout":
      return paths(statement.path);
    case "hole":
      return [...points(statement.at), ...expressions(statement.diameter)];
    case "hole-ring":
      return expressions(statement.count, statement.radius, statement.diameter, statement.startAngle);
    case "slot":
      return [...points(statement.from, statement.to), ...expressions(statement.width)];
    case "spin":
      return expressions(statement.speed);
    case "approach":
      return expressions(statement.from, statement.to);
    case "target":
      return expressions(statement.radius, statement.offset);
    case "require":
      return limitChildren(statement);
    case "balance":
      return expressions(...statement.names);
    case "aim":
      return [
        ...statement.goals.flatMap(({ figure, at }) => [...names(figure), ...expressions(at)]),
        ...statement.limits.flatMap(limitChildren),
        ...expressions(...statement.names),
      ];
    case "variant":
      return statement.body.map((node) => ({ type: "statement", node }));
  }
}

function blockItemChildren(item: BlockItem): readonly TreeNode[] {
  return item.kind === "limit" ? limitChildren(item) : item.parts.flatMap(({ value }) => expressions(value));
}

function limitChildren({ figure, at, limit }: FigureLimit): readonly TreeNode[] {
  return [...names(figure), ...expressions(at), ...limits(limit)];
}

function stepChildren(step: Step): readonly TreeNode[] {
  const corner: readonly TreeNode[] = step.corner === null ? [] : [{ type: "corner", node: step.corner }];
  switch (step.kind) {
    case "from":
    case "line":
    case "spiral":
      return [...points(step.to), ...corner];
    case "arc":
      return [...points(step.to), ...shapeChildren(step.shape), ...corner];
    case "close":
      return corner;
  }
}

function shapeChildren(shape: ArcShape | null): readonly TreeNode[] {
  switch (shape?.by) {
    case "radius":
      return expressions(shape.radius);
    case "through":
      return points(shape.through);
    case "about":
      return points(shape.centre);
    case undefined:
      return [];
  }
}

function expressionChildren(expression: Expression): readonly TreeNode[] {
  switch (expression.kind) {
    case "number":
      return units(expression.unit);
    case "name":
      return [];
    case "unary":
      return expressions(expression.operand);
    case "binary":
      return expressions(expression.left, expression.right);
    case "call":
      // Not spread into `expressions`: a call may have more arguments than a function of ours can take.
      return [...names(expression.callee), ...expression.args.flatMap((argument) => expressions(argument))];
    case "group":
      return [...expressions(expression.inner), ...units(expression.unit)];
  }
}

function expressions(...nodes: readonly (Expression | null)[]): readonly TreeNode[] {
  return nodes.flatMap((node): readonly TreeNode[] => (node === null ? [] : [{ type: "expression", node }]));
}

function points(...nodes: readonly (PointExpression | null)[]): readonly TreeNode[] {
  return nodes.flatMap((node): readonly TreeNode[] => (node === null ? [] : [{ type: "point", node }]));
}

function paths(node: Path | null): readonly TreeNode[] {
  return node === null ? [] : [{ type: "path", node }];
}

function symmetries(node: Symmetry | null): readonly TreeNode[] {
  return node === null ? [] : [{ type: "symmetry", node }];
}

function names(node: Identifier | null): readonly TreeNode[] {
  return node === null ? [] : [{ type: "name", node }];
}

function units(node: UnitExpression | null): readonly TreeNode[] {
  return node === null ? [] : [{ type: "unit", node }];
}

function limits(node: Expression | GradeLiteral | null): readonly TreeNode[] {
  if (node === null) {
    return [];
  }
  return node.kind === "grade" ? [{ type: "grade", node }] : [{ type: "expression", node }];
}

import { isBlock } from "../../geometry/language/blocks/blocks.ts";
import type {
  ArcShape,
  BlockItem,
  Expression,
  FigureLimit,
  GradeLiteral,
  Path,
  PointExpression,
  Statement,
  Step,
  Symmetry,
  SyntaxTree,
} from "../../geometry/language/tree.ts";

/** A tree without its ranges, one statement a line, steps and overrides indented; `?` stands for a missing part. */
export function printTree(tree: SyntaxTree): readonly string[] {
  return tree.statements.flatMap(printStatement);
}

function printStatement(statement: Statement): readonly string[] {
  if (isBlock(statement)) {
    return [statement.kind, ...statement.body.map((item) => `  ${printBlockItem(item)}`)];
  }
  switch (statement.kind) {
    case "bar":
      return [`bar ${printName(statement.name)}`];
    case "thickness":
    case "density":
    case "yield":
    case "bore":
      return [`${statement.kind} ${printExpression(statement.value)}`];
    case "material":
      return [`material ${statement.name?.name ?? "?"}`];
    case "let": {
      const { name, value, bounds } = statement;
      const range =
        bounds === null ? "" : ` from ${printExpression(bounds.from)} to ${printExpression(bounds.to)}`;
      return [`let ${name?.name ?? "?"} ${printExpression(value)}${range}`];
    }
    case "override":
      return [`override ${statement.name.name} ${printExpression(statement.value)}`];
    case "outline":
      return [`outline${printSymmetry(statement.symmetry)}${printPath(statement.path)}`];
    case "cutout":
      return [`cutout${printPath(statement.path)}`];
    case "hole":
      return [`hole ${printPoint(statement.at)} ${printExpression(statement.diameter)}`];
    case "hole-ring": {
      const { count, radius, diameter, startAngle } = statement;
      const parts = [count, radius, diameter, ...(startAngle === null ? [] : [startAngle])];
      return [`hole-ring ${parts.map(printExpression).join(" ")}`];
    }
    case "slot":
      return [
        `slot ${printPoint(statement.from)} ${printPoint(statement.to)} ${printExpression(statement.width)}`,
      ];
    case "spin":
      return [`spin ${printExpression(statement.speed)} ${statement.direction ?? "?"}`];
    case "approach":
      return [`approach ${printExpression(statement.from)} ${printExpression(statement.to)}`];
    case "target": {
      const { shape, radius, offset } = statement;
      const size = shape === "round" ? ` ${printExpression(radius)}` : "";
      return [`target ${shape ?? "?"}${size}${offset === null ? "" : ` offset ${printExpression(offset)}`}`];
    }
    case "require":
      return [`require ${printFigureLimit(statement)}`];
    case "balance":
      return [`balance ${statement.names.map(printExpression).join(" ")}`.trimEnd()];
    case "aim":
      return [
        "aim",
        ...statement.goals.map((goal) => `  ${goal.sense} ${printFigure(goal)}`),
        ...statement.limits.map((limit) => `  keeping ${printFigureLimit(limit)}`),
        ...statement.names.map((name) => `  by ${printExpression(name)}`),
      ];
    case "variant":
      return [
        `variant ${printName(statement.name)}`,
        ...statement.body.flatMap(printStatement).map((line) => `  ${line}`),
      ];
  }
}

function printBlockItem(item: BlockItem): string {
  if (item.kind === "limit") {
    return printFigureLimit(item);
  }
  const parts = item.parts.map(({ name, lead, value, text }) => {
    const isFlag = lead !== null && value === null && text === null;
    return `${name}${isFlag ? "" : `:${text === null ? printExpression(value) : JSON.stringify(text.name)}`}`;
  });
  return [item.word, ...parts].join(" ");
}

function printFigureLimit(stated: FigureLimit): string {
  return `${printFigure(stated)} ${stated.relation ?? "?"} ${printLimit(stated.limit)}`;
}

function printFigure({ figure, at }: Pick<FigureLimit, "figure" | "at">): string {
  return `${figure?.name ?? "?"}${at === null ? "" : ` at ${printExpression(at)}`}`;
}

function printName(name: string | null): string {
  return name === null ? "?" : JSON.stringify(name);
}

function printSymmetry(symmetry: Symmetry | null): string {
  switch (symmetry?.kind) {
    case "repeat":
      return ` repeat ${printExpression(symmetry.count)}`;
    case "mirror":
      return ` mirror ${symmetry.axis ?? "?"}`;
    case undefined:
      return "";
  }
}

function printPath(path: Path | null): string {
  return path === null ? " ?" : path.steps.map((step) => `\n  ${printStep(step)}`).join("");
}

function printStep(step: Step): string {
  const corner = step.corner === null ? "" : ` (${step.corner.kind} ${printExpression(step.corner.size)})`;
  switch (step.kind) {
    case "from":
    case "line":
      return `${step.kind} ${printPoint(step.to)}${corner}`;
    case "arc":
      return `arc ${printPoint(step.to)} ${printShape(step.shape)}${corner}`;
    case "spiral":
      return `spiral ${printPoint(step.to)} ${step.turning ?? "?"}${corner}`;
    case "close":
      return `close${corner}`;
  }
}

function printShape(shape: ArcShape | null): string {
  switch (shape?.by) {
    case "radius":
      return `radius ${printExpression(shape.radius)} ${shape.turning ?? "?"}${shape.long ? " long" : ""}`;
    case "through":
      return `through ${printPoint(shape.through)}`;
    case "about":
      return `about ${printPoint(shape.centre)} ${shape.turning ?? "?"}`;
    case undefined:
      return "?";
  }
}

function printPoint(point: PointExpression | null): string {
  if (point === null) {
    return "?";
  }
  const parts = `${printExpression(point.first)}, ${printExpression(point.second)}`;
  return point.kind === "cartesian" ? `[${parts}]` : `[${point.kind} ${parts}]`;
}

function printLimit(limit: Expression | GradeLiteral | null): string {
  return limit?.kind === "grade" ? `G${limit.value}` : printExpression(limit);
}

export function printExpression(expression: Expression | null): string {
  switch (expression?.kind) {
    case undefined:
      return "?";
    case "number":
      return `${expression.value}${expression.unit?.text ?? ""}`;
    case "name":
      return expression.name;
    case "unary":
      return `(${expression.operator} ${printExpression(expression.operand)})`;
    case "binary":
      return `(${printExpression(expression.left)} ${expression.operator} ${printExpression(expression.right)})`;
    case "call":
      return `${expression.callee.name}(${expression.args.map(printExpression).join(", ")})`;
    case "group":
      return `{${printExpression(expression.inner)}}${expression.unit?.text ?? ""}`;
  }
}

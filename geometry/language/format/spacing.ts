import type { Token } from "../token.ts";
import type { SyntaxTree } from "../tree.ts";
import { visitTree } from "../tree-walk.ts";

/** Where tokens stand close together, by the offsets of what was read. */
export interface Spacing {
  /** Where a sign stands that belongs to the value behind it. */
  readonly signs: ReadonlySet<number>;
  /** Where the name of a called function ends. */
  readonly calleeEnds: ReadonlySet<number>;
  /** From the start of each unit to its end. */
  readonly unitEnds: ReadonlyMap<number, number>;
}

export function readSpacing(tree: SyntaxTree): Spacing {
  const signs = new Set<number>();
  const calleeEnds = new Set<number>();
  const unitEnds = new Map<number, number>();
  visitTree(tree, ({ type, node }) => {
    if (type === "unit") {
      unitEnds.set(node.range.start, node.range.end);
    } else if (type === "expression" && node.kind === "unary") {
      signs.add(node.range.start);
    } else if (type === "expression" && node.kind === "call") {
      calleeEnds.add(node.callee.range.end);
    }
  });
  return { signs, calleeEnds, unitEnds };
}

/** The tokens of an understood line with one blank between words. */
export function spaceTokens(tokens: readonly Token[], spacing: Spacing): string {
  const pieces: string[] = [];
  let before: Token | null = null;
  let unitEnd = 0;
  for (const [i, token] of tokens.entries()) {
    const isTight = token.start < unitEnd || isInFraction(tokens, i) || isInFraction(tokens, i - 1);
    if (before !== null && !isTight && hasBlankBetween(before, token, spacing)) {
      pieces.push(" ");
    }
    pieces.push(token.text);
    unitEnd = spacing.unitEnds.get(token.start) ?? unitEnd;
    before = token;
  }
  return pieces.join("");
}

/** True at the stroke of a plain fraction such as `1/4`. */
function isInFraction(tokens: readonly Token[], index: number): boolean {
  const isStroke = tokens[index]?.text === "/";
  return isStroke && tokens[index - 1]?.kind === "number" && tokens[index + 1]?.kind === "number";
}

function hasBlankBetween(before: Token, token: Token, { signs, calleeEnds }: Spacing): boolean {
  if (before.text === "(" || before.text === "^" || signs.has(before.start)) {
    return false;
  }
  if (token.text === "(") {
    return !calleeEnds.has(before.end);
  }
  return token.text !== "," && token.text !== ")" && token.text !== "^";
}

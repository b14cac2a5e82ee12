import { type Cursor, FARTHEST_LOOK } from "./cursor.ts";
import { insertFix } from "./fixes.ts";

/** Takes the `)` that belongs to the parenthesis at `open`, skipping what stands before it. */
export function closeParenthesis(cursor: Cursor, open: number): void {
  if (cursor.takeSymbol(")") || cursor.panicking) {
    return;
  }
  const ahead = findClose(cursor);
  if (ahead === null) {
    reportOpen(cursor, open);
    return;
  }
  const range = { start: cursor.range().start, end: cursor.range(ahead - 1).end };
  cursor.guess("unexpected-text", "Expected an operator or ')' here.", range, cursor.removal(range));
  cursor.skipAhead(ahead + 1);
}

/** Where a keyword follows, the parenthesis was most likely forgotten before it, and reading goes on there. */
function reportOpen(cursor: Cursor, open: number): void {
  const message = "This parenthesis is not closed.";
  const range = { start: open, end: open + 1 };
  const fixes = [insertFix(cursor.previousEnd, ")")];
  if (cursor.at("word") && cursor.isKeyword(cursor.text())) {
    cursor.note("missing-brace", message, range, fixes);
  } else {
    cursor.fail("missing-brace", message, range, fixes);
  }
}

/** How many tokens ahead the closing parenthesis of this level stands on this line; null where there is none. */
export function findClose(cursor: Cursor): number | null {
  let depth = 0;
  for (let ahead = 0; ahead < FARTHEST_LOOK; ahead += 1) {
    if (cursor.endsLine(ahead) || cursor.isSymbol("{", ahead)) {
      return null;
    }
    if (cursor.isSymbol(")", ahead)) {
      if (depth === 0) {
        return ahead;
      }
      depth -= 1;
    } else if (cursor.isSymbol("(", ahead)) {
      depth += 1;
    }
  }
  return null;
}

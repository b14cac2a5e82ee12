import type { LaidLine } from "./laid-line.ts";

/** Blanks between code and the comment behind it. */
const GAP = 2;
/** A line of more code than this moves its own comment only, not those of the lines around it. */
const LONGEST_ALIGNED = 80;

/**
 * Puts the comments behind their lines. A comment keeps its column where there is room. Comments that stand below each
 * other stay so: where one has to move, the others go with it.
 */
export function placeComments(lines: readonly LaidLine[]): readonly string[] {
  const placed: string[] = [];
  let run: LaidLine[] = [];
  for (const line of lines) {
    if (!continuesRun(run, line)) {
      placed.push(...placeRun(run));
      run = [];
    }
    run.push(line);
  }
  placed.push(...placeRun(run));
  return placed;
}

function continuesRun(run: readonly LaidLine[], line: LaidLine): boolean {
  const before = run.at(-1);
  return before !== undefined && isAligned(before) && isAligned(line) && before.column === line.column;
}

function isAligned(line: LaidLine): boolean {
  return line.isLaidOut && line.comment !== null && line.code.length <= LONGEST_ALIGNED;
}

function placeRun(run: readonly LaidLine[]): readonly string[] {
  const column = run.reduce((most, line) => Math.max(most, line.column, line.code.length + GAP), 0);
  return run.map(({ code, comment }) => (comment === null ? code : `${code.padEnd(column)}${comment}`));
}

/** What fits on any terminal, and in a mail. */
export const MOST_COLUMNS = 80;

/** Break a line at spaces to the page's width. Colour codes make it a little early, never too late. */
export function wrap(line: string, indent: string): string[] {
  const lines: string[] = [];
  let current = indent;
  for (const word of line.split(" ")) {
    if (current !== indent && current.length + 1 + word.length > MOST_COLUMNS) {
      lines.push(current);
      current = `${indent}  ${word}`;
    } else current = current === indent ? indent + word : `${current} ${word}`;
  }
  return [...lines, current];
}

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

/** The lines of a cell: broken at spaces, and within words that are longer than a line. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  let current = "";
  for (const word of text.split(" ").flatMap((one) => pieces(one, width))) {
    if (current !== "" && current.length + 1 + word.length > width) {
      lines.push(current);
      current = word;
    } else current = current === "" ? word : `${current} ${word}`;
  }
  return [...lines, current];
}

function pieces(word: string, width: number): string[] {
  return Array.from({ length: Math.max(1, Math.ceil(word.length / width)) }, (_, i) =>
    word.slice(i * width, (i + 1) * width),
  );
}

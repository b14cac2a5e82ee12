/** A table under its heading; the first column stands left, the others right. */
export function markdownTable(
  title: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
): string {
  const line = (cells: readonly string[]) => `| ${cells.map(escapeText).join(" | ")} |`;
  const rule = `| ${head.map((_, index) => (index === 0 ? "---" : "---:")).join(" | ")} |`;
  return [`## ${title}`, "", line(head), rule, ...rows.map(line)].join("\n");
}

/** Names come from the file: they must not become markup. */
export function escapeText(text: string): string {
  return text.replace(/[\\`*_[\]<>|#]/g, "\\$&").replace(/\s+/g, " ");
}

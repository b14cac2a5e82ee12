/** A bar of eighths of a character, so that close shares can be told apart; `width` characters for the whole. */
export function shareBar(share: number, width: number): string {
  const eighths = Math.round(share * width * 8);
  const rest = eighths % 8;
  return "█".repeat(Math.floor(eighths / 8)) + (rest > 0 ? String.fromCodePoint(0x2590 - rest) : "");
}

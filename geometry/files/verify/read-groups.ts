/** A group as it stands in a cut file, with the line its value is on (from 1). */
export interface ReadGroup {
  readonly code: number;
  readonly text: string;
  readonly line: number;
}

export interface ReadGroups {
  readonly groups: readonly ReadGroup[];
  readonly faults: readonly string[];
}

/**
 * The groups of a cut file, read by the rules of the format and by nothing the writer knows: two lines a group, ASCII,
 * one kind of line end, numbers as plain finite decimals.
 */
export function readGroups(text: string): ReadGroups {
  const lines = text.split(/\r?\n/);
  if (lines.at(-1) === "") lines.pop();
  const groups: ReadGroup[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2)
    groups.push({ code: codeOf(lines[i] ?? ""), text: lines[i + 1] ?? "", line: i + 2 });
  const faults = [...textFaults(text, lines.length), ...groups.flatMap(groupFaults)];
  return { groups, faults };
}

function codeOf(line: string): number {
  return /^ *\d+$/.test(line) ? Number(line) : Number.NaN;
}

function textFaults(text: string, lines: number): string[] {
  const faults: string[] = [];
  if (/[^\n\r -~]/.test(text)) faults.push("there are characters that are not printable ASCII");
  if (/\r(?!\n)/.test(text) || (text.includes("\r\n") && /(?<!\r)\n/.test(text)))
    faults.push("the line ends are mixed");
  if (lines % 2 !== 0) faults.push("the last group has no value");
  return faults;
}

function groupFaults({ code, text, line }: ReadGroup): string[] {
  if (Number.isNaN(code)) return [`line ${line - 1} is not a group code`];
  if (isReal(code) && !/^-?\d+(\.\d+)?$/.test(text))
    return [`line ${line}: ${text} is not a plain decimal number`];
  if (isReal(code) && !Number.isFinite(Number(text))) return [`line ${line}: the number is not finite`];
  if (/^-0(\.0*)?$/.test(text)) return [`line ${line}: there is a minus before zero`];
  return [];
}

/** The codes that carry lengths, coordinates, bulges and angles in the records a cut file may hold. */
function isReal(code: number): boolean {
  return code >= 10 && code <= 59;
}

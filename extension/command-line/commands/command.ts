import { type ParseArgsConfig, parseArgs } from "node:util";
import type { Read } from "../../../geometry/study/words.ts";
import { oneLine } from "../problem-line.ts";
import { CallError, type Exit, type World } from "../world.ts";

/** One command of the program: how it is called, what it does, and the doing. */
export interface Command {
  readonly name: string;
  readonly call: string;
  readonly does: string;
  readonly options: readonly { readonly call: string; readonly does: string }[];
  run(args: readonly string[], world: World): Promise<Exit>;
}

/**
 * Parse a command's words.
 * @throws CallError for unknown options or missing values
 */
export function readArguments<O extends NonNullable<ParseArgsConfig["options"]>>(
  args: readonly string[],
  options: O,
) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new CallError(error instanceof Error ? error.message : String(error));
  }
}

/** The one file of a command that takes one. */
export function oneFile(positionals: readonly string[]): string {
  const [file, ...more] = positionals;
  if (file === undefined) throw new CallError("Name the outline file.");
  if (more.length > 0) throw new CallError(`One file at a time, please; ${more.join(", ")} came too much.`);
  return file;
}

/** One of a fixed set of words, or a CallError that lists them. */
export function oneOf<T extends string>(option: string, value: string, allowed: readonly T[]): T {
  const found = allowed.find((word) => word === value);
  if (found === undefined) throw new CallError(`${option} is ${allowed.join(" or ")}, not "${value}".`);
  return found;
}

/** What the words of a call ask for, or a CallError that says what is wrong about them. */
export function asked<T>(read: Read<T>): T {
  if (!read.ok) throw new CallError(oneLine(read.message));
  return read.value;
}

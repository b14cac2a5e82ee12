import { type Analysis, analyse } from "../../../geometry/analysis/analyse.ts";
import { readSource, type Source } from "../../../geometry/analysis/source.ts";
import type { Problem } from "../../../geometry/language/problem.ts";
import { problemLine } from "../problem-line.ts";
import { CallError, EXIT, type Exit, type World } from "../world.ts";

/** Read a file and work out one variant of it. */
export async function open(path: string, variant: string | undefined, world: World): Promise<Analysis> {
  const source = readSource(await world.read(path));
  return analyse(source, { variant: checkVariant(source, variant, path) });
}

/** The variant of that name, or a CallError that lists those there are. */
export function checkVariant(source: Source, variant: string | undefined, path: string): string | null {
  if (variant === undefined) return null;
  if (source.variants.includes(variant)) return variant;
  const known = source.variants.map((name) => `"${name}"`).join(", ");
  throw new CallError(`${path} has no variant "${variant}"; ${known ? `it has ${known}` : "it has none"}.`);
}

/** 1 where something is an error, which a failed `require` is. */
export function exitOf(problems: readonly { readonly severity: string }[]): Exit {
  return problems.some(({ severity }) => severity === "error") ? EXIT.problems : EXIT.fine;
}

/** Tells each error of a file in a line of its own; says whether there were any. */
export function tellErrors(
  problems: readonly Problem[],
  { lines }: Source,
  path: string,
  world: World,
): boolean {
  const errors = problems.filter(({ severity }) => severity === "error");
  for (const problem of errors)
    world.err(`${problemLine(problem, lines, path, { ...world.terminal, colour: false })}\n`);
  return errors.length > 0;
}

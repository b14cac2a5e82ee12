/** The lets that a statement allows to be moved, by the names that stand behind its `by`. */
import { nearestWord } from "../nearest-word.ts";
import type { Problem } from "../problem.ts";
import type { LetStatement, NameReference } from "../tree.ts";
import { literalOf, quoted } from "./expression-shape.ts";
import type { LetStatements } from "./file-lets.ts";
import { didYouMean, failure, fix } from "./problems.ts";
import type { Scope } from "./values.ts";

export interface NameRules {
  readonly most: number;
  /** What is said of a name too many. */
  readonly tooMany: string;
  /** What is wrong with a let that could be moved otherwise; null where nothing is. */
  readonly refuse?: (statement: LetStatement, reference: NameReference) => Problem | null;
}

/** The names that are lets which can be moved, each once; what is wrong with the others is reported. */
export function movableNames(
  { text, report }: Scope,
  names: readonly NameReference[],
  lets: LetStatements,
  { most, tooMany, refuse = () => null }: NameRules,
): readonly string[] {
  return names.flatMap((reference, index) => {
    const { name } = reference;
    const statement = lets.get(name);
    const problem =
      statement === undefined
        ? undefinedName(reference, lets)
        : (repeated(names, index, most, tooMany) ??
          calculated(text, reference, statement) ??
          refuse(statement, reference));
    if (problem === null) return [name];
    report(problem);
    return [];
  });
}

function undefinedName({ name, range }: NameReference, lets: LetStatements): Problem {
  const { hint, fixes } = didYouMean(range, nearestWord(name, lets.keys()));
  return failure("undefined-name", range, `No let defines '${name}'${hint}`, fixes);
}

/** A name that stands a second time, or behind as many as make sense. */
function repeated(
  names: readonly NameReference[],
  index: number,
  most: number,
  tooMany: string,
): Problem | null {
  const reference = names[index];
  if (reference === undefined) return null;
  const { name, range } = reference;
  const isRepeated = names.slice(0, index).some((before) => before.name === name);
  if (!isRepeated && index < most) return null;
  const start = names[index - 1]?.range.end ?? range.start;
  const remove = fix(`Remove '${name}'`, [{ start, end: range.end, newText: "" }]);
  return isRepeated
    ? failure("duplicate-name", range, `'${name}' stands here already.`, [remove])
    : failure("out-of-range", range, tooMany, [remove]);
}

/** A value that is worked out has no number of its own that could be another one. */
function calculated(text: string, { name, range }: NameReference, { value }: LetStatement): Problem | null {
  if (value === null || literalOf(value) !== null) return null;
  const written = quoted(text, value.range) ?? "worked out";
  const message =
    `'${name}' is ${written}, which is no single value that could be moved; ` +
    `name a let that is one, such as let tail = 96 mm, or write '${name}' as one.`;
  return failure("not-movable", range, message);
}

import type { Fix, Problem } from "../problem.ts";
import { tokenize } from "../tokenize.ts";
import type { Identifier, LetStatement, SyntaxTree } from "../tree.ts";
import { visitExpressions } from "../tree-walk.ts";
import type { LetStatements } from "./file-lets.ts";
import { deleteLines } from "./lines.ts";
import { doubt, fix } from "./problems.ts";
import { variantsOf } from "./variants.ts";

/** The names that a file uses: in lets, by let, and in everything else. */
interface Uses {
  readonly inLets: ReadonlyMap<LetStatement, ReadonlySet<string>>;
  readonly elsewhere: ReadonlySet<string>;
  /** How often each name stands in the tree, where it is defined included. */
  readonly counts: ReadonlyMap<string, number>;
}

/** For each name the lets that use it. */
type Dependents = ReadonlyMap<string, readonly string[]>;

/** The lets that change nothing: neither a statement, nor a variant, nor a let that is itself used uses them. */
export function unusedLets(tree: SyntaxTree, lets: LetStatements): readonly Problem[] {
  const uses = usesIn(tree);
  const used = usedNames(uses, lets);
  const unused = [...lets.values()].flatMap(({ name }) =>
    name === null || used.has(name.name) ? [] : [name],
  );
  if (unused.length === 0) return [];
  const dependents = dependentsOf(uses, lets);
  const lost = namesInBrokenText(tree, uses);
  return unused.flatMap((name) => (lost(name.name) ? [] : [unusedLet(tree, lets, dependents, name)]));
}

/**
 * Whether a name stands more often in the text than in the tree: it is used on a line that could not be read, so that
 * nobody can say that it is not used.
 */
function namesInBrokenText(tree: SyntaxTree, { counts }: Uses): (name: string) => boolean {
  const written = new Map<string, number>();
  for (const { kind, text } of tokenize(tree.text)) {
    if (kind === "word") written.set(text, (written.get(text) ?? 0) + 1);
  }
  return (name) => (written.get(name) ?? 0) > (counts.get(name) ?? 0);
}

/** A variant uses what it overrides: without the let the override would hang in the air. */
function usesIn(tree: SyntaxTree): Uses {
  const inLets = new Map<LetStatement, Set<string>>();
  const overridden = variantsOf(tree).flatMap(({ body }) => body.flatMap(overriddenName));
  const elsewhere = new Set(overridden);
  const counts = new Map<string, number>();
  const count = (name: string) => counts.set(name, (counts.get(name) ?? 0) + 1);
  for (const name of overridden) count(name);
  for (const statement of tree.statements)
    if (statement.kind === "let" && statement.name) count(statement.name.name);
  visitExpressions(tree, (expression, statement) => {
    if (expression.kind !== "name") return;
    count(expression.name);
    if (statement.kind !== "let") {
      elsewhere.add(expression.name);
      return;
    }
    const names = inLets.get(statement) ?? new Set<string>();
    inLets.set(statement, names.add(expression.name));
  });
  return { inLets, elsewhere, counts };
}

function overriddenName(statement: SyntaxTree["statements"][number]): readonly string[] {
  return statement.kind === "override" ? [statement.name.name] : [];
}

function usedNames({ inLets, elsewhere }: Uses, lets: LetStatements): ReadonlySet<string> {
  const used = new Set(elsewhere);
  // A set is walked in the order of insertion, what is added on the way included.
  for (const name of used) {
    const statement = lets.get(name);
    for (const further of (statement && inLets.get(statement)) ?? []) used.add(further);
  }
  return used;
}

function dependentsOf({ inLets }: Uses, lets: LetStatements): Dependents {
  const dependents = new Map<string, string[]>();
  for (const [name, statement] of lets) {
    for (const used of inLets.get(statement) ?? []) {
      const users = dependents.get(used) ?? [];
      users.push(name);
      dependents.set(used, users);
    }
  }
  return dependents;
}

function unusedLet(
  tree: SyntaxTree,
  lets: LetStatements,
  dependents: Dependents,
  { name, range }: Identifier,
): Problem {
  const doomed = withDependents(dependents, name);
  const fixes = doomed === null ? [] : [deletion(tree, lets, name, doomed)];
  return doubt("unused-name", range, `'${name}' is not used.`, fixes);
}

function deletion(tree: SyntaxTree, lets: LetStatements, name: string, doomed: ReadonlySet<string>): Fix {
  const others = [...doomed].filter((dependent) => dependent !== name).map((dependent) => `'${dependent}'`);
  const also = others.length === 0 ? "" : ` with what uses it: ${others.join(", ")}`;
  const edits = [...doomed]
    .map((dependent) => lets.get(dependent))
    .filter((statement) => statement !== undefined)
    .map(({ range }) => deleteLines(tree.text, range))
    .sort((a, b) => a.start - b.start);
  return fix(`Delete '${name}'${also}`, edits);
}

/** More lets than this hang together only in generated files, where deleting by hand is no help. */
const MOST_DELETED = 8;

/**
 * A let and all lets that would be left without a name if it went, all of them unused as it is; null where they are
 * too many.
 */
function withDependents(dependents: Dependents, name: string): ReadonlySet<string> | null {
  const found = new Set([name]);
  for (const next of found) {
    for (const dependent of dependents.get(next) ?? []) found.add(dependent);
    if (found.size > MOST_DELETED) return null;
  }
  return found;
}

import { nearestWord } from "../nearest-word.ts";
import type { Report } from "../problem.ts";
import type { OverrideStatement, Statement, StatementKind, SyntaxTree, VariantStatement } from "../tree.ts";
import type { LetStatements } from "./file-lets.ts";
import { didYouMean, failure } from "./problems.ts";

/** The names of the variants in file order, each once. */
export function variantNames(tree: SyntaxTree): readonly string[] {
  return [...new Set(variantsOf(tree).flatMap(({ name }) => name ?? []))];
}

/** The variant of a name, the first where there are several; null where there is none. */
export function findVariant(tree: SyntaxTree, name: string | null): VariantStatement | null {
  return name === null ? null : (variantsOf(tree).find((variant) => variant.name === name) ?? null);
}

export function variantsOf(tree: SyntaxTree): readonly VariantStatement[] {
  return tree.statements.filter((statement) => statement.kind === "variant");
}

/** Checks, for all variants, that the lets which they override are there. */
export function checkOverrides(tree: SyntaxTree, lets: LetStatements, report: Report): void {
  for (const statement of variantsOf(tree).flatMap(({ body }) => body)) {
    if (statement.kind === "override") checkOverride(statement, lets, report);
  }
}

function checkOverride({ name }: OverrideStatement, lets: LetStatements, report: Report): void {
  if (lets.has(name.name)) return;
  const { hint, fixes } = didYouMean(name.range, nearestWord(name.name, lets.keys()));
  const message = `No let defines '${name.name}', so there is nothing to override${hint}`;
  report(failure("undefined-name", name.range, message, fixes));
}

type StatementOf<K extends StatementKind> = Extract<Statement, { readonly kind: K }>;

/** A setting as the chosen variant has it. */
export interface Setting<S, T> {
  readonly value: T | null;
  /** The statement that counts: the variant's, or else the bar's; of several the first. */
  readonly statement: S | null;
  /** True where the variant has a statement of its own. */
  readonly isChanged: boolean;
}

/** Evaluates a setting. The bar's own statement is evaluated even where it is overridden, so that its mistakes are told. */
export function settingOf<K extends StatementKind, T>(
  tree: SyntaxTree,
  variant: VariantStatement | null,
  kind: K,
  evaluate: (statement: StatementOf<K>) => T | null,
): Setting<StatementOf<K>, T> {
  const own = firstOf(tree.statements, kind);
  const changed = firstOf(variant?.body ?? [], kind);
  const ownValue = own === null ? null : evaluate(own);
  return changed === null
    ? { value: ownValue, statement: own, isChanged: false }
    : { value: evaluate(changed), statement: changed, isChanged: true };
}

function firstOf<K extends StatementKind>(statements: readonly Statement[], kind: K): StatementOf<K> | null {
  return statements.find((statement): statement is StatementOf<K> => statement.kind === kind) ?? null;
}

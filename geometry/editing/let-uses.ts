/** Where the lets of a file are named: declared, used and overridden. */
import type { Source } from "../analysis/source.ts";
import type { TextRange } from "../language/text.ts";
import type { Statement } from "../language/tree.ts";
import { visitTree } from "../language/tree-walk.ts";

export interface LetUse {
  readonly name: string;
  readonly range: TextRange;
  readonly role: "declaration" | "use" | "override";
}

/** Every place that names a let, in text order; a name that no let declares is left out. */
export function letUses({ tree }: Source): readonly LetUse[] {
  const declared = new Set<string>();
  const uses: LetUse[] = [];
  visitTree(tree, (node) => {
    if (node.type === "statement") uses.push(...statementUses(node.node));
    if (node.type === "expression" && node.node.kind === "name") {
      uses.push({ name: node.node.name, range: node.node.range, role: "use" });
    }
  });
  for (const { name, role } of uses) if (role === "declaration") declared.add(name);
  return uses.filter(({ name }) => declared.has(name));
}

function statementUses(statement: Statement): readonly LetUse[] {
  if (statement.kind !== "let" && statement.kind !== "override") return [];
  if (statement.name === null) return [];
  const role = statement.kind === "let" ? "declaration" : "override";
  return [{ name: statement.name.name, range: statement.name.range, role }];
}

/** The use at an offset: the name that the cursor stands in or right behind. */
export function letUseAt(uses: readonly LetUse[], offset: number): LetUse | null {
  return uses.find(({ range }) => range.start <= offset && offset <= range.end) ?? null;
}

import * as vscode from "vscode";
import { balanceFixes, safeFixes } from "../../../geometry/editing/editing.ts";
import type { Fix, Problem } from "../../../geometry/language/problem.ts";
import { OUTLINES } from "../language.ts";
import { toRange, toWorkspaceEdit } from "../places.ts";
import type { Session } from "../session.ts";

const FIX_ALL = vscode.CodeActionKind.SourceFixAll.append("barwright");

/** Quick fixes at problems, and all the safe ones at once, also on save (`source.fixAll`). */
export function registerQuickFixes(session: Session): vscode.Disposable {
  const balancing = createBalancing(session);
  const provider: vscode.CodeActionProvider = {
    provideCodeActions: async (document, range, context, token) => {
      const { version } = document;
      const isWanted = () => !token.isCancellationRequested && document.version === version;
      const problems = await session.outlines.problems(document, isWanted);
      if (!problems) return [];
      const { only } = context;
      const wants = (kind: vscode.CodeActionKind) => only === undefined || only.contains(kind);
      return [
        ...(wants(vscode.CodeActionKind.QuickFix)
          ? quickFixes(document, range, context, problems, balancing)
          : []),
        // Asked for by its kind only: among the quick fixes of one problem it would be a surprise.
        ...(only?.contains(FIX_ALL) ? fixAll(document, problems) : []),
      ];
    },
  };
  return vscode.languages.registerCodeActionsProvider(OUTLINES, provider, {
    providedCodeActionKinds: [vscode.CodeActionKind.QuickFix, FIX_ALL],
  });
}

function quickFixes(
  document: vscode.TextDocument,
  range: vscode.Range,
  { diagnostics }: vscode.CodeActionContext,
  problems: readonly Problem[],
  balancing: Balancing,
): vscode.CodeAction[] {
  return problems.flatMap((problem) => {
    const place = toRange(document, problem.range);
    if (!place.intersection(range)) return [];
    const shown = diagnostics.filter(({ code, range: at }) => code === problem.code && at.isEqual(place));
    const fixes = [...problem.fixes, ...balancing(document, problem)];
    return fixes.map((fix, index) => toAction(document, fix, shown, fix.safe && index === 0));
  });
}

type Balancing = (document: vscode.TextDocument, problem: Problem) => readonly Fix[];

/** To balance a bar takes a search: made when its problem is looked at, and once, for the editor asks at each step. */
function createBalancing({ outlines, preferences }: Session): Balancing {
  const known = new WeakMap<Problem, readonly Fix[]>();
  return (document, problem) => {
    const fixes =
      known.get(problem) ??
      balanceFixes(outlines.source(document), problem, (variant) => outlines.analysis(document, variant), {
        settings: preferences(document).judgement,
      });
    known.set(problem, fixes);
    return fixes;
  };
}

function toAction(
  document: vscode.TextDocument,
  fix: Fix,
  diagnostics: vscode.Diagnostic[],
  isPreferred: boolean,
): vscode.CodeAction {
  const action = new vscode.CodeAction(fix.title, vscode.CodeActionKind.QuickFix);
  action.edit = toWorkspaceEdit(document, fix.edits);
  action.diagnostics = diagnostics;
  action.isPreferred = isPreferred;
  return action;
}

function fixAll(document: vscode.TextDocument, problems: readonly Problem[]): vscode.CodeAction[] {
  const edits = safeFixes(problems);
  if (edits.length === 0) return [];
  const action = new vscode.CodeAction(vscode.l10n.t("Make all changes that are safe unseen"), FIX_ALL);
  action.edit = toWorkspaceEdit(document, edits);
  return [action];
}

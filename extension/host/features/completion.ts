import * as vscode from "vscode";
import type { Completion, CompletionKind } from "../../../geometry/editing/editing.ts";
import { completionsAt } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";

const KINDS: Readonly<Record<CompletionKind, vscode.CompletionItemKind>> = {
  statement: vscode.CompletionItemKind.Keyword,
  step: vscode.CompletionItemKind.Keyword,
  option: vscode.CompletionItemKind.Keyword,
  name: vscode.CompletionItemKind.Variable,
  unit: vscode.CompletionItemKind.Unit,
  function: vscode.CompletionItemKind.Function,
  constant: vscode.CompletionItemKind.Constant,
  material: vscode.CompletionItemKind.EnumMember,
  figure: vscode.CompletionItemKind.Property,
  variant: vscode.CompletionItemKind.Module,
};

/** After these something is expected: a value, a point, the next word. */
const TRIGGERS = [" ", "(", ",", "=", "@"];

/** Offers what may be written at the cursor. */
export function registerCompletion(session: Session): vscode.Disposable {
  const provider: vscode.CompletionItemProvider = {
    provideCompletionItems: (document, position, token, { triggerKind, triggerCharacter }) => {
      if (token.isCancellationRequested) return [];
      const isByItself = triggerKind === vscode.CompletionTriggerKind.TriggerCharacter;
      // At the start of a line a blank is indentation, no question.
      if (isByItself && triggerCharacter === " " && isIndentation(document, position)) return [];
      const completions = completionsAt(session.analysis(document), document.offsetAt(position));
      return completions.map((completion) => toItem(document, completion));
    },
  };
  return vscode.languages.registerCompletionItemProvider(OUTLINES, provider, ...TRIGGERS);
}

function isIndentation(document: vscode.TextDocument, position: vscode.Position): boolean {
  return document.lineAt(position).text.slice(0, position.character).trim() === "";
}

function toItem(document: vscode.TextDocument, completion: Completion): vscode.CompletionItem {
  const { label, kind, detail, documentation, insertText, isSnippet, range, sortText } = completion;
  const item = new vscode.CompletionItem({ label, description: detail }, KINDS[kind]);
  item.documentation = new vscode.MarkdownString(documentation);
  item.insertText = isSnippet ? new vscode.SnippetString(insertText) : insertText;
  item.range = toRange(document, range);
  item.sortText = sortText;
  return item;
}

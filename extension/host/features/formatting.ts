import * as vscode from "vscode";
import { format } from "../../../geometry/language/format.ts";
import { OUTLINES } from "../language.ts";

/** Lays a whole file out; only what differs is replaced. */
export function registerFormatting(): vscode.Disposable {
  return vscode.languages.registerDocumentFormattingEditProvider(OUTLINES, {
    provideDocumentFormattingEdits: (document) => {
      const before = document.getText();
      const after = withLineEnds(format(before), document.eol);
      return after === before ? [] : [changedMiddle(document, before, after)];
    },
  });
}

/** The formatter writes LF; a document keeps its own line ends. */
function withLineEnds(text: string, eol: vscode.EndOfLine): string {
  return eol === vscode.EndOfLine.CRLF ? text.replaceAll("\n", "\r\n") : text;
}

/** The one edit between what stays the same at the start and at the end, in whole lines. */
function changedMiddle(document: vscode.TextDocument, before: string, after: string): vscode.TextEdit {
  const shortest = Math.min(before.length, after.length);
  let head = 0;
  while (head < shortest && before[head] === after[head]) head += 1;
  head = before.lastIndexOf("\n", head - 1) + 1;
  let tail = 0;
  while (tail < shortest - head && before.at(-1 - tail) === after.at(-1 - tail)) tail += 1;
  const range = new vscode.Range(document.positionAt(head), document.positionAt(before.length - tail));
  return vscode.TextEdit.replace(range, after.slice(head, after.length - tail));
}

import * as vscode from "vscode";
import { hoverAt } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";

/** Tells what stands under the pointer: values, words, materials, how a requirement stands. */
export function registerHover(session: Session): vscode.Disposable {
  return vscode.languages.registerHoverProvider(OUTLINES, {
    provideHover: (document, position) => {
      const hover = hoverAt(session.analysis(document), document.offsetAt(position));
      if (!hover) return null;
      // One text: the editor draws a rule between several.
      const contents = new vscode.MarkdownString(hover.lines.join("\n\n"));
      return new vscode.Hover(contents, toRange(document, hover.range));
    },
  });
}

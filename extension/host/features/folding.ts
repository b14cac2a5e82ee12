import * as vscode from "vscode";
import { foldingRanges } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";

/** Lets blocks and runs of comments be folded away. */
export function registerFolding({ outlines }: Session): vscode.Disposable {
  return vscode.languages.registerFoldingRangeProvider(OUTLINES, {
    provideFoldingRanges: (document) =>
      foldingRanges(outlines.source(document)).map(({ range, kind }) => {
        const { start, end } = toRange(document, range);
        const comment = kind === "comment" ? vscode.FoldingRangeKind.Comment : undefined;
        return new vscode.FoldingRange(start.line, end.line, comment);
      }),
  });
}

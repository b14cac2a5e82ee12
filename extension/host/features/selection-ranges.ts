import * as vscode from "vscode";
import { selectionRanges } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";

/** Grows a selection by the parts of the language: word, point, step, block, statement. */
export function registerSelectionRanges({ outlines }: Session): vscode.Disposable {
  return vscode.languages.registerSelectionRangeProvider(OUTLINES, {
    provideSelectionRanges: (document, positions) =>
      positions.map((position) => {
        const found = selectionRanges(outlines.source(document), document.offsetAt(position));
        return linked(found.map((range) => toRange(document, range))) ?? emptyAt(position);
      }),
  });
}

/** Inner to outer, each with the next as its parent. */
function linked(ranges: readonly vscode.Range[]): vscode.SelectionRange | undefined {
  return ranges.reduceRight<vscode.SelectionRange | undefined>(
    (parent, range) => new vscode.SelectionRange(range, parent),
    undefined,
  );
}

function emptyAt(position: vscode.Position): vscode.SelectionRange {
  return new vscode.SelectionRange(new vscode.Range(position, position));
}

import * as vscode from "vscode";
import { renameEdits, renameTarget } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange, toWorkspaceEdit } from "../places.ts";
import type { Session } from "../session.ts";

/** Renames a let everywhere. The editor shows the reason of a refusal at the cursor. */
export function registerRename({ outlines }: Session): vscode.Disposable {
  return vscode.languages.registerRenameProvider(OUTLINES, {
    prepareRename: (document, position) => {
      const target = renameTarget(outlines.source(document), document.offsetAt(position));
      if ("refused" in target) throw new Error(target.refused);
      return { range: toRange(document, target.range), placeholder: target.name };
    },
    provideRenameEdits: (document, position, newName) => {
      const result = renameEdits(outlines.source(document), document.offsetAt(position), newName.trim());
      if ("refused" in result) throw new Error(result.refused);
      return toWorkspaceEdit(document, result.edits);
    },
  });
}

import * as vscode from "vscode";
import { definitionAt, referencesAt } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";

/** Leads from a name to its let, from a let to its uses, and marks them while the cursor stands in one. */
export function registerDefinition({ outlines }: Session): vscode.Disposable {
  const placesAt = (document: vscode.TextDocument, position: vscode.Position, includeDeclaration: boolean) =>
    referencesAt(outlines.source(document), document.offsetAt(position), { includeDeclaration }).map(
      (range) => toRange(document, range),
    );
  return vscode.Disposable.from(
    vscode.languages.registerDefinitionProvider(OUTLINES, {
      provideDefinition: (document, position) => {
        const definition = definitionAt(outlines.source(document), document.offsetAt(position));
        if (!definition) return [];
        const link: vscode.DefinitionLink = {
          originSelectionRange: toRange(document, definition.origin),
          targetUri: document.uri,
          targetRange: toRange(document, definition.statement),
          targetSelectionRange: toRange(document, definition.name),
        };
        return [link];
      },
    }),
    vscode.languages.registerReferenceProvider(OUTLINES, {
      provideReferences: (document, position, { includeDeclaration }) =>
        placesAt(document, position, includeDeclaration).map(
          (range) => new vscode.Location(document.uri, range),
        ),
    }),
    vscode.languages.registerDocumentHighlightProvider(OUTLINES, {
      provideDocumentHighlights: (document, position) =>
        placesAt(document, position, true).map((range) => new vscode.DocumentHighlight(range)),
    }),
  );
}

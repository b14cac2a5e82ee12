import * as vscode from "vscode";
import {
  SEMANTIC_TOKEN_MODIFIERS,
  SEMANTIC_TOKEN_TYPES,
  semanticTokens,
} from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";

const LEGEND = new vscode.SemanticTokensLegend([...SEMANTIC_TOKEN_TYPES], [...SEMANTIC_TOKEN_MODIFIERS]);

/** Colours words by what they are, where the grammar's colours only see how they look. */
export function registerSemanticTokens({ outlines }: Session): vscode.Disposable {
  const provider: vscode.DocumentSemanticTokensProvider = {
    provideDocumentSemanticTokens: (document) => {
      const builder = new vscode.SemanticTokensBuilder(LEGEND);
      for (const { range, type, modifiers } of semanticTokens(outlines.source(document))) {
        builder.push(toRange(document, range), type, [...modifiers]);
      }
      return builder.build();
    },
  };
  return vscode.languages.registerDocumentSemanticTokensProvider(OUTLINES, provider, LEGEND);
}

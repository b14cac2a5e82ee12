import * as vscode from "vscode";
import { type DocumentSymbol, type SymbolKind, symbols } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";

const KINDS: Readonly<Record<SymbolKind, vscode.SymbolKind>> = {
  bar: vscode.SymbolKind.Object,
  setting: vscode.SymbolKind.Property,
  let: vscode.SymbolKind.Variable,
  outline: vscode.SymbolKind.Namespace,
  step: vscode.SymbolKind.Field,
  hole: vscode.SymbolKind.Event,
  requirement: vscode.SymbolKind.Boolean,
  variant: vscode.SymbolKind.Module,
  block: vscode.SymbolKind.Struct,
  override: vscode.SymbolKind.Variable,
};

/** Many of one name: the search for symbols shows no details, and ten steps named "line" would tell nothing. */
const TOLD_BY_DETAIL: readonly SymbolKind[] = ["step", "hole", "requirement"];

/** Lists what stands in a file, for the outline view, the breadcrumbs and the search for symbols. */
export function registerSymbols({ outlines }: Session): vscode.Disposable {
  return vscode.languages.registerDocumentSymbolProvider(OUTLINES, {
    provideDocumentSymbols: (document) =>
      symbols(outlines.source(document)).map((symbol) => toSymbol(document, symbol)),
  });
}

function toSymbol(document: vscode.TextDocument, symbol: DocumentSymbol): vscode.DocumentSymbol {
  const { name, detail, kind, range, selectionRange, children } = symbol;
  const isToldByDetail = detail !== "" && TOLD_BY_DETAIL.includes(kind);
  const converted = new vscode.DocumentSymbol(
    isToldByDetail ? `${name} ${detail}` : name,
    isToldByDetail ? "" : detail,
    KINDS[kind],
    toRange(document, range),
    toRange(document, selectionRange),
  );
  converted.children = children.map((child) => toSymbol(document, child));
  return converted;
}

/** What an editor offers on an outline file, host-free: from a text and a place to plain data. */
export {
  type BalanceOffer,
  balanceFixes,
  balanceOffer,
  balancePlace,
} from "./balance-offer.ts";
export type { Completion, CompletionKind } from "./completion.ts";
export { completionsAt } from "./completions.ts";
export { type Definition, definitionAt } from "./definition.ts";
export { fixesAt, type OfferedFix, safeFixes } from "./fixes.ts";
export { type FoldingRange, foldingRanges } from "./folding.ts";
export { FUNCTION_HELP, type FunctionHelp, PI_HELP } from "./function-help.ts";
export { type Handle, handles } from "./handles.ts";
export { type Hover, hoverAt } from "./hover.ts";
export { type InlayHint, inlayHints } from "./inlay-hints.ts";
export { type Lens, type LensOptions, lenses } from "./lenses.ts";
export { type MoveResult, movePoint } from "./move-point.ts";
export { type NewBarTemplate, newBarTemplates } from "./new-bar.ts";
export { OPTION_HELP, type OptionWord } from "./option-help.ts";
export { type ReferenceOptions, referencesAt } from "./references.ts";
export { type RenameResult, type RenameTarget, renameEdits, renameTarget } from "./rename.ts";
export { selectionRanges } from "./selection.ts";
export {
  SEMANTIC_TOKEN_MODIFIERS,
  SEMANTIC_TOKEN_TYPES,
  type SemanticToken,
  type SemanticTokenModifier,
  type SemanticTokenType,
  semanticTokens,
} from "./semantic-tokens.ts";
export { type Signature, type SignatureParameter, signatureAt } from "./signature.ts";
export { STATEMENT_HELP, STEP_HELP, type StatementHelp, type WordHelp } from "./statement-help.ts";
export { type DocumentSymbol, type SymbolKind, symbols } from "./symbols.ts";

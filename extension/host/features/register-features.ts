import * as vscode from "vscode";
import type { Session } from "../session.ts";
import { registerCompletion } from "./completion.ts";
import { registerDefinition } from "./definition.ts";
import { registerFolding } from "./folding.ts";
import { registerFormatting } from "./formatting.ts";
import { registerHover } from "./hover.ts";
import { registerInlayHints } from "./inlay-hints.ts";
import { registerLenses } from "./lenses.ts";
import { registerProblems } from "./problems.ts";
import { registerQuickFixes } from "./quick-fixes.ts";
import { registerRename } from "./rename.ts";
import { registerSelectionRanges } from "./selection-ranges.ts";
import { registerSemanticTokens } from "./semantic-tokens.ts";
import { registerSignatureHelp } from "./signature-help.ts";
import { registerSymbols } from "./symbols.ts";

/** Registers everything that the editor asks about a text, one module a feature. */
export function registerFeatures(session: Session): vscode.Disposable {
  return vscode.Disposable.from(
    registerProblems(session),
    registerQuickFixes(session),
    registerCompletion(session),
    registerHover(session),
    registerSignatureHelp(session),
    registerInlayHints(session),
    registerLenses(session),
    registerDefinition(session),
    registerRename(session),
    registerSymbols(session),
    registerFolding(session),
    registerSelectionRanges(session),
    registerSemanticTokens(session),
    registerFormatting(),
  );
}

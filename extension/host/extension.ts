import type * as vscode from "vscode";
import { exportCutFile } from "./commands/export-commands.ts";
import { registerCommands } from "./commands/register-commands.ts";
import { showCautions } from "./commands/show-cautions.ts";
import { registerFeatures } from "./features/register-features.ts";
import { createPreviews } from "./preview/previews.ts";
import { createSession } from "./session.ts";
import { createStudies } from "./studies/studies.ts";

/** Called by the editor when the first outline, preview or command of ours is wanted. Only registers. */
export function activate({ subscriptions, extensionUri }: vscode.ExtensionContext): void {
  const session = createSession();
  const previews = createPreviews({
    extensionUri,
    session,
    exportCutFile: (document) => exportCutFile(document, session, session.analysis(document).variant),
    showCautions,
  });
  const studies = createStudies({ extensionUri, session, showCautions });
  const commands = registerCommands(session, { previews, studies });
  subscriptions.push(session, previews, studies, commands, registerFeatures(session));
}

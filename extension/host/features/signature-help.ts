import * as vscode from "vscode";
import { signatureAt } from "../../../geometry/editing/editing.ts";
import { OUTLINES } from "../language.ts";
import type { Session } from "../session.ts";

/** Shows how the statement, step or call at the cursor goes on. */
export function registerSignatureHelp(session: Session): vscode.Disposable {
  const provider: vscode.SignatureHelpProvider = {
    provideSignatureHelp: (document, position) => {
      const signature = signatureAt(session.analysis(document), document.offsetAt(position));
      if (!signature) return null;
      const { label, parameters, active, documentation } = signature;
      const information = new vscode.SignatureInformation(label, new vscode.MarkdownString(documentation));
      information.parameters = parameters.map(
        (parameter) =>
          new vscode.ParameterInformation(
            [parameter.start, parameter.end],
            new vscode.MarkdownString(parameter.documentation),
          ),
      );
      const help = new vscode.SignatureHelp();
      help.signatures = [information];
      // Behind the last part none is marked; the editor marks none for an index past the end.
      help.activeParameter = active < 0 ? parameters.length : active;
      return help;
    },
  };
  return vscode.languages.registerSignatureHelpProvider(OUTLINES, provider, {
    triggerCharacters: [" ", "(", ","],
    retriggerCharacters: [" ", ",", ")"],
  });
}

import * as vscode from "vscode";
import type { Problem, Severity } from "../../../geometry/language/problem.ts";
import { createLatestRuns, realClock } from "../documents/latest-runs.ts";
import { isOutline, openOutline } from "../language.ts";
import { toRange } from "../places.ts";
import type { Session } from "../session.ts";

/** One frame: the drawing goes first, and several keys in a frame are one check. */
const FRAME_MS = 16;

const SEVERITIES: Readonly<Record<Severity, vscode.DiagnosticSeverity>> = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  information: vscode.DiagnosticSeverity.Information,
};

/** Shows the problems of every open outline and all its variants as one types; a slow check leaves room for typing. */
export function registerProblems(session: Session): vscode.Disposable {
  const collection = vscode.languages.createDiagnosticCollection("barwright");
  const checks = createLatestRuns({
    clock: realClock,
    waitMs: FRAME_MS,
    run: (uri, isCurrent) => check(uri, isCurrent, session, collection),
    onFault: (error) => session.log.fault("problems", error),
  });
  const checkIfOutline = (document: vscode.TextDocument) => {
    if (isOutline(document)) checks.request(document.uri.toString());
  };
  const checkAll = () => vscode.workspace.textDocuments.forEach(checkIfOutline);
  checkAll();
  return vscode.Disposable.from(
    vscode.workspace.onDidOpenTextDocument(checkIfOutline),
    vscode.workspace.onDidChangeTextDocument(({ document }) => checkIfOutline(document)),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => {
      checks.cancel(uri.toString());
      collection.delete(uri);
    }),
    session.onDidChangePreferences(checkAll),
    checks,
    collection,
  );
}

async function check(
  uri: string,
  isCurrent: () => boolean,
  session: Session,
  collection: vscode.DiagnosticCollection,
): Promise<void> {
  const document = openOutline(uri);
  if (!document) return;
  const problems = await session.outlines.problems(document, isCurrent);
  if (!problems || !isCurrent()) return;
  collection.set(
    document.uri,
    problems.map((problem) => toDiagnostic(document, problem)),
  );
}

function toDiagnostic(document: vscode.TextDocument, problem: Problem): vscode.Diagnostic {
  const diagnostic = new vscode.Diagnostic(
    toRange(document, problem.range),
    problem.message,
    SEVERITIES[problem.severity],
  );
  diagnostic.source = "barwright";
  diagnostic.code = problem.code;
  // Shown faded, as what could go.
  if (problem.code === "unused-name") diagnostic.tags = [vscode.DiagnosticTag.Unnecessary];
  return diagnostic;
}

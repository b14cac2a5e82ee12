import { el, keepChildren, setHidden, setText } from "../../webview/page/dom.ts";
import type { ShownProblem } from "../protocol.ts";
import { fill } from "../strings.ts";
import { createFold } from "./fold.ts";
import { severityIcon } from "./icons.ts";
import type { PageContext, PageState } from "./page-state.ts";
import type { Part } from "./part.ts";

/** What is wrong, in text order; each leads to its place in the text. */
export function createProblemsPart(context: PageContext): Part {
  const { strings, post } = context;
  const list = el("ul", { class: "problem-list" });
  const fold = createFold(context, "problems", strings.problems, list);
  const none = el("p", { class: "no-problems" }, strings.noProblems);
  let shown: readonly ShownProblem[] = [];
  let drawn: PageState["view"] = null;

  const create = (index: number) => {
    const button = el("button", { type: "button", class: "problem" });
    button.addEventListener("click", () => {
      const problem = shown[index];
      if (problem) post({ type: "reveal", source: problem.source });
    });
    return el("li", {}, button);
  };
  const update = (item: Element, { severity, line, message }: ShownProblem) => {
    const [button] = item.children;
    if (!button) return;
    button.replaceChildren(
      severityIcon(severity),
      el("span", { class: "visually-hidden" }, `${strings[severity]}: `),
      el("span", { class: "problem-message" }, message),
      el("span", { class: "problem-line" }, fill(strings.lineNumber, line)),
    );
  };

  return {
    element: el("section", { class: "problems", "aria-label": strings.problems }, none, fold.element),
    update: (state) => {
      fold.update(state);
      if (drawn === state.view) return;
      drawn = state.view;
      shown = state.view?.problems ?? [];
      setHidden(none, shown.length > 0);
      setHidden(fold.element, shown.length === 0);
      setText(fold.summary, fill(strings.problemCount, shown.length));
      keepChildren(list, shown, create, update);
    },
  };
}

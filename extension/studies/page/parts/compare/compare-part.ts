/** Bars side by side: what is compared, the table of figures, the outlines and the bites over each other. */
import type { UnitSystem } from "../../../../../geometry/figures/present.ts";
import { el, freshId, setHidden, setText } from "../../../../webview/page/dom.ts";
import type { StudyDocument, StudyFile } from "../../../protocol.ts";
import type { CompareInput, CompareResult } from "../../../worker/compare-job.ts";
import type { PartContext, StudiesState, StudyPart, StudyView } from "../../part.ts";
import { createBarList } from "./bar-list.ts";
import { createBiteOverlay } from "./bite-overlay.ts";
import { type Choices, choicesOf } from "./choices.ts";
import { createComparisonTable } from "./comparison-table.ts";
import { createOutlineOverlay } from "./outline-overlay.ts";

export const comparePart: StudyPart = {
  name: "compare",
  title: ({ compare }) => compare,
  create: createComparePart,
};

/** What is compared, and what its pieces need to show it. */
export interface Compared {
  readonly result: CompareResult;
  readonly units: UnitSystem;
  readonly choices: Choices;
  /** Of each bar compared: its title and the style of its line, which stays with it whatever the reference is. */
  readonly bars: readonly { readonly title: string; readonly style: number }[];
}

function createComparePart(context: PartContext): StudyView {
  const { strings, jobs } = context;
  let choices = choicesOf(context.kept());
  let asked: Asked | null = null;
  let result: CompareResult | null = null;
  let stale = false;
  let fault: string | null = null;
  const take = (next: CompareResult) => {
    // A text half typed has no outline: what was shown stays until it has one again.
    stale = next.broken && result !== null;
    if (!stale) result = next;
    fault = null;
    context.redraw();
  };

  const change = (changes: Partial<Choices>) => {
    choices = { ...choices, ...changes };
    context.keep(choices);
    context.redraw();
  };
  const ask = (document: StudyDocument, others: readonly StudyFile[]) => {
    const wanted: Asked = { document, others, reference: choices.reference, hidden: choices.hidden };
    if (asked && sameFields(asked, wanted)) return;
    asked = wanted;
    jobs.runNext("compare", inputOf(wanted), {
      result: take,
      refused: (reason) => {
        fault = reason;
        context.redraw();
      },
      fault: () => {
        fault = strings.fault;
        context.redraw();
      },
    });
  };

  const headingId = freshId("compare");
  const status = el("p", { class: "study-status", role: "status" });
  const list = createBarList(context, change);
  const outlines = createOutlineOverlay(context);
  const table = createComparisonTable(context, change);
  const bite = createBiteOverlay(context, change);
  const shown = el(
    "div",
    { class: "compare-shown" },
    el("div", { class: "overlays" }, outlines.element, bite.element),
    table.element,
  );
  return {
    element: el(
      "section",
      { class: "study compare", "aria-labelledby": headingId },
      el("h2", { id: headingId, class: "visually-hidden" }, strings.compare),
      list.element,
      status,
      shown,
    ),
    update: ({ document, others }: StudiesState) => {
      if (!document) return;
      ask(document, others);
      setText(status, statusOf(fault, stale, result, strings));
      setHidden(status, status.textContent === "");
      setHidden(shown, result === null);
      if (!result) return;
      const compared = comparedOf(result, document.units, choices);
      list.update(compared, document.uri);
      outlines.update(compared);
      table.update(compared);
      bite.update(compared);
    },
  };
}

interface Asked extends Pick<Choices, "reference" | "hidden"> {
  readonly document: StudyDocument;
  readonly others: readonly StudyFile[];
}

function sameFields(a: Asked, b: Asked): boolean {
  return (
    a.document === b.document && a.others === b.others && a.reference === b.reference && a.hidden === b.hidden
  );
}

function inputOf({ document, others, reference, hidden }: Asked): CompareInput {
  const files = [document, ...others].map(({ uri, fileName, text }) => ({ uri, fileName, text }));
  return { files, settings: document.settings, reference, hidden };
}

function comparedOf(result: CompareResult, units: UnitSystem, choices: Choices): Compared {
  const bars = result.compared.map((key) => {
    const style = result.choices.findIndex((choice) => choice.key === key);
    return { title: result.choices[style]?.title ?? "", style };
  });
  return { result, units, choices, bars };
}

function statusOf(
  fault: string | null,
  stale: boolean,
  result: CompareResult | null,
  strings: PartContext["strings"],
): string {
  if (fault !== null) return fault;
  if (stale) return strings.compareStale;
  if (!result) return strings.working;
  return result.choices.length < 2 ? strings.oneBar : "";
}

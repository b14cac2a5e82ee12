/** The best bar within limits: an aim, the search for it, and the bars it finds, to be taken into the text. */
import { blockAtEnd } from "../../../../../geometry/study/aim/block-at-end.ts";
import { fill } from "../../../../webview/fill.ts";
import { el, freshId, setAttributes, setHidden, setText } from "../../../../webview/page/dom.ts";
import type { StudyDocument } from "../../../protocol.ts";
import type { AimInput, AimResult, AimSoFar } from "../../../worker/aim-job.ts";
import type { Progress } from "../../../worker/job.ts";
import type { PartContext, StudiesState, StudyPart, StudyView } from "../../part.ts";
import { createAimForm } from "./aim-form.ts";
import { createAimLine, soFarText } from "./aim-line.ts";
import { createAimedBar } from "./aimed-bar.ts";
import { type AimChoices, aimChoicesOf } from "./choices.ts";

export const aimPart: StudyPart = {
  name: "aim",
  title: ({ aimTitle }) => aimTitle,
  create: createAimPart,
};

/** A search under way. */
interface Search {
  readonly input: AimInput;
  readonly progress: Progress | null;
  readonly soFar: AimSoFar | null;
  /** True while what a stopped search had found is rounded and checked. */
  readonly isStopped: boolean;
}

/** What a search came to, and the text that it is about. */
interface Found {
  readonly result: AimResult;
  readonly text: string;
  readonly isStopped: boolean;
  readonly chosen: number;
}

function createAimPart(context: PartContext): StudyView {
  const { strings, jobs, redraw } = context;
  let choices = aimChoicesOf(context.kept());
  let line: { readonly text: string; readonly aim: string | null } | null = null;
  let askedFor: string | null = null;
  let search: Search | null = null;
  let found: Found | null = null;
  let message: string | null = null;

  const change = (changes: Partial<AimChoices>) => {
    choices = { ...choices, ...changes };
    context.keep(choices);
    redraw();
  };
  const say = (text: string) => {
    message = text;
    search = null;
    context.announce(text);
    redraw();
  };
  const run = (input: AimInput, soFar: AimSoFar | null) => {
    askedFor = null;
    search = { input, progress: null, soFar, isStopped: input.found !== null };
    message = null;
    jobs.run("aim", input, {
      progress: (progress) => {
        if (!search) return;
        // It is the aim's own job that says so.
        search = { ...search, progress, soFar: (progress.soFar as AimSoFar | undefined) ?? search.soFar };
        redraw();
      },
      result: (result) => {
        const isStopped = input.found !== null;
        found = { result, text: input.text, isStopped, chosen: 0 };
        say(result.infeasible ?? fill(isStopped ? strings.aimStopped : strings.aimFound, result.bars.length));
      },
      refused: say,
      fault: () => say(strings.fault),
    });
    redraw();
  };
  const start = () => {
    const { document } = context.state();
    if (!document) return;
    found = null;
    run(inputOf(document, choices), null);
  };
  /** The worker is gone at once; what it had found is then rounded and checked, which takes a moment. */
  const stop = () => {
    jobs.cancel();
    const given = search;
    search = null;
    const values = given?.soFar?.values ?? [];
    if (given && !given.isStopped && values.length > 0) run({ ...given.input, found: values }, given.soFar);
    else say(strings.aimNothing);
  };
  /** The line of the text, whenever nothing is searched for. */
  const askLine = ({ text }: StudyDocument) => {
    if (search || askedFor === text || line?.text === text) return;
    askedFor = text;
    const take = (aim: string | null) => {
      line = { text, aim };
      redraw();
    };
    jobs.runNext(
      "aim-line",
      { text },
      { result: ({ aim }) => take(aim), refused: () => take(null), fault: () => take(null) },
    );
  };
  const chosenBar = () => found?.result.bars[found.chosen];
  const insertVariant = async (typed: string) => {
    const { document } = context.state();
    const bar = chosenBar();
    if (!document || !found || !bar) return;
    const name = freeName(document.text, typed === "" ? FIRST_NAME : typed);
    const edit = blockAtEnd(document.text, name, bar.variantLines);
    if (!(await context.applyEdits(document.version, [edit]))) return;
    // With the variant behind it the text still says the same of the bar.
    if (found) found = { ...found, text: document.text + edit.newText };
    context.announce(fill(strings.aimVariantInserted, name));
    redraw();
  };
  const writeLets = async () => {
    const { document } = context.state();
    const bar = chosenBar();
    if (document && bar) await context.applyEdits(document.version, bar.edits);
  };

  const headingId = freshId("aim");
  const form = createAimForm(strings, { change, search: start, stop });
  const bar = el("progress", { class: "aim-progress", "aria-label": strings.aimProgress, max: 1 });
  const status = el("p", { class: "study-status" });
  const soFarLine = el("p", { class: "aim-so-far" });
  const chosen = createAimedBar(strings, { insertVariant, writeLets });
  const lineView = createAimLine(strings, (index) => {
    if (found) found = { ...found, chosen: index };
    redraw();
  });

  return {
    element: el(
      "section",
      { class: "study aim", "aria-labelledby": headingId },
      el("h2", { id: headingId, class: "visually-hidden" }, strings.aimTitle),
      form.element,
      bar,
      status,
      soFarLine,
      lineView.element,
      chosen.element,
    ),
    update: ({ document }: StudiesState) => {
      if (!document) return;
      askLine(document);
      const { units } = document;
      form.update({ choices, line: line?.aim ?? null, isSearching: search !== null });
      const share = search?.progress ? Math.min(1, search.progress.done / search.progress.total) : 0;
      setHidden(bar, search === null);
      setAttributes(bar, { value: search?.progress ? share.toFixed(3) : null });
      setText(status, search ? searchingText(search, strings) : (message ?? ""));
      setHidden(status, status.textContent === "");
      const soFar = search?.soFar ?? null;
      setText(soFarLine, soFar && soFar.titles.length === 1 ? soFarText(soFar, units, strings) : "");
      setHidden(soFarLine, soFarLine.textContent === "");
      const shownBar = search ? undefined : chosenBar();
      const isLine = soFar ? soFar.titles.length > 1 : !search && (found?.result.bars.length ?? 0) > 1;
      setHidden(lineView.element, !isLine);
      if (soFar && isLine) lineView.updateSoFar(soFar, units);
      else if (found && isLine) lineView.update(found.result, found.chosen, units);
      setHidden(chosen.element, shownBar === undefined);
      if (!found || !shownBar) return;
      chosen.update({
        result: found.result,
        bar: shownBar,
        units,
        isCurrent: sameText(found.text, document.text),
        freeName: freeName(document.text, FIRST_NAME),
      });
    },
  };
}

const FIRST_NAME = "aimed";

function inputOf({ text, variant, settings }: StudyDocument, { typed, effort }: AimChoices): AimInput {
  return { text, variant, settings, effort, aim: typed, found: null };
}

function searchingText({ progress, isStopped }: Search, strings: PartContext["strings"]): string {
  if (isStopped) return strings.aimFinishing;
  if (!progress) return strings.working;
  return fill(strings.aimSearching, progress.done, progress.total);
}

/** A variant of that name, or the next number of it, that the text does not have. */
function freeName(text: string, wanted: string): string {
  const isTaken = (name: string) => text.includes(`variant "${name}"`);
  if (!isTaken(wanted)) return wanted;
  let number = 2;
  while (isTaken(`${wanted} ${number}`)) number += 1;
  return `${wanted} ${number}`;
}

/** The editor may end lines in its own way. */
function sameText(a: string, b: string): boolean {
  return a === b || a.replaceAll("\r\n", "\n") === b.replaceAll("\r\n", "\n");
}

/** The bar as it is made and as it wears: what may be off about it, and what its teeth lose. */
import { fill } from "../../../../webview/fill.ts";
import { el, freshId, setHidden, setText } from "../../../../webview/page/dom.ts";
import type { StudyDocument } from "../../../protocol.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { AsMadeInput, AsMadeResult } from "../../../worker/as-made-job.ts";
import { choiceField, type Field, textField } from "../../fields.ts";
import type { PartContext, StudyPart, StudyView } from "../../part.ts";
import { type AsMadeChoices, asMadeChoicesOf } from "./as-made-choices.ts";
import { createToleranceView } from "./tolerance-view.ts";
import { createWearView } from "./wear-view.ts";

export const asMadePart: StudyPart = {
  name: "as-made",
  title: ({ asMade }) => asMade,
  create: createAsMadePart,
};

type Key = keyof AsMadeChoices;

function createAsMadePart(context: PartContext): StudyView {
  const { strings, jobs } = context;
  let choices = asMadeChoicesOf(context.kept());
  let asked: { readonly document: StudyDocument; readonly choices: AsMadeChoices } | null = null;
  let result: AsMadeResult | null = null;
  let stale = false;
  let refused: string | null = null;

  const change = (changes: Partial<AsMadeChoices>) => {
    choices = { ...choices, ...changes };
    context.keep(choices);
    context.redraw();
  };
  const fields = fieldsOf(strings, change);
  const ask = (document: StudyDocument) => {
    if (asked?.document === document && asked.choices === choices) return;
    asked = { document, choices };
    jobs.runNext("as-made", inputOf(document, choices, strings), {
      result: (next) => {
        stale = next.broken && result !== null;
        if (!stale) result = next;
        refused = null;
        context.redraw();
      },
      refused: (reason) => {
        refused = reason;
        context.redraw();
      },
      fault: () => {
        refused = strings.fault;
        context.redraw();
      },
    });
  };

  const status = el("p", { class: "study-status", role: "status" });
  const tolerance = createToleranceView(strings);
  const wear = createWearView(strings);
  const elementsOf = (keys: readonly Key[]) => keys.flatMap((key) => fields.get(key)?.element ?? []);
  const [toleranceId, wearId] = [freshId("tolerance"), freshId("wear")];
  return {
    element: el(
      "div",
      { class: "study" },
      status,
      el(
        "section",
        { class: "study", "aria-labelledby": toleranceId },
        el("h2", { id: toleranceId }, strings.tolerance),
        el(
          "div",
          { class: "asked", role: "group", "aria-label": strings.tolerance },
          ...elementsOf(TOLERANCE_KEYS),
        ),
        tolerance.element,
      ),
      el(
        "section",
        { class: "study", "aria-labelledby": wearId },
        el("h2", { id: wearId }, strings.wear),
        el("div", { class: "asked", role: "group", "aria-label": strings.wear }, ...elementsOf(WEAR_KEYS)),
        wear.element,
      ),
    ),
    update: ({ document }) => {
      if (!document) return;
      for (const [key, field] of fields) field.show(choices[key]);
      ask(document);
      const told = refused ?? (stale ? strings.lastThatWorked : result ? "" : strings.working);
      setText(status, told);
      setHidden(status, told === "");
      setHidden(tolerance.element, result === null);
      setHidden(wear.element, result === null);
      if (!result) return;
      tolerance.update(result.tolerance, document.units);
      wear.update(result.wear, document.units);
    },
  };
}

const TOLERANCE_KEYS: readonly Key[] = ["plate", "wedge", "cut", "grade", "spread", "edges", "parts", "seed"];
const WEAR_KEYS: readonly Key[] = ["at", "teeth", "by"];

function fieldsOf(
  strings: StudiesStrings,
  change: (changes: Partial<AsMadeChoices>) => void,
): ReadonlyMap<Key, Field> {
  const text = (key: Key, label: string, usual: string, hint = strings.asUsual): [Key, Field] => [
    key,
    textField({ label, hint: fill(hint, usual), changed: (value) => change({ [key]: value }) }),
  ];
  const spread = choiceField({
    label: strings.spread,
    options: [
      { value: "uniform", text: strings.spreadUniform },
      { value: "normal", text: strings.spreadNormal },
    ],
    changed: (value) => change({ spread: value }),
  });
  const edges = choiceField({
    label: strings.edges,
    options: [
      { value: "each", text: strings.edgesEach },
      { value: "together", text: strings.edgesTogether },
    ],
    changed: (value) => change({ edges: value }),
  });
  const at = choiceField({
    label: strings.wornAt,
    options: [
      { value: "tip", text: strings.wornTip },
      { value: "face", text: strings.wornFace },
    ],
    changed: (value) => change({ at: value }),
  });
  const teeth = choiceField({
    label: strings.teeth,
    options: [
      { value: "all", text: strings.teethAll },
      { value: "one", text: strings.teethOne },
    ],
    changed: (value) => change({ teeth: value }),
  });
  return new Map([
    text("plate", strings.plate, "A"),
    text("wedge", strings.wedge, "0.1 mm", strings.suchAs),
    text("cut", strings.cut, "1"),
    text("grade", strings.wantedGrade, "G16", strings.suchAs),
    ["spread", spread],
    ["edges", edges],
    text("parts", strings.parts, "5000"),
    text("seed", strings.seed, "1"),
    ["at", at],
    ["teeth", teeth],
    text("by", strings.wornBy, "2 mm"),
  ]);
}

function inputOf(
  { text, variant, settings }: StudyDocument,
  { at, teeth, by, ...tolerance }: AsMadeChoices,
  strings: StudiesStrings,
): AsMadeInput {
  return {
    text,
    variant,
    settings,
    tolerance,
    wear: { at, teeth, by },
    names: {
      plate: strings.plate,
      wedge: strings.wedge,
      cut: strings.cut,
      grade: strings.wantedGrade,
      parts: strings.parts,
      seed: strings.seed,
      by: strings.wornBy,
    },
  };
}

/** Where to drill so that the bar balances: what is wanted, the holes on the outline and as a table, and what to do with them. */
import { fixed, number, presentMeasure, type UnitSystem } from "../../../../../geometry/figures/present.ts";
import { DRILL_CAUTIONS } from "../../../../../geometry/study/drilling/drill-cautions.ts";
import { fill } from "../../../../webview/fill.ts";
import { el, freshId, setHidden, setText } from "../../../../webview/page/dom.ts";
import { valueText } from "../../../../webview/page/units.ts";
import type { StudyDocument } from "../../../protocol.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { DrillingInput, DrillingResult } from "../../../worker/drilling-job.ts";
import { type Field, textField } from "../../fields.ts";
import type { PartContext, StudyPart, StudyView } from "../../part.ts";
import { createFacts, createPlainTable } from "../../plain-table.ts";
import { type DrillingChoices, drillingChoicesOf } from "./drilling-choices.ts";
import { createHolePicture } from "./hole-picture.ts";

export const drillingPart: StudyPart = {
  name: "drilling",
  title: ({ drilling }) => drilling,
  create: createDrillingPart,
};

type WordField = Exclude<keyof DrillingChoices, "through">;

function createDrillingPart(context: PartContext): StudyView {
  const { strings, jobs } = context;
  let choices = drillingChoicesOf(context.kept());
  let asked: { readonly document: StudyDocument; readonly choices: DrillingChoices } | null = null;
  /** What was worked out, and for which text. */
  let done: { readonly result: DrillingResult; readonly version: number } | null = null;
  let stale = false;
  let refused: string | null = null;

  const change = (changes: Partial<DrillingChoices>) => {
    choices = { ...choices, ...changes };
    context.keep(choices);
    context.redraw();
  };
  const labels = labelsOf(strings);
  const fields = new Map<WordField, Field>(
    FIELDS.map(({ word, example }) => [
      word,
      textField({
        label: labels[word],
        hint: fill(word === "holes" ? strings.asUsual : strings.suchAs, example),
        changed: (value) => change({ [word]: value }),
      }),
    ]),
  );
  fields.get("measured")?.element.classList.add("wide");
  const through = el("input", { type: "checkbox" });
  through.addEventListener("change", () => change({ through: through.checked }));

  const ask = (document: StudyDocument) => {
    if (asked?.document === document && asked.choices === choices) return;
    asked = { document, choices };
    jobs.runNext("drilling", inputOf(document, choices, labels), {
      result: (result) => {
        stale = result.broken && done !== null;
        if (!stale) done = { result, version: document.version };
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

  const headingId = freshId("drilling");
  const status = el("p", { class: "study-status", role: "status" });
  const facts = createFacts();
  const picture = createHolePicture(strings);
  const table = createPlainTable();
  const write = el("button", { type: "button", class: "main-action" }, strings.writeHoles);
  write.addEventListener("click", () => {
    const made = done;
    if (made?.result.written) void context.applyEdits(made.version, made.result.written.edits);
  });
  const save = el("button", { type: "button", class: "main-action" }, strings.saveHoles);
  save.addEventListener("click", () => {
    if (done) void context.saveFile({ ...HOLES_FILE, content: done.result.csv, summary: strings.holesSaved });
  });
  const statements = el("pre", { class: "statements" });
  const cautions = el("ul", { class: "notes" }, ...DRILL_CAUTIONS.map((caution) => el("li", {}, caution)));
  const shown = el(
    "div",
    { class: "study" },
    facts.element,
    picture.element,
    table.element,
    statements,
    el("div", { class: "actions" }, write, save),
    el("h3", {}, strings.takeCare),
    cautions,
  );
  return {
    element: el(
      "section",
      { class: "study drilling", "aria-labelledby": headingId },
      el("h2", { id: headingId, class: "visually-hidden" }, strings.drilling),
      el(
        "div",
        { class: "asked", role: "group", "aria-label": strings.drilling },
        ...FIELDS.flatMap(({ word }) => fields.get(word)?.element ?? []),
        el("label", { class: "switch" }, through, strings.drillThrough),
      ),
      status,
      shown,
    ),
    update: ({ document }) => {
      if (!document) return;
      for (const [word, field] of fields) field.show(choices[word]);
      through.checked = choices.through;
      ask(document);
      const told = statusOf(done?.result ?? null, refused, stale, strings);
      setText(status, told);
      setHidden(status, told === "");
      setHidden(shown, done === null || refused !== null);
      if (!done) return;
      const { result } = done;
      facts.update(factsOf(result, document.units, strings));
      picture.update(result);
      const { holes } = result.plan;
      setHidden(table.element, holes.length === 0);
      table.update(
        strings.drillHoles,
        headsOf(result.inches, strings),
        holes.map((hole, i) => rowOf(hole, i, result.inches, strings)),
      );
      setHidden(statements, result.written === null);
      setText(statements, result.written?.statements.join("\n") ?? "");
      setHidden(write, result.written === null || result.written.problems.length > 0);
      setHidden(save, holes.length === 0);
    },
  };
}

const HOLES_FILE = { name: "holes.csv", kind: "CSV" } as const;

/** The examples are of the language of the file and not translated. */
const FIELDS: readonly { readonly word: WordField; readonly example: string }[] = [
  { word: "grade", example: "G16" },
  { word: "measured", example: "2.4 g at 110 mm, 35 deg" },
  { word: "drills", example: "5, 6, 8" },
  { word: "floor", example: "2 mm" },
  { word: "radius", example: "40 mm to 90 mm" },
  { word: "angle", example: "150 deg to 210 deg" },
  { word: "holes", example: "8" },
];

function labelsOf(strings: StudiesStrings): Readonly<Record<WordField, string>> {
  return {
    grade: strings.wantedGrade,
    measured: strings.drillMeasured,
    drills: strings.drillSizes,
    floor: strings.drillFloor,
    radius: strings.drillRadius,
    angle: strings.drillAngle,
    holes: strings.drillMost,
  };
}

function inputOf(
  { text, variant, settings }: StudyDocument,
  choices: DrillingChoices,
  names: Readonly<Record<WordField, string>>,
): DrillingInput {
  return { text, variant, settings, words: choices, names };
}

function statusOf(
  result: DrillingResult | null,
  refused: string | null,
  stale: boolean,
  strings: StudiesStrings,
): string {
  if (refused !== null) return refused;
  if (stale) return strings.lastThatWorked;
  if (!result) return strings.working;
  const { plan, written } = result;
  if (plan.message !== null) return plan.message;
  if (plan.holes.length === 0) return strings.nothingToDrill;
  return written && written.problems.length > 0 ? fill(strings.holesRefused, written.problems.join(" ")) : "";
}

type Plan = DrillingResult["plan"];

function factsOf(
  { plan, measured }: DrillingResult,
  units: UnitSystem,
  strings: StudiesStrings,
): [string, string][] {
  const { before, aim, after, takenG, coupleGMm2, insteadAdd, holes } = plan;
  if (!before || !aim) return [];
  const side = before.imbalanceDeg === null ? "" : fill(strings.atAngle, fixed(before.imbalanceDeg, 1));
  const source = measured ? strings.asMeasured : strings.asDrawn;
  const facts: [string, string][] = [
    [strings.now, [stateText(before, units), side, source].filter((part) => part !== "").join(", ")],
    [strings.wanted, fill(strings.wantedText, aim.text, imbalanceText(aim.imbalanceGMm, units))],
  ];
  if (after && holes.length > 0) {
    const mass = valueText(presentMeasure("mass", after.massKg, units));
    facts.push([strings.after, stateText(after, units)]);
    facts.push([strings.taken, fill(strings.takenText, number(takenG ?? 0, 4), mass, energyText(after))]);
    if ((coupleGMm2 ?? 0) > 0)
      facts.push([strings.couple, fill(strings.coupleText, number(coupleGMm2 ?? 0, 3))]);
  }
  if (insteadAdd) {
    const radius = valueText(presentMeasure("length", insteadAdd.radiusMm, units));
    facts.push([
      strings.orAdd,
      fill(strings.orAddText, number(insteadAdd.massG, 3), radius, fixed(insteadAdd.angleDeg, 1)),
    ]);
  }
  return facts;
}

function energyText({ energyJ }: NonNullable<Plan["after"]>): string {
  return energyJ === null ? "–" : `${number(energyJ, 4)} J`;
}

function stateText({ balanceGrade, imbalanceGMm }: NonNullable<Plan["after"]>, units: UnitSystem): string {
  const grade = balanceGrade === null ? "" : `G${number(balanceGrade, 3)}, `;
  return `${grade}${imbalanceText(imbalanceGMm, units)}`;
}

function imbalanceText(imbalanceGMm: number, units: UnitSystem): string {
  return valueText(presentMeasure("imbalance", imbalanceGMm, units));
}

function headsOf(inches: boolean, strings: StudiesStrings): readonly string[] {
  const unit = inches ? "in" : "mm";
  return [
    strings.hole,
    strings.drill,
    `${strings.radius}, ${unit}`,
    `${strings.angle}, °`,
    `x, ${unit}`,
    `y, ${unit}`,
    `${strings.fullDepth}, ${unit}`,
    `${strings.pointDepth}, ${unit}`,
    `${strings.mass}, g`,
  ];
}

/** Lengths in the unit that the file speaks, as a shop sets them. */
function rowOf(
  hole: Plan["holes"][number],
  index: number,
  inches: boolean,
  strings: StudiesStrings,
): readonly string[] {
  const decimals = inches ? 3 : 1;
  const length = (mm: number, more = 0) => (mm / (inches ? 25.4 : 1)).toFixed(decimals + more);
  const [x = 0, y = 0] = hole.centreMm;
  return [
    String(index + 1),
    hole.drill,
    length(hole.radiusMm),
    hole.angleDeg.toFixed(1),
    length(x, 1),
    length(y, 1),
    hole.through ? strings.throughPlate : length(hole.fullDepthMm),
    hole.pointDepthMm === null ? "" : length(hole.pointDepthMm),
    number(hole.massG, 3),
  ];
}

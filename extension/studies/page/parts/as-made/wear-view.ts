import { fixed, number, type UnitSystem, unitOf } from "../../../../../geometry/figures/present.ts";
import { WEAR_CAUTIONS, WEAR_NOTES } from "../../../../../geometry/study/wear/wear-notes.ts";
import { fill } from "../../../../webview/fill.ts";
import { el, keepChildren, setHidden, setText } from "../../../../webview/page/dom.ts";
import { lengthText } from "../../../../webview/page/units.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { AsMadeResult } from "../../../worker/as-made-job.ts";
import { createPlainTable } from "../../plain-table.ts";

type Wear = AsMadeResult["wear"];
type Study = Extract<Wear, { ok: true }>;
type Row = Study["rows"][number];

export interface WearView {
  readonly element: HTMLElement;
  update(wear: Wear, units: UnitSystem): void;
}

/** A row for each wear. */
export function createWearView(strings: StudiesStrings): WearView {
  const why = el("p", { class: "soft" });
  const told = el("p");
  const table = createPlainTable();
  const notes = el("ul", { class: "notes" });
  const shown = el("div", { class: "study" }, told, table.element, el("h3", {}, strings.takeCare), notes);
  return {
    element: el("div", {}, why, shown),
    update: (wear, units) => {
      setHidden(why, wear.ok);
      setHidden(shown, !wear.ok);
      if (!wear.ok) {
        setText(why, wear.message ?? "");
        return;
      }
      setText(told, toldOf(wear, units, strings));
      table.update(
        strings.wearTable,
        headsOf(wear, units, strings),
        wear.rows.map((row) => cellsOf(row, units, strings)),
      );
      keepChildren(notes, [WEAR_NOTES[wear.model], ...WEAR_CAUTIONS], () => el("li"), setText);
    },
  };
}

function toldOf(
  { leavesBalanceAtMm, wanted, rows }: Study,
  units: UnitSystem,
  strings: StudiesStrings,
): string {
  if (leavesBalanceAtMm !== null)
    return fill(strings.leavesBalance, wanted.text, lengthText(leavesBalanceAtMm, units));
  const [first] = rows;
  const isWithin = first?.isSound === true && first.eccentricityMm <= wanted.eccentricityMm;
  return fill(isWithin ? strings.staysBalanced : strings.notBalanced, wanted.text);
}

function headsOf({ closingMPerS }: Study, units: UnitSystem, strings: StudiesStrings): readonly string[] {
  const length = unitOf("length", units).unit;
  const speed = unitOf("speed", units);
  const bite =
    closingMPerS === null
      ? strings.biteColumn
      : fill(strings.biteAt, `${number(closingMPerS / speed.perUnit, 3)} ${speed.unit}`);
  return [
    `${strings.wornBy}, ${length}`,
    `${strings.tipRadius}, ${length}`,
    `${strings.mass}, ${unitOf("mass", units).unit}`,
    `${strings.imbalance}, ${unitOf("imbalance", units).unit}`,
    strings.gradeAxis,
    `${strings.energy}, J`,
    `${bite}, ${length}`,
    `${strings.square}, %`,
  ];
}

function cellsOf(row: Row, units: UnitSystem, strings: StudiesStrings): readonly string[] {
  const length = unitOf("length", units).perUnit;
  const by = fixed(row.byMm / length, units === "mm" ? 2 : 4);
  if (!row.isSound) return [by, strings.noSoundBar, "", "", "", "", "", ""];
  const shown = (value: number | null, perUnit: number, digits: number) =>
    value === null ? "–" : number(value / perUnit, digits);
  return [
    by,
    shown(row.tipRadiusMm, length, 5),
    shown(row.massKg, unitOf("mass", units).perUnit, 4),
    shown(row.imbalanceGMm, unitOf("imbalance", units).perUnit, 4),
    shown(row.gradeMmPerS, 1, 3),
    shown(row.energyJ, 1, 4),
    shown(row.biteMm, length, 4),
    shown(row.squareShare, 0.01, 3),
  ];
}

import {
  fixed,
  number,
  presentMeasure,
  type UnitSystem,
  unitOf,
} from "../../../../../geometry/figures/present.ts";
import {
  CAUSE_NAMES,
  TOLERANCE_CAUTIONS,
  TOLERANCE_NOTES,
} from "../../../../../geometry/study/tolerance/tolerance-notes.ts";
import { fill } from "../../../../webview/fill.ts";
import { el, setHidden, setText } from "../../../../webview/page/dom.ts";
import { lengthText, valueText } from "../../../../webview/page/units.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { AsMadeResult } from "../../../worker/as-made-job.ts";
import { createHistogram } from "../../chart/histogram.ts";
import { createFacts, createPlainTable } from "../../plain-table.ts";

type Tolerance = AsMadeResult["tolerance"];
type Study = Extract<Tolerance, { ok: true }>;
type Distribution = Study["imbalanceGMm"];

export interface ToleranceView {
  readonly element: HTMLElement;
  update(tolerance: Tolerance, units: UnitSystem): void;
}

/** Which grades the parts have, where the imbalance is from, and what to leave on a blank. */
export function createToleranceView(strings: StudiesStrings): ToleranceView {
  const why = el("p", { class: "soft" });
  const facts = createFacts();
  const histogram = createHistogram();
  const table = createPlainTable();
  const causes = createPlainTable();
  const notes = [...TOLERANCE_NOTES, ...TOLERANCE_CAUTIONS].map((note) => el("li", {}, note));
  const shown = el(
    "div",
    { class: "study" },
    facts.element,
    histogram.element,
    table.element,
    causes.element,
    el("h3", {}, strings.takenForGiven),
    el("ul", { class: "notes" }, ...notes),
  );
  return {
    element: el("div", {}, why, shown),
    update: (tolerance, units) => {
      setHidden(why, tolerance.ok);
      setHidden(shown, !tolerance.ok);
      if (!tolerance.ok) {
        setText(why, tolerance.message ?? "");
        return;
      }
      facts.update(factsOf(tolerance, units, strings));
      histogram.update(histogramOf(tolerance, strings));
      table.update(strings.distribution, headsOf(strings), rowsOf(tolerance, units, strings));
      const unit = unitOf("imbalance", units);
      causes.update(
        strings.causes,
        [strings.cause, fill(strings.rms, unit.unit)],
        tolerance.causes.map(({ cause, rmsGMm }) => [CAUSE_NAMES[cause], number(rmsGMm / unit.perUnit, 3)]),
      );
    },
  };
}

function factsOf(study: Study, units: UnitSystem, strings: StudiesStrings): [string, string][] {
  const { given, within, wanted, byGrade, takeOffG, takeOffAtRadiusMm, stockMm } = study;
  const limits = `${given.thicknessLowerMm} … ${given.thicknessUpperMm} mm`;
  const grades = byGrade.filter(({ share }) => share >= LEAST_TOLD);
  const facts: [string, string][] = [
    [strings.plate, fill(strings.plateText, given.plate, limits, fixed(given.wedgeAcrossBarMm, 3))],
    [strings.cut, given.cut],
    [strings.sample, fill(strings.sampleText, given.parts, given.seed)],
    [
      fill(strings.within, wanted.text),
      fill(strings.withinText, percent(within.share), percent(within.from), percent(within.to)),
    ],
  ];
  if (grades.length > 0)
    facts.push([strings.byGrade, grades.map(({ name, share }) => `${name} ${percent(share)}`).join(", ")]);
  facts.push(
    [
      strings.takeOff,
      fill(strings.takeOffText, number(takeOffG.p95, 3), lengthText(takeOffAtRadiusMm, units), wanted.text),
    ],
    [strings.stock, fill(strings.stockText, lengthText(stockMm.p95, units))],
  );
  return facts;
}

/** What would be told as nothing. */
const LEAST_TOLD = 0.0005;

function percent(share: number): string {
  return `${(share * 100).toFixed(1)}\u00a0%`;
}

function histogramOf(study: Study, strings: StudiesStrings) {
  const { balanceGrade, eccentricityMm, histogram, wanted, within } = study;
  const perMm = balanceGrade && eccentricityMm.mean > 0 ? balanceGrade.mean / eccentricityMm.mean : 1;
  const distribution = balanceGrade ?? eccentricityMm;
  return {
    bins: histogram,
    limit: wanted.eccentricityMm * perMm,
    xTitle: balanceGrade ? strings.gradeAxis : strings.eccentricityAxis,
    yTitle: strings.partsAxis,
    label: fill(
      strings.histogramOf,
      study.given.parts,
      number(distribution.p50, 3),
      number(distribution.p95, 3),
      percent(within.share),
      wanted.text,
    ),
  };
}

function headsOf(strings: StudiesStrings): readonly string[] {
  return [strings.soManyNoMore, strings.mean, "50 %", "90 %", "95 %", "99 %"];
}

function rowsOf(study: Study, units: UnitSystem, strings: StudiesStrings): (readonly string[])[] {
  const row = (
    label: string,
    { mean, p50, p90, p95, p99 }: Distribution,
    shown: (value: number) => string,
  ) => [label, ...[mean, p50, p90, p95, p99].map(shown)];
  const { balanceGrade, imbalanceGMm, massKg } = study;
  return [
    ...(balanceGrade ? [row(strings.gradeAxis, balanceGrade, (value) => number(value, 3))] : []),
    row(strings.imbalance, imbalanceGMm, (value) => valueText(presentMeasure("imbalance", value, units))),
    row(strings.mass, massKg, (value) => valueText(presentMeasure("mass", value, units))),
  ];
}

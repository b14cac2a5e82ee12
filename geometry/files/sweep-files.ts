/** A sweep as comma-separated values and as JSON, for plotting programs and scripts. */
import type { Study } from "../study/sweep/study.ts";
import type { SweepRow } from "../study/sweep/sweep.ts";
import { toCsv } from "./csv.ts";

/** Names of the columns: the lets with their units, `sound` (1 for a plate that could be cut, else 0), `kept` (all requirements), the figures. */
function headerOf({ variation, figures }: Study): readonly string[] {
  const lets = variation.lets.map(({ name, unit }) =>
    unit === null ? name : `${name}_${unit.replaceAll("/", "_per_").replace(/\W+/g, "")}`,
  );
  return [...lets, "sound", "kept", ...figures.map(({ key }) => key)];
}

/** A row for each place, by RFC 4180; what is not known is an empty field. */
export function sweepCsv(study: Study, rows: readonly SweepRow[]): string {
  return toCsv(
    headerOf(study),
    rows.map(({ values, isSound, keepsRequirements, figures }) => [
      ...values,
      Number(isSound),
      keepsRequirements === null ? null : Number(keepsRequirements),
      ...figures,
    ]),
  );
}

/** One plain object with stable keys; lets in their own units, figures in the unit of their key. */
export function sweepJson({ variation, axes, figures }: Study, rows: readonly SweepRow[]) {
  const { design, variant } = variation.start;
  return {
    bar: design.name,
    variant,
    lets: variation.lets.map(({ name, unit }, i) => ({ name, unit, ...axes[i] })),
    figures: figures.map(({ key, label }) => ({ key, label })),
    rows: rows.map(({ values, isSound, keepsRequirements, figures: found }) => ({
      values,
      sound: isSound,
      keepsRequirements,
      figures: Object.fromEntries(figures.map(({ key }, i) => [key, found[i] ?? null])),
    })),
  };
}

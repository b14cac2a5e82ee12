/** A comparison as rows of texts: what the terminal and the page lay out. */
import type { Verdict } from "../study/compare/verdict.ts";

export interface ComparisonTable {
  /** What the columns are called, the reference first. */
  readonly columns: readonly string[];
  readonly sections: readonly TableSection[];
}

export interface TableSection {
  readonly key: string;
  readonly title: string;
  readonly rows: readonly TableRow[];
}

export interface TableRow {
  readonly key: string;
  readonly label: string;
  /** One sentence for those who ask; empty where the label says it all. */
  readonly meaning: string;
  readonly differs: boolean;
  readonly cells: readonly TableCell[];
}

export interface TableCell {
  /** With its unit. */
  readonly value: string;
  /** Against the reference, with sign and unit; empty where there is none. */
  readonly difference: string;
  /** The same in per cent; empty where there is none. */
  readonly percent: string;
  readonly verdict: Verdict | null;
}

/** A table without the rows in which all bars are the same, and without sections that have none left. */
export function onlyDifferent({ columns, sections }: ComparisonTable): ComparisonTable {
  const kept = sections.map((section) => ({
    ...section,
    rows: section.rows.filter(({ differs }) => differs),
  }));
  return { columns, sections: kept.filter(({ rows }) => rows.length > 0) };
}

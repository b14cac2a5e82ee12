import { analyse } from "../../../geometry/analysis/analyse.ts";
import { isBroken } from "../../../geometry/analysis/broken.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import type { UnitSystem } from "../../../geometry/figures/present.ts";
import type { Settings } from "../../../geometry/figures/settings.ts";
import { toCompareCsv } from "../../../geometry/files/compare-csv.ts";
import { columnTitles, comparisonTable } from "../../../geometry/files/compare-table.ts";
import type { ComparisonTable } from "../../../geometry/files/comparison-rows.ts";
import { cleanFileName } from "../../../geometry/files/file-name.ts";
import type { Outline } from "../../../geometry/outline/segment.ts";
import {
  type BiteCell,
  type ComparedBar,
  type Comparison,
  compare,
} from "../../../geometry/study/compare/compare.ts";
import { arrayOf, isString, orNull, shape } from "../../webview/checks.ts";
import { loopsPath } from "../../webview/page/path-data.ts";
import { isSettings } from "../messages.ts";
import type { StudyFile } from "../protocol.ts";
import type { Job } from "./job.ts";

/** What is to be compared: the bar and the variants of the first file, and the other files' bars as they stand. */
export interface CompareInput {
  readonly files: readonly StudyFile[];
  readonly settings: Partial<Settings>;
  /** Key of the reference; the first bar where there is none of that key. */
  readonly reference: string | null;
  /** Keys of the bars to leave out. */
  readonly hidden: readonly string[];
}

/** One bar there is, whether it is compared or left out. */
export interface BarChoice {
  /** Stays the same while the file and the variant are there. */
  readonly key: string;
  readonly title: string;
  /** Address of its file. */
  readonly uri: string;
  readonly variant: string | null;
  readonly errors: number;
}

export interface CompareResult {
  /** All bars in the order of the files. */
  readonly choices: readonly BarChoice[];
  /** Keys of the bars that are compared, the reference first: the order of everything below. */
  readonly compared: readonly string[];
  readonly tables: Readonly<Record<UnitSystem, ComparisonTable>>;
  readonly outlines: ComparedOutlines | null;
  readonly bite: ComparedBite | null;
  /** The figures as comma-separated values, and a name for the file without ending. */
  readonly csv: string;
  readonly csvName: string;
  /** Whether the first file is so broken, as it is while one types, that its bar is not what the builder means. */
  readonly broken: boolean;
}

export interface ComparedOutlines {
  /** SVG path data in mm, y down; `null` for a bar without an outline. */
  readonly paths: readonly (string | null)[];
  /** Least x, least y, greatest x, greatest y, y up. */
  readonly boundsMm: readonly [number, number, number, number];
}

export interface ComparedBite {
  readonly closingMPerS: readonly number[];
  readonly maxMm: readonly (readonly number[] | null)[];
  readonly meanMm: readonly (readonly number[] | null)[];
}

export const compareJob: Job<"compare", CompareInput, CompareResult> = {
  kind: "compare",
  isInput: shape<CompareInput>({
    files: arrayOf(shape<StudyFile>({ uri: isString, fileName: isString, text: isString })),
    settings: isSettings,
    reference: orNull(isString),
    hidden: arrayOf(isString),
  }),
  run: (input) => {
    const all = barsOf(input);
    const compared = chosenBars(all, input);
    if (compared.length === 0) return { refused: "There is no bar to compare." };
    const comparison = compare(compared);
    const titles = titlesOf(all);
    const columns = compared.map(({ key }) => titles.get(key) ?? "");
    return {
      result: {
        choices: all.map(({ key, uri, analysis: { variant, problems } }) => ({
          key,
          uri,
          variant,
          title: titles.get(key) ?? "",
          errors: problems.filter(({ severity }) => severity === "error").length,
        })),
        compared: compared.map(({ key }) => key),
        tables: {
          mm: { ...comparisonTable(compared, comparison, "mm"), columns },
          in: { ...comparisonTable(compared, comparison, "in"), columns },
        },
        csv: toCompareCsv(comparison, columns),
        csvName: cleanFileName(`${all[0]?.analysis.design.name ?? "bar"} compared`),
        outlines: outlinesOf(comparison),
        bite: biteOf(comparison),
        broken: all[0] ? isBroken(all[0].analysis) : false,
      },
    };
  },
};

interface KeyedBar extends ComparedBar {
  readonly key: string;
  readonly uri: string;
}

function barsOf({ files, settings }: CompareInput): KeyedBar[] {
  const names = files.map(({ fileName }) => fileName);
  return files.flatMap(({ uri, fileName, text }, i) => {
    const source = readSource(text);
    // Two files of one name are told apart by their addresses.
    const file = names.indexOf(fileName) === names.lastIndexOf(fileName) ? fileName : uri;
    const variants = i === 0 ? [null, ...source.variants] : [null];
    return variants.map((variant) => ({
      key: JSON.stringify([uri, variant]),
      uri,
      file,
      analysis: analyse(source, { variant, settings }),
    }));
  });
}

function titlesOf(bars: readonly KeyedBar[]): ReadonlyMap<string, string> {
  const titles = columnTitles(bars.map(({ file, analysis: { variant } }) => ({ file, variant })));
  return new Map(bars.map(({ key }, i) => [key, titles[i] ?? ""]));
}

/** Those that are not left out, the reference first; it cannot be left out itself. */
function chosenBars(all: readonly KeyedBar[], { reference, hidden }: CompareInput): KeyedBar[] {
  const first = all.find(({ key }) => key === reference) ?? all[0];
  return first ? [first, ...all.filter((bar) => bar !== first && !hidden.includes(bar.key))] : [];
}

function outlinesOf({ outlines }: Comparison): ComparedOutlines | null {
  return (
    outlines && { paths: outlines.outlines.map((one) => one && pathOf(one)), boundsMm: outlines.boundsMm }
  );
}

function pathOf({ outer, inner }: Outline): string {
  return loopsPath([outer, ...inner]);
}

function biteOf({ bite }: Comparison): ComparedBite | null {
  if (!bite) return null;
  const curves = (of: (cell: BiteCell) => number) => bite.bars.map((bar) => (bar ? bar.map(of) : null));
  return {
    closingMPerS: bite.closingMPerS,
    maxMm: curves(({ maxMm }) => maxMm),
    meanMm: curves(({ meanMm }) => meanMm),
  };
}

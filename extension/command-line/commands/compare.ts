import { analyse } from "../../../geometry/analysis/analyse.ts";
import { readSource, type Source } from "../../../geometry/analysis/source.ts";
import { comparisonJson } from "../../../geometry/files/compare-json.ts";
import { comparisonTable } from "../../../geometry/files/compare-table.ts";
import { onlyDifferent } from "../../../geometry/files/comparison-rows.ts";
import { type ComparedBar, compare } from "../../../geometry/study/compare/compare.ts";
import { comparisonText } from "../compare-text.ts";
import { problemLine } from "../problem-line.ts";
import { CallError, type World } from "../world.ts";
import { type Command, oneOf, readArguments } from "./command.ts";
import { checkVariant, exitOf } from "./open.ts";

export const compareCommand: Command = {
  name: "compare",
  call: "compare FILE…",
  does: "Variants or files side by side, the first is the reference",
  options: [
    { call: "FILE", does: "one file: the bar as it stands and its variants" },
    { call: "FILE FILE…", does: "several files: each bar as it stands, or in the named variants" },
    { call: "--variant NAME", does: "only that variant; may be given several times" },
    { call: "--only-different", does: "leave out what is the same in all" },
    { call: "--units mm|in", does: "millimetres (default) or inches in the table" },
    { call: "--json", does: "one JSON object with stable keys, always in mm, kg, s" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      variant: { type: "string", multiple: true },
      units: { type: "string", default: "mm" },
      json: { type: "boolean", default: false },
      "only-different": { type: "boolean", default: false },
    });
    const units = oneOf("--units", values.units, ["mm", "in"]);
    const bars = await barsOf(positionals, [...new Set(values.variant)], world);
    const comparison = compare(bars);
    const isShort = values["only-different"];
    if (values.json) world.out(`${JSON.stringify(comparisonJson(bars, comparison, isShort), null, 2)}\n`);
    else {
      const table = comparisonTable(bars, comparison, units);
      world.out(comparisonText(isShort ? onlyDifferent(table) : table, world.terminal));
      tellErrors(bars, world);
    }
    return exitOf(bars.flatMap(({ analysis }) => analysis.problems));
  },
};

async function barsOf(
  files: readonly string[],
  named: readonly string[],
  world: World,
): Promise<readonly ComparedBar[]> {
  if (files.length === 0) throw new CallError("Name the outline file, or several.");
  const isAlone = files.length === 1;
  const bars: ComparedBar[] = [];
  for (const file of files) {
    const source = readSource(await world.read(file));
    for (const variant of variantsOf(source, file, named, isAlone))
      bars.push({ file, analysis: analyse(source, { variant }) });
  }
  return bars;
}

/** A file that is alone is compared with itself as it stands; of several the named variants are compared. */
function variantsOf(
  source: Source,
  file: string,
  named: readonly string[],
  isAlone: boolean,
): readonly (string | null)[] {
  const wanted = named.map((name) => checkVariant(source, name, file));
  if (!isAlone) return wanted.length > 0 ? wanted : [null];
  if (source.variants.length === 0)
    throw new CallError(`${file} has no variants to compare; name a second file, or add a variant.`);
  return [null, ...(wanted.length > 0 ? wanted : source.variants)];
}

/** One line an error, once for all variants of a file. */
function tellErrors(bars: readonly ComparedBar[], world: World): void {
  const lines = bars.flatMap(({ file, analysis: { problems, source } }) =>
    problems
      .filter(({ severity }) => severity === "error")
      .map((problem) => problemLine(problem, source.lines, file, { ...world.terminal, colour: false })),
  );
  for (const line of new Set(lines)) world.err(`${line}\n`);
}

import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { CUT_FORMATS, type CutFormat, exportFile } from "../../../geometry/files/export.ts";
import { problemLine } from "../problem-line.ts";
import { CallError, EXIT, type World } from "../world.ts";
import { type Command, oneFile, oneOf, readArguments } from "./command.ts";
import { exitOf, open } from "./open.ts";

export const exportCommand: Command = {
  name: "export",
  call: "export FILE --to OUT",
  does: "A file to cut, or the numbers, by the ending of OUT",
  options: [
    { call: "--to OUT", does: ".dxf or .svg to cut; .csv bite curve; .json; .md report to print" },
    { call: "--variant NAME", does: "export that variant" },
    { call: "--release 2000|r12", does: "DXF release: 2000 (default), r12 for the oldest readers" },
    { call: "--units mm|in", does: "unit of the cut file and the .md report: mm (default) or in" },
    { call: "--force", does: "replace OUT if it exists" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      to: { type: "string" },
      variant: { type: "string" },
      release: { type: "string", default: "2000" },
      units: { type: "string", default: "mm" },
      force: { type: "boolean", default: false },
    });
    const path = oneFile(positionals);
    if (values.to === undefined) throw new CallError("Say where to: --to OUT.dxf.");
    const format = formatOf(values.to);
    const options = {
      release: oneOf("--release", values.release, ["2000", "r12"]),
      units: oneOf("--units", values.units, ["mm", "in"]),
    };
    const analysis = await open(path, values.variant, world);
    const result = exportFile(analysis, format, options);
    tellProblems(analysis, path, world);
    if (!result.ok) {
      world.err(`barwright: nothing was written: ${result.reason}\n`);
      return EXIT.problems;
    }
    await world.write(values.to, result.content, values.force);
    world.out(`${values.to} written: ${result.summary}.\n`);
    return exitOf(analysis.problems);
  },
};

function formatOf(path: string): CutFormat {
  const ending = /\.([^.\\/]+)$/.exec(path)?.[1]?.toLowerCase() ?? "";
  const format = CUT_FORMATS.find((candidate) => candidate === ending);
  if (!format)
    throw new CallError(`${path}: the ending must be one of ${CUT_FORMATS.map((f) => `.${f}`).join(", ")}.`);
  return format;
}

function tellProblems({ problems, source }: Analysis, path: string, world: World): void {
  for (const problem of problems)
    world.err(`${problemLine(problem, source.lines, path, { ...world.terminal, colour: false })}\n`);
}

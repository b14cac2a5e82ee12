import { checkSource } from "../../../geometry/analysis/analyse.ts";
import { readSource, type Source } from "../../../geometry/analysis/source.ts";
import { problemJson } from "../../../geometry/files/json.ts";
import type { Problem } from "../../../geometry/language/problem.ts";
import { problemLine } from "../problem-line.ts";
import { CallError } from "../world.ts";
import { type Command, readArguments } from "./command.ts";
import { exitOf } from "./open.ts";

export const checkCommand: Command = {
  name: "check",
  call: "check FILE…",
  does: "Problems only, one a line, of every variant",
  options: [{ call: "--json", does: "a JSON list of files with their problems" }],
  async run(args, world) {
    const { values, positionals } = readArguments(args, { json: { type: "boolean", default: false } });
    if (positionals.length === 0) throw new CallError("Name at least one outline file.");
    const checked: { file: string; source: Source; problems: readonly Problem[] }[] = [];
    for (const file of positionals) {
      const source = readSource(await world.read(file));
      checked.push({ file, source, problems: checkSource(source) });
    }
    if (values.json) {
      const list = checked.map(({ file, source, problems }) => ({
        file,
        problems: problems.map((problem) => problemJson(problem, source.lines)),
      }));
      world.out(`${JSON.stringify(list, null, 2)}\n`);
    } else {
      for (const { file, source, problems } of checked)
        for (const problem of problems)
          world.out(`${problemLine(problem, source.lines, file, world.terminal)}\n`);
    }
    return exitOf(checked.flatMap(({ problems }) => problems));
  },
};

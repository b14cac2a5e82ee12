import { format } from "../../../geometry/language/format.ts";
import { parse } from "../../../geometry/language/parse.ts";
import { CallError } from "../world.ts";
import { type Command, readArguments } from "./command.ts";
import { exitOf } from "./open.ts";

export const formatCommand: Command = {
  name: "format",
  call: "format FILE…",
  does: "One layout for all files",
  options: [{ call: "--write", does: "change the files; without it the result is printed" }],
  async run(args, world) {
    const { values, positionals } = readArguments(args, { write: { type: "boolean", default: false } });
    if (positionals.length === 0) throw new CallError("Name at least one outline file.");
    const problems = [];
    for (const file of positionals) {
      const text = await world.read(file);
      const formatted = format(text);
      problems.push(...parse(text).problems);
      if (!values.write) world.out(formatted);
      else if (formatted !== text) await world.write(file, formatted, true);
    }
    return exitOf(problems);
  },
};

import { testDaySheet } from "../../../geometry/files/sheet.ts";
import { CallError } from "../world.ts";
import { type Command, oneFile, oneOf, readArguments } from "./command.ts";
import { exitOf, open, tellErrors } from "./open.ts";

export const sheetCommand: Command = {
  name: "sheet",
  call: "sheet FILE",
  does: "One page for the test day, to print and tick off",
  options: [
    { call: "--to OUT.md", does: "write the page; without it the page is printed" },
    { call: "--variant NAME", does: "the page of that variant" },
    { call: "--units mm|in", does: "m/s (default), or mph and inches" },
    { call: "--force", does: "replace OUT.md if it exists" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      to: { type: "string" },
      variant: { type: "string" },
      units: { type: "string", default: "mm" },
      force: { type: "boolean", default: false },
    });
    const path = oneFile(positionals);
    const units = oneOf("--units", values.units, ["mm", "in"]);
    if (values.to !== undefined && !values.to.toLowerCase().endsWith(".md"))
      throw new CallError(`${values.to}: the ending must be .md.`);
    const analysis = await open(path, values.variant, world);
    const { problems, source } = analysis;
    const page = testDaySheet(analysis, units);
    if (values.to === undefined) world.out(page);
    else {
      await world.write(values.to, page, values.force);
      world.out(`${values.to} written.\n`);
    }
    // A page that is taken to the test box must not hide that the file has errors.
    tellErrors(problems, source, path, world);
    return exitOf(problems);
  },
};

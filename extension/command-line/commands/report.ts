import { analysisJson } from "../../../geometry/files/json.ts";
import { reportOf } from "../../../geometry/files/report.ts";
import { reportText } from "../report-text.ts";
import { type Command, oneFile, oneOf, readArguments } from "./command.ts";
import { exitOf, open } from "./open.ts";

export const reportCommand: Command = {
  name: "report",
  call: "report FILE",
  does: "Every number of a bar",
  options: [
    { call: "--variant NAME", does: "work out that variant" },
    { call: "--units mm|in", does: "millimetres (default) or inches in the table" },
    { call: "--json", does: "one JSON object with stable keys, always in mm, kg, s" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      variant: { type: "string" },
      units: { type: "string", default: "mm" },
      json: { type: "boolean", default: false },
    });
    const path = oneFile(positionals);
    const units = oneOf("--units", values.units, ["mm", "in"]);
    const analysis = await open(path, values.variant, world);
    if (values.json) world.out(`${JSON.stringify(analysisJson(analysis), null, 2)}\n`);
    else world.out(reportText(reportOf(analysis, units), analysis, path, world.terminal));
    return exitOf(analysis.problems);
  },
};

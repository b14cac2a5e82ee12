import { readSource } from "../../../geometry/analysis/source.ts";
import { sweepCsv, sweepJson } from "../../../geometry/files/sweep-files.ts";
import { studyOf } from "../../../geometry/study/sweep/study.ts";
import { sweep } from "../../../geometry/study/sweep/sweep.ts";
import { sweepText } from "../sweep-text.ts";
import { CallError, EXIT } from "../world.ts";
import { type Command, oneFile, oneOf, readArguments } from "./command.ts";
import { checkVariant, tellErrors } from "./open.ts";

export const studyCommand: Command = {
  name: "study",
  call: "study FILE --let NAME",
  does: "Any figures over a range of one let or two",
  options: [
    { call: "--let NAME", does: "the let to vary, over its bounds; once or twice" },
    {
      call: '--let "NAME from A to B"',
      does: "over a range of its own, as in a file: tail from 80 mm to 120 mm",
    },
    { call: "--steps N[,N]", does: "how many values of each let: 41, of two 21 each" },
    { call: "--figure NAME", does: "as require names it (mass, bite at 4 m/s) or its key; may be repeated" },
    { call: "--variant NAME", does: "vary that variant" },
    { call: "--units mm|in", does: "millimetres (default) or inches in the table" },
    { call: "--to OUT.csv", does: "write the table as comma-separated values" },
    { call: "--force", does: "replace OUT.csv if it exists" },
    { call: "--json", does: "one JSON object with stable keys, always in mm, kg, s" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      let: { type: "string", multiple: true, default: [] },
      steps: { type: "string" },
      figure: { type: "string", multiple: true, default: [] },
      variant: { type: "string" },
      units: { type: "string", default: "mm" },
      to: { type: "string" },
      force: { type: "boolean", default: false },
      json: { type: "boolean", default: false },
    });
    const path = oneFile(positionals);
    const units = oneOf("--units", values.units, ["mm", "in"]);
    const to = csvPath(values.to);
    const source = readSource(await world.read(path));
    const study = studyOf(source, {
      lets: values.let,
      counts:
        values.steps?.split(",").map((count) => (count.trim() === "" ? Number.NaN : Number(count))) ?? [],
      figures: values.figure,
      variant: checkVariant(source, values.variant, path),
    });
    if ("message" in study) throw new CallError(study.message);
    // Of a text that was read in part no figure can be trusted; that the bar as it stands fails a check is no obstacle.
    if (tellErrors(source.problems, source, path, world)) return EXIT.problems;
    const rows = [...sweep(study.variation, study.axes, study.figures)];
    if (to !== null) {
      await world.write(to, sweepCsv(study, rows), values.force);
      world.out(`${to} written: ${rows.length} bars.\n`);
    } else if (values.json) world.out(`${JSON.stringify(sweepJson(study, rows), null, 2)}\n`);
    else world.out(sweepText(study, rows, units, world.terminal));
    if (rows.some(({ isSound }) => isSound)) return EXIT.fine;
    tellErrors(study.variation.start.problems, source, path, world);
    return EXIT.problems;
  },
};

function csvPath(path: string | undefined): string | null {
  if (path === undefined) return null;
  if (!path.toLowerCase().endsWith(".csv")) throw new CallError(`${path}: the ending must be .csv.`);
  return path;
}

import { wearJson } from "../../../geometry/files/wear-json.ts";
import { speaksInches } from "../../../geometry/study/drilling/shop-steps.ts";
import { WEAR_MODELS, wearStudy } from "../../../geometry/study/wear/wear.ts";
import { readWearSteps } from "../../../geometry/study/wear/wear-words.ts";
import { oneLine } from "../problem-line.ts";
import { wearText } from "../wear-text.ts";
import { EXIT } from "../world.ts";
import { asked, type Command, oneFile, oneOf, readArguments } from "./command.ts";
import { open } from "./open.ts";

export const wearCommand: Command = {
  name: "wear",
  call: "wear FILE",
  does: "What mass, balance and bite do as the teeth wear",
  options: [
    { call: '--by "2 mm"', does: 'how far, in five even steps, or each: "0.5 mm, 1 mm"' },
    { call: "--at tip|face", does: "worn from the tip (default), or the face ground back" },
    { call: "--teeth all|one", does: "all alike (default), or only the first from +x" },
    { call: "--variant NAME", does: "wear that variant" },
    { call: "--json", does: "one JSON object with stable keys" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      by: { type: "string" },
      at: { type: "string", default: "tip" },
      teeth: { type: "string", default: "all" },
      variant: { type: "string" },
      json: { type: "boolean", default: false },
    });
    const path = oneFile(positionals);
    const model = oneOf("--at", values.at, WEAR_MODELS);
    const teeth = oneOf("--teeth", values.teeth, ["all", "one"]);
    const byMm = values.by === undefined ? null : asked(readWearSteps("--by", values.by));
    const analysis = await open(path, values.variant, world);
    const result = wearStudy(analysis, { model, teeth, ...(byMm === null ? {} : { byMm }) });
    if (values.json)
      world.out(
        `${JSON.stringify({ file: path, variant: analysis.variant, ...wearJson(result) }, null, 2)}\n`,
      );
    else if (result.ok)
      world.out(wearText(result.study, analysis, speaksInches(analysis) ? "in" : "mm", world.terminal));
    else world.err(`${oneLine(`${path}: not studied: ${result.message}`)}\n`);
    return result.ok ? EXIT.fine : EXIT.problems;
  },
};

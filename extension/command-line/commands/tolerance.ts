import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { toleranceJson } from "../../../geometry/files/tolerance-json.ts";
import { SPREADS } from "../../../geometry/study/tolerance/deviation.ts";
import { type ToleranceRequest, toleranceStudy } from "../../../geometry/study/tolerance/tolerance.ts";
import { readToleranceRequest } from "../../../geometry/study/tolerance/tolerance-words.ts";
import { oneLine } from "../problem-line.ts";
import { toleranceText } from "../tolerance-text.ts";
import { EXIT, type World } from "../world.ts";
import { asked, type Command, oneFile, oneOf, readArguments } from "./command.ts";
import { open } from "./open.ts";

export const toleranceCommand: Command = {
  name: "tolerance",
  call: "tolerance FILE",
  does: "What the tolerances of plate and cut do to balance",
  options: [
    { call: "--plate A|B|C|D", does: "class of EN 10029:1991 (A), or limits: --plate='-0.2 mm to 0.3 mm'" },
    { call: '--wedge "0.1 mm"', does: "most difference of thickness across the bar; else by the plate" },
    { call: "--cut 1", does: "class of ISO 9013 (1), or a limit of your shop: --cut '0.2 mm'" },
    { call: "--edges each|together", does: "each edge off for itself (default), or all alike" },
    { call: "--spread uniform|normal", does: "anywhere within limits (default), or limits at two sigma" },
    { call: "--grade G", does: "wanted grade, such as G16; else what the file requires" },
    { call: "--parts N", does: "size of the sample (5000)" },
    { call: "--seed N", does: "another sample; the same seed gives the same one (1)" },
    { call: "--variant NAME", does: "study that variant" },
    { call: "--json", does: "one JSON object with stable keys" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      plate: { type: "string", default: "A" },
      wedge: { type: "string" },
      cut: { type: "string", default: "1" },
      edges: { type: "string", default: "each" },
      spread: { type: "string", default: "uniform" },
      grade: { type: "string" },
      parts: { type: "string" },
      seed: { type: "string" },
      variant: { type: "string" },
      json: { type: "boolean", default: false },
    });
    const path = oneFile(positionals);
    const request = asked(
      readToleranceRequest(
        {
          ...values,
          edges: oneOf("--edges", values.edges, ["each", "together"]),
          spread: oneOf("--spread", values.spread, SPREADS),
        },
        (word) => `--${word}`,
      ),
    );
    const analysis = await open(path, values.variant, world);
    return tell(analysis, request, values.json, path, world);
  },
};

function tell(analysis: Analysis, request: ToleranceRequest, isJson: boolean, file: string, world: World) {
  const result = toleranceStudy(analysis, request);
  if (isJson)
    world.out(`${JSON.stringify({ file, variant: analysis.variant, ...toleranceJson(result) }, null, 2)}\n`);
  else if (result.ok) world.out(toleranceText(result.study, analysis, world.terminal));
  else world.err(`${oneLine(`${file}: not studied: ${result.message}`)}\n`);
  return result.ok ? EXIT.fine : EXIT.problems;
}

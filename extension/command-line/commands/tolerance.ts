import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { toleranceJson } from "../../../geometry/files/tolerance-json.ts";
import { LENGTH } from "../../../geometry/language/dimension.ts";
import { type CutTolerance, cutWithin } from "../../../geometry/study/tolerance/cut-tolerance.ts";
import { SPREADS } from "../../../geometry/study/tolerance/deviation.ts";
import {
  PLATE_CLASSES,
  type PlateClass,
  type PlateTolerance,
} from "../../../geometry/study/tolerance/plate-tolerance.ts";
import {
  LEAST_PARTS,
  MOST_PARTS,
  type ToleranceRequest,
  toleranceStudy,
} from "../../../geometry/study/tolerance/tolerance.ts";
import { oneLine } from "../problem-line.ts";
import { toleranceText } from "../tolerance-text.ts";
import { gradeOfText, rangeOfText, valueOfText, wholeOfText } from "../values-of-words.ts";
import { CallError, EXIT, type World } from "../world.ts";
import { type Command, oneFile, oneOf, readArguments } from "./command.ts";
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
    const wedgeMm = values.wedge === undefined ? null : valueOfText("--wedge", values.wedge, LENGTH);
    if (wedgeMm !== null && wedgeMm < 0) throw new CallError("--wedge is a length of at least 0 mm.");
    const cut = cutOf(values.cut);
    const request: ToleranceRequest = {
      plate: plateOf(values.plate),
      ...(cut === null ? {} : { cut }),
      wedgeMm,
      edges: oneOf("--edges", values.edges, ["each", "together"]),
      spread: oneOf("--spread", values.spread, SPREADS),
      gradeMmPerS: values.grade === undefined ? null : gradeOfText("--grade", values.grade),
      ...(values.parts === undefined
        ? {}
        : { parts: wholeOfText("--parts", values.parts, LEAST_PARTS, MOST_PARTS) }),
      ...(values.seed === undefined ? {} : { seed: wholeOfText("--seed", values.seed, 0, MOST_SEED) }),
    };
    const analysis = await open(path, values.variant, world);
    return tell(analysis, request, values.json, path, world);
  },
};

const MOST_SEED = 2 ** 32 - 1;

function tell(analysis: Analysis, request: ToleranceRequest, isJson: boolean, file: string, world: World) {
  const result = toleranceStudy(analysis, request);
  if (isJson)
    world.out(`${JSON.stringify({ file, variant: analysis.variant, ...toleranceJson(result) }, null, 2)}\n`);
  else if (result.ok) world.out(toleranceText(result.study, analysis, world.terminal));
  else world.err(`${oneLine(`${file}: not studied: ${result.message}`)}\n`);
  return result.ok ? EXIT.fine : EXIT.problems;
}

function plateOf(text: string): PlateClass | PlateTolerance {
  const known = PLATE_CLASSES.find((name) => name === text.trim().toUpperCase());
  if (known) return known;
  if (!/\bto\b/.test(text))
    throw new CallError(`--plate is A, B, C, D or limits such as "-0.2 mm to 0.3 mm", not "${text}".`);
  const [lowerMm, upperMm] = rangeOfText("--plate", text, LENGTH, "-0.2 mm to 0.3 mm");
  if (lowerMm > upperMm) throw new CallError("--plate: the lower limit comes first.");
  return { lowerMm, upperMm, withinPlateMm: upperMm - lowerMm, text: "limits as stated" };
}

/** `null` for the class. */
function cutOf(text: string): CutTolerance | null {
  if (text.trim() === "1") return null;
  const limitMm = valueOfText("--cut", text, LENGTH);
  if (limitMm < 0) throw new CallError("--cut is a length of at least 0 mm.");
  return cutWithin(limitMm);
}

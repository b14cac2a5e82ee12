import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { drillJson } from "../../../geometry/files/drill-json.ts";
import { applyEdits } from "../../../geometry/language/apply-edits.ts";
import { type DrillResult, drillToBalance } from "../../../geometry/study/drilling/drill.ts";
import { readDrillRequest } from "../../../geometry/study/drilling/drill-words.ts";
import { speaksInches } from "../../../geometry/study/drilling/shop-steps.ts";
import { type WrittenHoles, writeHoles } from "../../../geometry/study/drilling/write-holes.ts";
import { drillText } from "../drill-text.ts";
import { oneLine, problemLine } from "../problem-line.ts";
import { CallError, EXIT, type World } from "../world.ts";
import { asked, type Command, oneFile, readArguments } from "./command.ts";
import { exitOf, open } from "./open.ts";

export const drillCommand: Command = {
  name: "drill",
  call: "drill FILE",
  does: "Where and how deep to drill so that the bar balances",
  options: [
    { call: "--grade G", does: "wanted grade, such as G16; else what the file requires" },
    { call: '--measured "2.4 g at 110 mm, 35 deg"', does: "the heavy spot that a balancing stand tells" },
    { call: "--drills 5,6,8", does: "the drills at hand, in mm, in inch files 1/4,5/16 in" },
    { call: "--through", does: "holes through the plate, as lines of the file" },
    { call: '--floor "2 mm"', does: "least left below a blind hole; else a fifth of the plate" },
    { call: '--radius "40 mm to 90 mm"', does: "only between these radii" },
    { call: '--angle "150 deg to 210 deg"', does: "only between these angles" },
    { call: "--holes N", does: "no more holes than this (8)" },
    { call: "--variant NAME", does: "drill that variant" },
    { call: "--write", does: "write through holes into the file" },
    { call: "--json", does: "one JSON object with stable keys" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      grade: { type: "string" },
      measured: { type: "string" },
      drills: { type: "string" },
      through: { type: "boolean", default: false },
      floor: { type: "string" },
      radius: { type: "string" },
      angle: { type: "string" },
      holes: { type: "string" },
      variant: { type: "string" },
      write: { type: "boolean", default: false },
      json: { type: "boolean", default: false },
    });
    const path = oneFile(positionals);
    if (values.write && !values.through)
      throw new CallError("--write needs --through: an outline file has no blind holes.");
    if (values.write && values.measured !== undefined)
      throw new CallError(
        "--measured is of one part: drill it, but leave the file, which is cut for all, alone.",
      );
    const analysis = await open(path, values.variant, world);
    const request = asked(readDrillRequest(values, speaksInches(analysis), (word) => `--${word}`));
    const result = drillToBalance(analysis, request);
    const written =
      values.through && !request.measured && result.solved
        ? writeHoles(analysis, result.drilling.holes)
        : null;
    const isWritten =
      values.write && written !== null && written.edits.length > 0 && written.problems.length === 0;
    if (isWritten) await world.write(path, applyEdits(analysis.source.text, written.edits), true);
    if (values.json)
      world.out(`${JSON.stringify(resultJson(result, written, isWritten, analysis, path), null, 2)}\n`);
    else tell(result, written, isWritten, analysis, { path, isMeasured: request.measured != null, world });
    if (!result.solved || (written?.problems.length ?? 0) > 0) return EXIT.problems;
    // Judgements of a file that was not changed are about the bar as it was before drilling.
    return written ? exitOf(written.analysis.problems) : EXIT.fine;
  },
};

interface Telling {
  readonly path: string;
  readonly isMeasured: boolean;
  readonly world: World;
}

function tell(
  result: DrillResult,
  written: WrittenHoles | null,
  isWritten: boolean,
  analysis: Analysis,
  { path, isMeasured, world }: Telling,
): void {
  const { terminal } = world;
  const units = speaksInches(analysis) ? "in" : "mm";
  if (!result.solved && !result.before) {
    world.err(`${oneLine(`${path}: not drilled: ${result.message}`)}\n`);
    return;
  }
  world.out(drillText(result, analysis, { units, isMeasured, terminal }));
  if (!written || written.edits.length === 0) return;
  world.out(`\n${written.statements.join("\n")}\n`);
  const refusals = written.problems.length > 0;
  const verdict = refusals
    ? "Not written: the file would have problems that it has not."
    : isWritten
      ? `${path} written.`
      : "Nothing was written; --write puts these lines into the file, for every variant.";
  world.out(`${verdict}\n`);
  for (const problem of [...written.problems, ...written.doubts])
    world.err(
      `${problemLine(problem, written.analysis.source.lines, path, { ...terminal, colour: false })}\n`,
    );
}

function resultJson(
  result: DrillResult,
  written: WrittenHoles | null,
  isWritten: boolean,
  { variant, source, assessment }: Analysis,
  file: string,
) {
  const edits = written?.edits.map((edit) => ({ ...source.lines.position(edit.start), ...edit }));
  return {
    file,
    variant,
    ...drillJson(result, assessment.section?.maxRadiusMm ?? null),
    edits: edits ?? [],
    newProblems: written?.problems.map(({ severity, code, message }) => ({ severity, code, message })) ?? [],
    written: isWritten,
  };
}

import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { drillJson } from "../../../geometry/files/drill-json.ts";
import { applyEdits } from "../../../geometry/language/apply-edits.ts";
import { ANGLE, LENGTH } from "../../../geometry/language/dimension.ts";
import { type DrillResult, drillToBalance } from "../../../geometry/study/drilling/drill.ts";
import { type DrillSize, drillOf } from "../../../geometry/study/drilling/drill-sizes.ts";
import { measuredOfText } from "../../../geometry/study/drilling/measured.ts";
import type { DrillRequest, DrillWindow, HeavySpot } from "../../../geometry/study/drilling/request.ts";
import { speaksInches } from "../../../geometry/study/drilling/shop-steps.ts";
import { type WrittenHoles, writeHoles } from "../../../geometry/study/drilling/write-holes.ts";
import { drillText } from "../drill-text.ts";
import { oneLine, problemLine } from "../problem-line.ts";
import { gradeOfText, rangeOfText, valueOfText, wholeOfText } from "../values-of-words.ts";
import { CallError, EXIT, type World } from "../world.ts";
import { type Command, oneFile, readArguments } from "./command.ts";
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
    const request = requestOf(values, analysis);
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

interface Words {
  readonly grade?: string | undefined;
  readonly measured?: string | undefined;
  readonly drills?: string | undefined;
  readonly through: boolean;
  readonly floor?: string | undefined;
  readonly radius?: string | undefined;
  readonly angle?: string | undefined;
  readonly holes?: string | undefined;
}

function requestOf(words: Words, analysis: Analysis): DrillRequest {
  const inches = speaksInches(analysis);
  return {
    gradeMmPerS: words.grade === undefined ? null : gradeOfText("--grade", words.grade),
    measured: words.measured === undefined ? null : measuredOf(words.measured),
    ...(words.drills === undefined ? {} : { drills: drillsOf(words.drills, inches) }),
    through: words.through,
    floorMm: words.floor === undefined ? null : floorOf(words.floor),
    window: windowOf(words),
    ...(words.holes === undefined ? {} : { mostHoles: wholeOfText("--holes", words.holes, 1, MOST_HOLES) }),
  };
}

function measuredOf(text: string): HeavySpot {
  const read = measuredOfText(text);
  if (!read.ok) throw new CallError(`--measured: ${oneLine(read.message)}`);
  return read.heavySpot;
}

/** A drill may be a fraction of an inch, which is no value of a file. */
const FRACTION = /^(\d+)\s*\/\s*(\d+)(?:\s*in)?$/;

function drillsOf(text: string, inches: boolean): readonly DrillSize[] {
  return text.split(",").map((word) => {
    const fraction = FRACTION.exec(word.trim());
    if (fraction) return drillWithin((25.4 * Number(fraction[1])) / Number(fraction[2]), word, true);
    const isBare = /^[\d.]+$/.test(word.trim());
    const value = valueOfText("--drills", isBare ? `${word} ${inches ? "in" : "mm"}` : word, LENGTH);
    return drillWithin(value, word, /in\s*$/.test(word) || (isBare && inches));
  });
}

/** Far beyond any drill: a mistake of the unit. */
const MOST_DRILL_MM = 100;

function drillWithin(diameterMm: number, word: string, inches: boolean): DrillSize {
  if (!(diameterMm > 0 && diameterMm <= MOST_DRILL_MM))
    throw new CallError(`--drills: "${word.trim()}" is no drill.`);
  return drillOf(diameterMm, inches);
}

function floorOf(text: string): number {
  const floorMm = valueOfText("--floor", text, LENGTH);
  if (floorMm < 0) throw new CallError("--floor is a length of at least 0 mm.");
  return floorMm;
}

function windowOf({ radius, angle }: Words): DrillWindow {
  const degrees = (rad: number): number => (rad * 180) / Math.PI;
  const angles = angle === undefined ? null : rangeOfText("--angle", angle, ANGLE, "10 deg to 60 deg");
  return {
    ...(radius === undefined ? {} : { radiusMm: rangeOfText("--radius", radius, LENGTH, "40 mm to 90 mm") }),
    ...(angles === null ? {} : { angleDeg: [degrees(angles[0]), degrees(angles[1])] as const }),
  };
}

const MOST_HOLES = 24;

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

import { readSource, type Source } from "../../../geometry/analysis/source.ts";
import { aimJson } from "../../../geometry/files/aim-json.ts";
import { applyEdits } from "../../../geometry/language/apply-edits.ts";
import {
  type AimedBar,
  type AimOutcome,
  type AimProgress,
  type AimRequest,
  type EFFORTS,
  searchAim,
  variantBlock,
} from "../../../geometry/study/aim/aim.ts";
import { aimText } from "../aim-text.ts";
import { oneLine } from "../problem-line.ts";
import { CallError, EXIT, type Exit, type World } from "../world.ts";
import { type Command, oneOf, readArguments } from "./command.ts";
import { checkVariant } from "./open.ts";

const EFFORT_NAMES = ["quick", "usual", "thorough"] as const satisfies readonly (keyof typeof EFFORTS)[];

export const aimCommand: Command = {
  name: "aim",
  call: "aim FILE [AIM]",
  does: "The best bar within limits, by moving lets",
  options: [
    { call: "AIM", does: 'as in a file: "most inertia keeping mass <= 1.6 kg by tail, waist";' },
    { call: "", does: "without it the line aim of the file counts" },
    { call: "--variant NAME", does: "change that variant; the bar itself stays as it is" },
    { call: "--effort quick|usual|thorough", does: "how much is tried (default usual)" },
    { call: "--seed N", does: "look elsewhere first; the same number gives the same answer" },
    { call: "--pick N", does: "of a line of bars for two goals, the one to write" },
    { call: "--write", does: "change the lets in the file; without it the change is printed" },
    { call: "--as-variant NAME", does: "add the bar as a variant instead of changing the lets" },
    { call: "--units mm|in", does: "millimetres (default) or inches in the tables" },
    { call: "--json", does: "one JSON object with stable keys, always in mm, kg, s" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      variant: { type: "string" },
      effort: { type: "string", default: "usual" },
      seed: { type: "string", default: "1" },
      pick: { type: "string" },
      write: { type: "boolean", default: false },
      "as-variant": { type: "string" },
      units: { type: "string", default: "mm" },
      json: { type: "boolean", default: false },
    });
    const [path, aim, ...more] = positionals;
    if (path === undefined) throw new CallError("Name the outline file.");
    if (more.length > 0)
      throw new CallError(
        `The aim is one word for the shell: put it in quotation marks ("${[aim, ...more].join(" ")}").`,
      );
    const units = oneOf("--units", values.units, ["mm", "in"]);
    const source = readSource(await world.read(path));
    const request: AimRequest = {
      ...(aim === undefined ? {} : { aim }),
      variant: checkVariant(source, values.variant, path),
      effort: oneOf("--effort", values.effort, EFFORT_NAMES),
      seed: wholeNumber("--seed", values.seed, 0, 2 ** 32 - 1),
    };
    const place = { source, path, world, variantName: freeName(source, values["as-variant"], path) };
    const outcome = await followed(source, request, world);
    if (outcome.status === "refused" && outcome.reason !== "file-has-errors")
      throw new CallError(`${path}: ${oneLine(outcome.message)}`);
    const chosen = pick(outcome, values.pick);
    const edits = chosen === null ? [] : editsFor(place, request, chosen);
    const isWritten = values.write && edits.length > 0;
    if (values.write) refuseToWrite(outcome, chosen, place.variantName);
    if (isWritten) await world.write(path, applyEdits(source.text, edits), true);
    if (values.json) {
      const told = { file: path, variant: request.variant ?? null, ...aimJson(outcome), written: isWritten };
      world.out(`${JSON.stringify(told, null, 2)}\n`);
    } else tell(outcome, { ...place, request, units, chosen, edits, isWritten });
    return exitOf(outcome, chosen, isWritten && place.variantName === null);
  },
};

function wholeNumber(option: string, text: string, least: number, most: number): number {
  const value = Number(text);
  if (text.trim() !== "" && Number.isInteger(value) && value >= least && value <= most) return value;
  throw new CallError(`${option} is a whole number from ${least} to ${most}, not "${text}".`);
}

/** A name for the new variant that no other has; null where none is wanted. */
function freeName({ variants }: Source, name: string | undefined, path: string): string | null {
  if (name === undefined) return null;
  if (name.trim() === "" || /["\r\n]/.test(name))
    throw new CallError("--as-variant takes a name on one line, without quotation marks in it.");
  if (variants.includes(name)) throw new CallError(`${path} has a variant "${name}" already.`);
  return name;
}

/** So many milliseconds of searching between looks at the terminal. */
const MS_BETWEEN_LOOKS = 50;

/** The search to its end, or to where somebody stops it; how far it is is told on the way. */
async function followed(source: Source, request: AimRequest, world: World): Promise<AimOutcome> {
  const steps = searchAim(source, request);
  let next = steps.next();
  let looked = performance.now();
  while (next.done !== true) {
    let told: "stop" | undefined;
    if (performance.now() - looked > MS_BETWEEN_LOOKS) {
      world.progress(progressText(next.value));
      told = (await world.breathe()) ? "stop" : undefined;
      looked = performance.now();
    }
    next = steps.next(told);
  }
  world.progress("");
  return next.value;
}

function progressText({ evaluations, most, best }: AimProgress): string {
  const [first] = best();
  const isKept = first === undefined || first.isFeasible ? "" : ", limits not kept yet";
  return `${evaluations} of at most ${most} bars${isKept} (Ctrl-C stops and keeps the best so far)`;
}

/** Of a line the one asked for; of a single bar that one; null where none was found or none chosen. */
function pick(outcome: AimOutcome, asked: string | undefined): AimedBar | null {
  if (outcome.status !== "found") return null;
  const { bars } = outcome;
  if (asked !== undefined) return bars[wholeNumber("--pick", asked, 1, bars.length) - 1] ?? null;
  return bars.length === 1 ? (bars[0] ?? null) : null;
}

interface Place {
  readonly source: Source;
  readonly path: string;
  readonly world: World;
  readonly variantName: string | null;
}

function editsFor({ source, variantName }: Place, { variant = null }: AimRequest, { lets, edits }: AimedBar) {
  return variantName === null ? edits : [variantBlock(source, variant, lets, variantName)];
}

function refuseToWrite(outcome: AimOutcome, chosen: AimedBar | null, variantName: string | null): void {
  if (outcome.status === "found" && chosen === null)
    throw new CallError(
      `Two goals give a line of ${outcome.bars.length} bars: say which to write, --pick N.`,
    );
  const [harm] = chosen?.elsewhere ?? [];
  if (harm && variantName === null)
    throw new CallError(
      oneLine(
        `Another variant would get a new problem (${harm.message}); --as-variant NAME leaves the others as they are.`,
      ),
    );
}

interface Telling extends Place {
  readonly request: AimRequest;
  readonly units: "mm" | "in";
  readonly chosen: AimedBar | null;
  readonly edits: readonly { readonly newText: string }[];
  readonly isWritten: boolean;
}

function tell(outcome: AimOutcome, telling: Telling): void {
  const { world, path, source, units, chosen } = telling;
  if (outcome.status === "refused") {
    world.err(`${oneLine(`${path}: ${outcome.message}`)}\n`);
    return;
  }
  const { evaluations, isStopped } = outcome;
  const title = `${titleOf(source, telling.request)}`;
  const options = { title, evaluations, isStopped, units, terminal: world.terminal };
  if (outcome.status === "infeasible") {
    if (outcome.nearest) world.out(aimText([outcome.nearest], options));
    world.err(`${oneLine(`${path}: ${outcome.message}`)}\n`);
    return;
  }
  world.out(aimText(outcome.bars, options));
  if (chosen !== null || telling.isWritten) world.out(`\n${closing(telling)}\n`);
  else world.out("\n--pick N with --write or --as-variant NAME writes one of them.\n");
}

function titleOf({ tree }: Source, { aim, variant = null }: AimRequest): string {
  const own = tree.statements.find(({ kind }) => kind === "aim");
  const text = aim === undefined && own ? tree.text.slice(own.keyword.end, own.range.end) : (aim ?? "");
  return `${variant === null ? "" : `"${variant}": `}aim ${text.replace(/\s+/g, " ").trim()}`;
}

function closing({ chosen, edits, isWritten, path, variantName }: Telling): string {
  if (edits.length === 0) return "The bar is the best of these as it is.";
  if (isWritten) return `${path} written.`;
  const text = variantName === null ? "" : `${edits.map(({ newText }) => newText.trim()).join("\n")}\n\n`;
  const [harm] = chosen?.elsewhere ?? [];
  if (harm && variantName === null)
    return oneLine(
      `Nothing was written: another variant would get a new problem (${harm.message}). --as-variant NAME adds the bar as a variant.`,
    );
  return `${text}Nothing was written; --write changes the file${variantName === null ? ", --as-variant NAME adds a variant" : ""}.`;
}

/** 1 where the aim was not reached, or the changed file has an error. */
function exitOf(outcome: AimOutcome, chosen: AimedBar | null, isChanged: boolean): Exit {
  if (outcome.status !== "found") return EXIT.problems;
  const problems = isChanged ? (chosen?.analysis.problems ?? []) : [];
  return problems.some(({ severity }) => severity === "error") ? EXIT.problems : EXIT.fine;
}

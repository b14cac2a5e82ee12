import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { number, presentMeasure } from "../../../geometry/figures/present.ts";
import { applyEdits } from "../../../geometry/language/apply-edits.ts";
import {
  type BalanceBy,
  type BalanceState,
  type Balancing,
  balanceBy,
} from "../../../geometry/study/balance-by.ts";
import { oneLine } from "../problem-line.ts";
import { CallError, EXIT, type World } from "../world.ts";
import { type Command, oneFile, readArguments } from "./command.ts";
import { exitOf, open, tellErrors } from "./open.ts";

export const balanceCommand: Command = {
  name: "balance",
  call: "balance FILE [--by NAME[,NAME]]",
  does: "Move one or two lets so that the bar balances",
  options: [
    {
      call: "--by NAME[,NAME]",
      does: "the lets that may be moved, within their bounds; else those of balance by",
    },
    { call: "--variant NAME", does: "balance that variant; the bar itself stays as it is" },
    { call: "--write", does: "change the file; without it the change is printed" },
    { call: "--json", does: "one JSON object with stable keys" },
  ],
  async run(args, world) {
    const { values, positionals } = readArguments(args, {
      by: { type: "string" },
      variant: { type: "string" },
      write: { type: "boolean", default: false },
      json: { type: "boolean", default: false },
    });
    const path = oneFile(positionals);
    const analysis = await open(path, values.variant, world);
    const names =
      values.by === undefined ? namesInFile(analysis, path) : values.by.split(",").map((name) => name.trim());
    const result = balanceBy(analysis.source, { names, variant: analysis.variant });
    if (!result.solved && (result.reason === "wrong-count" || result.reason === "no-such-let"))
      throw new CallError(oneLine(result.message));
    const written = values.write && result.solved && result.edits.length > 0;
    if (written) await world.write(path, applyEdits(analysis.source.text, result.edits), true);
    if (values.json) {
      const told = resultJson(result, analysis, path, written);
      world.out(`${JSON.stringify(told, null, 2)}\n`);
    } else tell(result, analysis, path, written, world);
    return result.solved ? exitOf(result.analysis.problems) : EXIT.problems;
  },
};

/** Those of the file's own `balance by`. */
function namesInFile({ design }: Analysis, path: string): readonly string[] {
  if (design.balance) return design.balance.names;
  throw new CallError(
    `${path} has no valid line 'balance by': say which lets may be moved, --by NAME or --by NAME,NAME.`,
  );
}

function tell(result: BalanceBy, { source }: Analysis, path: string, written: boolean, world: World): void {
  const lines: string[] = [];
  if (result.solved) {
    const { before, after, edits } = result;
    lines.push(
      edits.length === 0
        ? `${path}: balanced already: ${stateText(before)}.`
        : `${path}: from ${stateText(before)} to ${stateText(after)}.`,
      ...moveLines(result, source, path),
    );
    if (edits.length > 0)
      lines.push(written ? `${path} written.` : "Nothing was written; --write changes the file.");
    world.out(`${lines.map(oneLine).join("\n")}\n`);
    tellErrors(result.analysis.problems, result.analysis.source, path, world);
    return;
  }
  world.err(`${oneLine(`${path}: not balanced: ${result.message}`)}\n`);
}

/** Where each change stands and what it is. */
function moveLines({ moves }: Balancing, { lines }: Analysis["source"], path: string): readonly string[] {
  return moves.flatMap(({ name, from, to, edit }) => {
    if (edit === null) return [];
    const { line, column } = lines.position(edit.start);
    return [`${path}:${line}:${column} ${name} = ${from} → ${to}`];
  });
}

/** Stable keys; what is not known is `null`. For a bar that was not balanced `after` is the nearest that was reached. */
function resultJson(result: BalanceBy, { source, variant }: Analysis, file: string, written: boolean) {
  const found = result.solved ? result : result.nearest;
  const moves = found?.moves.map(({ name, from, to, edit }) => ({
    name,
    from,
    to,
    edit: edit && { ...source.lines.position(edit.start), ...edit },
  }));
  return {
    file,
    variant,
    solved: result.solved,
    reason: result.solved ? null : result.reason,
    message: result.solved ? null : result.message,
    before: result.before,
    after: found?.after ?? null,
    lets: moves ?? [],
    written,
  };
}

function stateText({ balanceGrade, imbalanceGMm, eccentricityMm }: BalanceState): string {
  const grade = balanceGrade === null ? [] : [`G${number(balanceGrade, 3)}`];
  const { text, unit } = presentMeasure("imbalance", imbalanceGMm, "mm");
  const imbalance = imbalanceGMm === null ? [] : [`${text} ${unit}`];
  return [...grade, ...imbalance, `centroid ${number(eccentricityMm, 3)} mm off the axis`].join(", ");
}

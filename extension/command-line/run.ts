import { aimCommand } from "./commands/aim.ts";
import { balanceCommand } from "./commands/balance.ts";
import { checkCommand } from "./commands/check.ts";
import type { Command } from "./commands/command.ts";
import { compareCommand } from "./commands/compare.ts";
import { drillCommand } from "./commands/drill.ts";
import { exportCommand } from "./commands/export.ts";
import { formatCommand } from "./commands/format.ts";
import { reportCommand } from "./commands/report.ts";
import { sheetCommand } from "./commands/sheet.ts";
import { studyCommand } from "./commands/study.ts";
import { toleranceCommand } from "./commands/tolerance.ts";
import { wearCommand } from "./commands/wear.ts";
import { VERSION } from "./version.ts";
import { CallError, EXIT, type Exit, type World } from "./world.ts";

const COMMANDS: readonly Command[] = [
  reportCommand,
  checkCommand,
  exportCommand,
  compareCommand,
  studyCommand,
  balanceCommand,
  aimCommand,
  drillCommand,
  toleranceCommand,
  wearCommand,
  sheetCommand,
  formatCommand,
];

/**
 * Run one call of the command line.
 * @param argv the words after the program's name
 * @returns the exit status; problems of files are told, only bugs throw
 */
export async function run(argv: readonly string[], world: World): Promise<Exit> {
  const [word, ...rest] = argv;
  if (word === "--version") return tell(world, `barwright ${VERSION}\n`);
  if (word === "--help" || word === "-h" || word === "help") return tell(world, usage());
  const command = COMMANDS.find(({ name }) => name === word);
  if (!command)
    return refuse(world, word === undefined ? "Say what to do." : `There is no command "${word}".`);
  if (rest.includes("--help") || rest.includes("-h")) return tell(world, commandUsage(command));
  try {
    return await command.run(rest, world);
  } catch (error) {
    if (!(error instanceof CallError)) throw error;
    world.err(`barwright: ${error.message}\n`);
    return EXIT.wrongCall;
  }
}

function tell(world: World, text: string): Exit {
  world.out(text);
  return EXIT.fine;
}

function refuse(world: World, why: string): Exit {
  world.err(`barwright: ${why}\n\n${usage()}`);
  return EXIT.wrongCall;
}

function usage(): string {
  const width = Math.max(...COMMANDS.map(({ call }) => call.length));
  const lines = COMMANDS.map(({ call, does }) => `  barwright ${call.padEnd(width)}  ${does}`);
  return [
    "Barwright: from a bar's outline file to its numbers and a file to cut.",
    "",
    ...lines,
    "",
    "barwright COMMAND --help tells more. Exit status: 0 fine; 1 the file has errors",
    "or a requirement fails; 2 the call itself is wrong.",
    "",
  ].join("\n");
}

function commandUsage({ call, does, options }: Command): string {
  const width = Math.max(0, ...options.map(({ call: option }) => option.length));
  const lines = options.map(({ call: option, does: what }) => `  ${option.padEnd(width)}  ${what}`);
  return [`barwright ${call}`, `${does}.`, "", ...lines, ""].join("\n");
}

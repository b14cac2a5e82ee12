import { readdir, stat } from "node:fs/promises";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { systemCode } from "./folder-error.ts";
import type { Playground } from "./server.ts";
import { startPlayground } from "./server.ts";

/** What the command needs from the outside. */
export interface PlaygroundWorld {
  /** Where the product's `package.json`, `dist/` and `samples/` lie. */
  readonly productRoot: string;
  print(text: string): void;
  printError(text: string): void;
  openBrowser(address: string): void;
}

/** A running playground, or why there is none: 0 nothing to do, 2 the call is wrong. */
export type Outcome =
  | { readonly playground: Playground }
  | { readonly playground: null; readonly exitCode: 0 | 2 };

interface Call {
  readonly folder: string | null;
  readonly port: number;
  readonly opensBrowser: boolean;
  readonly wantsHelp: boolean;
}

const HELP = `Barwright playground: the editor in your browser, on this machine only.

  npm start                            edit the samples
  npm start -- FOLDER                  edit a folder of your own
  npm start -- FOLDER --port 4000      at a fixed port (any free one by default)
  npm start -- FOLDER --no-open        print the address, open no browser

The files of the folder are read and written in place. Ctrl+C stops.
`;

/** A call that cannot be followed; the message says why in plain words. */
class CallError extends Error {}

/**
 * `npm start [-- FOLDER] [--port N] [--no-open]`: starts the playground, says where it is and opens the browser.
 * What is wrong with the call is printed; anything else is thrown.
 */
export async function run(args: readonly string[], world: PlaygroundWorld): Promise<Outcome> {
  try {
    const call = readCall(args);
    if (call.wantsHelp) {
      world.print(HELP);
      return { playground: null, exitCode: 0 };
    }
    return { playground: await start(call, world) };
  } catch (error) {
    if (!(error instanceof CallError)) throw error;
    world.printError(`${error.message}\n`);
    return { playground: null, exitCode: 2 };
  }
}

async function start(call: Call, world: PlaygroundWorld): Promise<Playground> {
  const folder = call.folder === null ? join(world.productRoot, "samples") : resolve(call.folder);
  await requireFolder(folder, call.folder ?? folder);
  const open = await firstOutline(folder);
  const playground = await serve(folder, open, call.port, world.productRoot);
  world.print(welcome(folder, playground.address));
  if (call.opensBrowser) world.openBrowser(playground.address);
  return playground;
}

function readCall(args: readonly string[]): Call {
  const { values, positionals } = parseCall(args);
  if (positionals.length > 1) throw new CallError("Name one folder at most. See npm start -- --help.");
  return {
    folder: positionals[0] ?? null,
    port: readPort(values.port),
    opensBrowser: !values["no-open"],
    wantsHelp: values.help,
  };
}

function parseCall(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        port: { type: "string", default: "0" },
        "no-open": { type: "boolean", default: false },
        help: { type: "boolean", short: "h", default: false },
      },
    });
  } catch (error) {
    const reason = error instanceof Error ? (error.message.split(". ")[0] ?? "") : "";
    throw new CallError(`${reason.replace(/\.$/, "")}. See npm start -- --help.`);
  }
}

function readPort(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65535) {
    throw new CallError(`--port takes a whole number from 0 (any free port) to 65535, not "${text}".`);
  }
  return port;
}

async function requireFolder(folder: string, asGiven: string): Promise<void> {
  const found = await stat(folder).catch(() => null);
  if (found === null) throw new CallError(`There is no folder "${asGiven}".`);
  if (!found.isDirectory()) throw new CallError(`"${asGiven}" is not a folder. Name the folder it lies in.`);
}

/** The first outline file of the folder by name, to be opened at the start; null where there is none. */
async function firstOutline(folder: string): Promise<string | null> {
  const names = (await readdir(folder)).filter((name) => name.endsWith(".bar")).sort();
  return names[0] === undefined ? null : `/${names[0]}`;
}

async function serve(
  folder: string,
  open: string | null,
  port: number,
  productRoot: string,
): Promise<Playground> {
  try {
    return await startPlayground({ folder, open, port, productRoot });
  } catch (error) {
    const advice = "Choose another with --port N, or leave it out to take a free one.";
    if (systemCode(error) === "EADDRINUSE") throw new CallError(`Port ${port} is in use already. ${advice}`);
    if (systemCode(error) === "EACCES") throw new CallError(`Port ${port} may not be used. ${advice}`);
    throw error;
  }
}

function welcome(folder: string, address: string): string {
  return `Barwright playground, on this machine only:

  ${address}

Open that address in a browser. Choose an outline (.bar) on the left and edit it; saving writes to
  ${folder}
The address works until the playground is stopped. Ctrl+C stops it.
`;
}

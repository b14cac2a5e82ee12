import { mkdir, rm, writeFile } from "node:fs/promises";
import { createServer } from "node:net";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { browserCommand } from "../../extension/playground/open-browser.ts";
import type { Outcome } from "../../extension/playground/run.ts";
import { run } from "../../extension/playground/run.ts";
import { send, temporaryFolder } from "./served.ts";

let product: string;
let folder: string;
let printed: string;
let complained: string;
let opened: string[];
let running: Outcome | null;

beforeEach(async () => {
  product = await temporaryFolder();
  folder = join(product, "samples");
  await mkdir(join(product, "dist/playground-files"), { recursive: true });
  await mkdir(folder);
  await writeFile(join(product, "package.json"), "{}");
  await writeFile(join(folder, "second.bar"), "");
  await writeFile(join(folder, "first.bar"), "");
  [printed, complained, opened, running] = ["", "", [], null];
});

afterEach(async () => {
  await running?.playground?.close();
  await rm(product, { recursive: true });
});

async function start(...args: string[]): Promise<Outcome> {
  running = await run(args, {
    productRoot: product,
    print: (text) => {
      printed += text;
    },
    printError: (text) => {
      complained += text;
    },
    openBrowser: (address) => opened.push(address),
  });
  return running;
}

/** Starts with what is wrong with the call, and gives what it complains of. */
async function complaint(...args: string[]): Promise<string> {
  expect(await start(...args)).toEqual({ playground: null, exitCode: 2 });
  expect(printed).toBe("");
  return complained;
}

describe("npm start", () => {
  it("serves the samples, prints the address and opens it", async () => {
    const { playground } = await start();
    expect(printed).toContain(`\n  ${playground?.address}\n`);
    expect(printed).toContain(folder);
    expect(printed).toContain("Ctrl+C");
    expect(opened).toEqual([playground?.address]);
  });

  it("has the first outline opened in the page", async () => {
    const { playground } = await start("--no-open");
    const page = await send(
      playground?.port ?? 0,
      "GET",
      new URL(playground?.address ?? "").search.replace("?", "/?"),
    );
    expect(page.text).toContain('{"folderName":"samples","open":"/first.bar","settings":{}}');
    expect(opened).toEqual([]);
  });

  it("serves a folder of the user's own, also one without outlines", async () => {
    await mkdir(join(product, "own & <b>"));
    const { playground } = await start(join(product, "own & <b>"), "--no-open", "--port", "0");
    const page = await send(
      playground?.port ?? 0,
      "GET",
      new URL(playground?.address ?? "").search.replace("?", "/?"),
    );
    expect(page.text).toContain('{"folderName":"own & \\u003cb>","open":null,"settings":{}}');
  });

  it("helps", async () => {
    expect(await start("--help")).toEqual({ playground: null, exitCode: 0 });
    expect(printed).toContain("--port");
  });

  it("says what is wrong with a call, and exits with 2", async () => {
    const missing = join(product, "none");
    expect(await complaint(missing)).toBe(`There is no folder "${missing}".\n`);
  });

  it.each([
    [["--port", "none"], '--port takes a whole number from 0 (any free port) to 65535, not "none".'],
    [["--port", "65536"], '--port takes a whole number from 0 (any free port) to 65535, not "65536".'],
    [["--port=-1"], '--port takes a whole number from 0 (any free port) to 65535, not "-1".'],
    [["--colour"], "Unknown option '--colour'. See npm start -- --help."],
    [["a", "b"], "Name one folder at most. See npm start -- --help."],
    [[resolve(import.meta.filename)], "is not a folder. Name the folder it lies in."],
  ])("says what is wrong with %j", async (args, message) => {
    expect(await complaint(...args)).toContain(message);
  });

  it("says in plain words that a port is in use, and starts again when it is free", async () => {
    const other = createServer();
    const port = await new Promise<number>((resolvePort) => {
      other.listen(0, "127.0.0.1", () => {
        const address = other.address();
        resolvePort(typeof address === "object" && address !== null ? address.port : 0);
      });
    });
    expect(await complaint("--port", String(port))).toBe(
      `Port ${port} is in use already. Choose another with --port N, or leave it out to take a free one.\n`,
    );
    await new Promise((closed) => other.close(closed));
    const first = await start("--port", String(port), "--no-open");
    expect(first.playground?.port).toBe(port);
    await first.playground?.close();
    const again = await start("--port", String(port), "--no-open");
    expect(again.playground?.port).toBe(port);
    expect(again.playground?.address).not.toBe(first.playground?.address);
  });
});

describe("the browser", () => {
  it("is opened by the system's own command, and not without a screen", () => {
    expect(browserCommand("darwin", {})).toEqual(["open"]);
    expect(browserCommand("win32", {})).toEqual(["cmd", "/c", "start", ""]);
    expect(browserCommand("linux", { DISPLAY: ":0" })).toEqual(["xdg-open"]);
    expect(browserCommand("linux", { WAYLAND_DISPLAY: "wayland-0" })).toEqual(["xdg-open"]);
    expect(browserCommand("linux", {})).toBeNull();
  });
});

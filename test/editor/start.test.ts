import type { ChildProcess } from "node:child_process";
import { spawn } from "node:child_process";
import { once } from "node:events";
import { join, resolve } from "node:path";
import process from "node:process";
import { listFiles, PackageManager } from "@vscode/vsce";
import { afterEach, describe, expect, it } from "vitest";
import { packagedFiles } from "../../extension/playground/extension-files.ts";

const ROOT = resolve(import.meta.dirname, "../..");

describe("the built playground", () => {
  let program: ChildProcess | null = null;

  afterEach(() => {
    program?.kill("SIGKILL");
  });

  it("prints an address that answers, and stops cleanly on Ctrl+C", async () => {
    const started = spawn(
      process.execPath,
      [join(ROOT, "dist/playground.js"), join(ROOT, "samples"), "--no-open"],
      {
        stdio: ["ignore", "pipe", "inherit"],
      },
    );
    program = started;
    let printed = "";
    started.stdout.setEncoding("utf8").on("data", (text: string) => {
      printed += text;
    });
    await expect.poll(() => printed, { timeout: 10_000 }).toContain("Ctrl+C stops it.\n");
    const address = /http:\/\/127\.0\.0\.1:\d+\/\?key=\S+/.exec(printed)?.[0] ?? "";
    // Kept open, as the editor keeps its own: a listener must not hold up the stop.
    const page = await fetch(address);
    const cookie = page.headers.get("set-cookie")?.split(";")[0] ?? "";
    const listener = await fetch(new URL("/files/changes", address), { headers: { cookie } });
    expect([page.status, listener.status]).toEqual([200, 200]);
    const ended = once(started, "exit");
    started.kill("SIGINT");
    expect(await ended).toEqual([0, null]);
    expect(printed).toMatch(/Stopped\.\n$/);
  });
});

describe("the extension in the playground", () => {
  it("is made of the files of the package", async () => {
    const inPackage = await listFiles({ cwd: ROOT, packageManager: PackageManager.None });
    const isServed = await packagedFiles(ROOT);
    expect(inPackage).toContain("dist/browser.js");
    expect(inPackage.filter((file) => !isServed(file.split("/")))).toEqual([]);
    const others = [
      "package-lock.json",
      "dist/barwright.js",
      "dist/playground.js",
      "scripts/build.ts",
      "tsconfig.json",
    ];
    expect(others.filter((file) => inPackage.includes(file) || isServed(file.split("/")))).toEqual([]);
  });
});

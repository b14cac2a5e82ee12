import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { nodeWorld } from "../../extension/command-line/node-world.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "barwright-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe("files of the real world", () => {
  it("are written whole, leaving no temporary file", async () => {
    const path = join(folder, "a.txt");
    await nodeWorld().write(path, "one", false);
    await nodeWorld().write(path, "two", true);
    expect(readFileSync(path, "utf8")).toBe("two");
    expect(readdirSync(folder)).toEqual(["a.txt"]);
  });

  it("are not overwritten unless told to, however many write at once", async () => {
    const path = join(folder, "a.txt");
    const writers = Array.from({ length: 8 }, (_, index) => nodeWorld().write(path, `${index}`, false));
    const outcomes = await Promise.allSettled(writers);
    expect(outcomes.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    expect(readdirSync(folder)).toEqual(["a.txt"]);
  });

  it("are refused in plain words when they cannot be read or written", async () => {
    await expect(nodeWorld().read(join(folder, "none.bar"))).rejects.toThrow("there is no such file");
    await expect(nodeWorld().read(folder)).rejects.toThrow("it is a folder");
    await expect(nodeWorld().write(join(folder, "no", "a.txt"), "x", false)).rejects.toThrow(
      "no such file or folder",
    );
  });

  it("are read as they stand, BOM and line ends kept", async () => {
    const path = join(folder, "a.bar");
    writeFileSync(path, '\ufeffbar "X"\r\n');
    expect(await nodeWorld().read(path)).toBe('\ufeffbar "X"\r\n');
  });
});

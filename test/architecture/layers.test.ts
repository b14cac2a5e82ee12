/**
 * The direction of the code: text → tree → design → outline → figures → faces. Every import is checked against it,
 * so that a short cut is a failing test and not a habit.
 */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");

/** What each folder may import from, beside itself. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  "geometry/materials": [],
  "geometry/language": ["geometry/materials"],
  "geometry/outline": ["geometry/language"],
  "geometry/fight": ["geometry/language", "geometry/outline"],
  "geometry/figures": ["geometry/language", "geometry/outline", "geometry/bite", "geometry/fight"],
  "geometry/bite": ["geometry/language", "geometry/outline"],
  "geometry/analysis": [
    "geometry/language",
    "geometry/outline",
    "geometry/figures",
    "geometry/bite",
    "geometry/fight",
  ],
  "geometry/study": ["geometry/language", "geometry/outline", "geometry/figures", "geometry/analysis"],
  "geometry/files": [
    "geometry/language",
    "geometry/outline",
    "geometry/figures",
    "geometry/bite",
    "geometry/analysis",
    "geometry/study",
  ],
  "geometry/editing": [
    "geometry/materials",
    "geometry/language",
    "geometry/outline",
    "geometry/figures",
    "geometry/bite",
    "geometry/analysis",
    "geometry/study",
    "geometry/files",
  ],
};

/** Packages the pure core may use: pure themselves, no host behind them. */
const CORE_PACKAGES = ["mathjs", "clipper-lib", "flatbush", "quadprog"];

interface Import {
  readonly file: string;
  readonly target: string;
}

function sourceFiles(folder: string): string[] {
  const entries = readdirSync(join(ROOT, folder), { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)));
}

function importsOf(file: string): Import[] {
  const text = readFileSync(join(ROOT, file), "utf8");
  const found = text.matchAll(/(?:from|import)\s*\(?\s*["']([^"'\s]+)["']/g);
  return [...found].map((match) => ({ file, target: match[1] ?? "" }));
}

function folderOf(file: string): string {
  return file.split("/").slice(0, 2).join("/");
}

/** The page's own code in the host. */
function isHostsStranger(file: string, into: string): boolean {
  return file.startsWith("extension/host/") && into.startsWith("extension/studies/page/");
}

const coreImports = sourceFiles("geometry").flatMap(importsOf);

describe("the layers", () => {
  it("are looked at: there are files and imports in the core", () => {
    expect(coreImports.length).toBeGreaterThan(20);
  });

  it("keep the core pure: no host, no Node, only the packages it is known to need", () => {
    const foreign = coreImports.filter(({ target }) => !target.startsWith("."));
    const unwanted = foreign.filter(({ target }) => !CORE_PACKAGES.includes(target.split("/")[0] ?? ""));
    expect(unwanted).toEqual([]);
  });

  it("run in one direction inside the core", () => {
    const wrong = coreImports
      .filter(({ target }) => target.startsWith("."))
      .map(({ file, target }) => ({ file, into: relative(ROOT, resolve(ROOT, dirname(file), target)) }))
      .filter(({ file, into }) => {
        const [from, to] = [folderOf(file), folderOf(into)];
        return from !== to && !(MAY_IMPORT[from] ?? []).includes(to);
      });
    expect(wrong).toEqual([]);
  });

  it("keep the host's module out of everything but the host", () => {
    const users = sourceFiles("extension")
      .flatMap(importsOf)
      .filter(({ target }) => target === "vscode")
      .map(({ file }) => file.split("/").slice(0, 2).join("/"));
    const strangers = users.filter((folder) => !["extension/host", "extension/playground"].includes(folder));
    expect(strangers).toEqual([]);
  });

  it("leave the work of studies to their worker: the host and the page bundle none of it", () => {
    const studies = sourceFiles("extension").filter((file) =>
      /^extension\/(host|studies\/page)\//.test(file),
    );
    const wrong = studies.flatMap((file) => {
      const text = readFileSync(join(ROOT, file), "utf8");
      const imports = text.matchAll(/import (?!type\b)[^;]*?from "([^"]+)"/g);
      return [...imports]
        .map((match) => relative(ROOT, resolve(ROOT, dirname(file), match[1] ?? "")))
        .filter((into) => into.startsWith("extension/studies/worker/") || isHostsStranger(file, into))
        .filter((into) => into !== "extension/studies/worker/job.ts")
        .map((into) => ({ file, into }));
    });
    expect(studies.length).toBeGreaterThan(10);
    expect(wrong).toEqual([]);
  });

  it("give every core file no global of a host", () => {
    const hostGlobals =
      /\b(process|document|window|globalThis|require|console|setTimeout|localStorage)\s*[.([]/;
    const users = sourceFiles("geometry").filter((file) => {
      const code = readFileSync(join(ROOT, file), "utf8").replace(
        /\/\*[\s\S]*?\*\/|\/\/.*|"[^"\n]*"|`[^`]*`/g,
        "",
      );
      return hostGlobals.test(code);
    });
    expect(users).toEqual([]);
  });
});

/**
 * Modules that a bundle carries in a lighter form. What they do stays the same; `test/scripts/lighter-modules.test.ts`
 * runs both forms against each other.
 */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Plugin } from "esbuild";
import { transform } from "esbuild";
import { unitFactors } from "../geometry/language/unit-factors.ts";

export const LIGHTER_MODULES: Plugin = {
  name: "lighter-modules",
  setup: ({ onLoad }) => {
    onLoad({ filter: /[\\/]geometry[\\/]language[\\/]unit-factors\.ts$/ }, () => ({
      contents: finishedFactors(),
    }));
    onLoad({ filter: /[\\/]clipper-lib[\\/]clipper\.js$/ }, async ({ path }) => ({
      contents: await withShortNames(await withoutUnused(await readFile(path, "utf8"))),
    }));
  },
};

/**
 * The editor's module, taken up once. Else each file that imports it gets a copy of its hundreds of names, made while
 * the extension is loaded.
 */
export const EDITOR_ONCE: Plugin = {
  name: "editor-once",
  setup: ({ onResolve, onLoad }) => {
    onResolve({ filter: /^vscode$/ }, ({ kind }) =>
      kind === "import-statement"
        ? { path: "vscode", namespace: "editor-once" }
        : { path: "vscode", external: true },
    );
    onLoad({ filter: /./, namespace: "editor-once" }, async () => ({ contents: await editorModule() }));
  },
};

/** Its names, from its types: those that nobody uses are left out of the bundle, and so are those of mere types. */
async function editorModule(): Promise<string> {
  const types = await readFile(createRequire(import.meta.url).resolve("@types/vscode/index.d.ts"), "utf8");
  const declared = types.matchAll(/^\texport (?:abstract )?(?:class|namespace|enum|const|function) (\w+)/gm);
  const names = [...new Set(Array.from(declared, ([, name = ""]) => name))];
  return [
    'const editor = require("vscode");',
    ...names.map((name) => `export const ${name} = /* @__PURE__ */ (() => editor.${name})();`),
  ].join("\n");
}

/** The numbers that mathjs gives do not change from start to start: worked out here, once. */
function finishedFactors(): string {
  return `export const unitFactors = () => (${JSON.stringify(unitFactors())});`;
}

/** What `geometry/outline/check/region.ts` and its types name, and what the library asks of its host. */
const NAMED_OUTSIDE: readonly string[] = [
  ...["Clipper", "AddPath", "Execute", "Area", "X", "Y", "Error"],
  ...["ClipType", "ctIntersection", "ctUnion", "ctDifference", "ctXor"],
  ...["PolyType", "ptSubject", "ptClip", "PolyFillType", "pftEvenOdd", "pftNonZero"],
  ...["exports", "document", "navigator", "userAgent", "alert"],
];

const BUILT_IN = [
  ...[Object, Array, Math, String, Number, Error],
  ...[Object, Function, Array, String, Number, Boolean, Error, RegExp].map(({ prototype }) => prototype),
].flatMap((owner) => Object.getOwnPropertyNames(owner));

/**
 * A definition in the library, as esbuild prints it: `  A.b.c = function(…) {…};`, `  function c(…) {…}` or `  A.b.c = d;`.
 */
const DEFINITION =
  /^ {2}(?:([\w.]+) = function\w*\(.*\) \{\n(?: {4}.*\n|\n)* {2}\};|function (\w+)\(.*\) \{\n(?: {4}.*\n|\n)* {2}\}|(\w+\.[\w.]+) = .*;)\n/gm;
const HEAD = /^ {2}(?:function )?[\w.]+/;

/** Of the names that are built in, those that are asked for on any object without being named. */
const ON_ANY_OBJECT = ["prototype", ...Object.getOwnPropertyNames(Object.prototype)];

/** Whole numbers of random bits, tried for primes: made for a second argument that the clipper never gives. */
const RANDOM = "fromNumber";

/** What the clipper offers beside clipping, offsets and so on, is left out: the definitions that nothing leads to. */
async function withoutUnused(source: string): Promise<string> {
  // Without comments, and laid out alike.
  const { code } = await transform(source);
  const used = namesLedTo(code);
  return code.replace(DEFINITION, (text, ...groups) =>
    pathOf(groups).every((name) => used.has(name)) ? text : "",
  );
}

/** The names that stand in what is run in any case, in what others name, and in every definition that those lead to. */
function namesLedTo(code: string): ReadonlySet<string> {
  const used = new Set([...NAMED_OUTSIDE, ...ON_ANY_OBJECT, ...namesIn(code.replace(DEFINITION, ""))]);
  let waiting = [...code.matchAll(DEFINITION)].map(([text, ...groups]) => ({ text, path: pathOf(groups) }));
  for (;;) {
    const reached = waiting.filter(({ path }) => path.every((name) => used.has(name)));
    if (reached.length === 0) return used;
    for (const { text } of reached) for (const name of namesIn(text.replace(HEAD, ""))) used.add(name);
    waiting = waiting.filter((definition) => !reached.includes(definition));
  }
}

/** `A.b.c` in parts: all of them have to be used for the definition to be. */
function pathOf([assigned, declared, aliased]: readonly unknown[]): readonly string[] {
  return String(assigned ?? declared ?? aliased).split(".");
}

/** `Math.pow` is none that a whole number is asked for. */
function namesIn(code: string): readonly string[] {
  const names = code.match(/(?<!\w|\bMath\.)\w+/g) ?? [];
  return names.filter((name) => name !== RANDOM);
}

/** The clipper's own long names fill a quarter of it. It never reaches a property by a name in a text. */
async function withShortNames(source: string): Promise<string> {
  const names = new Set([...source.matchAll(/\b\w+\.(\w+)\s*=(?!=)/g)].map(([, name = ""]) => name));
  for (const name of [...NAMED_OUTSIDE, ...BUILT_IN]) names.delete(name);
  const { code } = await transform(source, { mangleProps: new RegExp(`^(?:${[...names].join("|")})$`) });
  return code;
}

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isHostMessage, isPageMessage, isSavedState } from "../../extension/preview/messages.ts";
import type { HostMessage, PageMessage, SavedState } from "../../extension/preview/protocol.ts";
import { drawingOfView, madeUpView } from "./made-up-view.ts";

const source = { start: 3, end: 9 };

const PAGE: readonly PageMessage[] = [
  { type: "ready" },
  { type: "reveal", source },
  { type: "chooseVariant", variant: "long tail" },
  { type: "chooseVariant", variant: null },
  { type: "chooseUnits", units: "in" },
  { type: "movePoint", request: 1, version: 4, handle: 0, to: { x: -3.5, y: 12 } },
  { type: "exportCutFile" },
  { type: "showCautions" },
];

const HOST: readonly HostMessage[] = [
  { type: "view", view: madeUpView(), units: "mm" },
  { type: "view", view: madeUpView({ drawing: null, bite: null, ghosts: [], problems: [] }), units: "in" },
  {
    type: "drawing",
    version: 3,
    documentUri: "file:///a.bar",
    variant: "long tail",
    drawing: drawingOfView(madeUpView()).ahead,
  },
  { type: "highlight", source },
  { type: "highlight", source: null },
  { type: "failed", request: 2, message: "The text has changed." },
];

const STATE: SavedState = {
  documentUri: "file:///a.bar",
  variant: null,
  units: "in",
  hostUnits: "mm",
  viewport: { centre: { x: 1, y: 2 }, pxPerMm: 3, fitted: false },
  toggles: { dimensions: true, variants: true, points: false, strikes: true, explanations: false },
  openSections: ["mass"],
};

/** Every path to a value inside a message, as keys. */
function pathsOf(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== "object" || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, part]) => pathsOf(part, [...path, key]));
  return path.length === 0 ? inner : [path, ...inner];
}

/** A deep copy with the value at a path changed; `undefined` takes the field away. */
function spoiled(
  value: unknown,
  [key, ...rest]: readonly string[],
  change: (old: unknown) => unknown,
): unknown {
  if (key === undefined) return change(value);
  if (typeof value !== "object" || value === null) return value;
  const copy: Record<string, unknown> | unknown[] = Array.isArray(value) ? [...value] : { ...value };
  const target = copy as Record<string, unknown>;
  const changed = spoiled(target[key], rest, change);
  if (changed === undefined) delete target[key];
  else target[key] = changed;
  return copy;
}

describe("messages of the page", () => {
  it.each(PAGE)("are taken when whole: $type", (message) => {
    expect(isPageMessage(message)).toBe(true);
    expect(isPageMessage(structuredClone(message))).toBe(true);
  });

  it.each(PAGE)("are refused when any field is missing: $type", (message) => {
    const broken = pathsOf(message).map((path) => spoiled(message, path, () => undefined));
    expect(broken.length).toBeGreaterThan(0);
    expect(broken.filter(isPageMessage)).toEqual([]);
  });

  it.each<[string, unknown]>([
    ["nothing", undefined],
    ["null", null],
    ["a word", "ready"],
    ["a list", [{ type: "ready" }]],
    ["an unknown kind", { type: "runCommand", command: "rm" }],
    ["a kind that is no word", { type: 7 }],
    ["a kind from the prototype", { type: "constructor" }],
    ["a kind of the host", HOST[2]],
    ["a range that runs backwards", { type: "reveal", source: { start: 9, end: 3 } }],
    ["a range before the text", { type: "reveal", source: { start: -1, end: 3 } }],
    ["a range between signs", { type: "reveal", source: { start: 0.5, end: 3 } }],
    ["an unknown unit", { type: "chooseUnits", units: "cm" }],
    ["a variant that is no name", { type: "chooseVariant", variant: 3 }],
  ])("are refused: %s", (_, value) => {
    expect(isPageMessage(value)).toBe(false);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, "1", null])("refuse %s for a place", (x) => {
    expect(isPageMessage({ type: "movePoint", request: 1, version: 1, handle: 0, to: { x, y: 0 } })).toBe(
      false,
    );
  });

  it("are refused whatever else is sent", () => {
    fc.assert(
      fc.property(fc.anything(), (value) => !isPageMessage(value)),
      { seed: 20_261, numRuns: 500 },
    );
  });
});

describe("messages of the host", () => {
  it.each(HOST)("are taken when whole: $type", (message) => {
    expect(isHostMessage(message)).toBe(true);
    expect(isHostMessage(structuredClone(message))).toBe(true);
  });

  it("are refused when any field of a view is missing", () => {
    const [message] = HOST;
    // A list may be shorter: only what lies in an object counts.
    const fields = pathsOf(message).filter((path) => !/^\d+$/.test(path.at(-1) ?? ""));
    expect(fields.length).toBeGreaterThan(500);
    const taken = fields.filter((path) => isHostMessage(spoiled(message, path, () => undefined)));
    expect(taken).toEqual([]);
  });

  it("are refused when any number of a view is not finite", () => {
    const [message] = HOST;
    const numbers = pathsOf(message).filter((path) => {
      let value: unknown = message;
      for (const key of path) value = (value as Record<string, unknown>)[key];
      return typeof value === "number";
    });
    expect(numbers.length).toBeGreaterThan(200);
    const taken = numbers.filter((path) => isHostMessage(spoiled(message, path, () => Number.NaN)));
    expect(taken).toEqual([]);
  });

  it("are refused when they are the page's", () => {
    expect(PAGE.filter(isHostMessage)).toEqual([]);
  });
});

describe("the saved state", () => {
  it("is taken when whole, also before a first drawing", () => {
    expect(isSavedState(STATE)).toBe(true);
    expect(isSavedState({ ...STATE, viewport: null, documentUri: null, units: null })).toBe(true);
  });

  it("is refused when it is another release's or none", () => {
    const fields = pathsOf(STATE).filter((path) => !/^\d+$/.test(path.at(-1) ?? ""));
    expect(fields.filter((path) => isSavedState(spoiled(STATE, path, () => undefined)))).toEqual([]);
    expect([undefined, null, "", 3, [], {}].filter(isSavedState)).toEqual([]);
  });
});

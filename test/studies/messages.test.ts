import { describe, expect, it } from "vitest";
import { isHostMessage, isPageMessage, isSavedState } from "../../extension/studies/messages.ts";
import type { HostMessage, PageMessage } from "../../extension/studies/protocol.ts";

const FILE = { uri: "file:///a.bar", fileName: "a.bar", text: "bar" };
const DOCUMENT = {
  ...FILE,
  version: 3,
  variant: null,
  units: "mm",
  settings: { squareStrikeDeg: 35 },
} as const;
const TEXT = { name: "sweep.csv", kind: "Table", summary: "3 rows", content: "a,b\r\n" };

const FROM_PAGE: readonly PageMessage[] = [
  { type: "ready", others: ["file:///b.bar"] },
  { type: "pickOthers" },
  { type: "dropOther", uri: "file:///b.bar" },
  { type: "applyEdits", request: 1, version: 3, edits: [{ start: 0, end: 2, newText: "x" }] },
  { type: "saveFile", request: 2, file: TEXT },
  { type: "showCautions" },
  { type: "fault", reason: "broke" },
];

const FROM_HOST: readonly HostMessage[] = [
  { type: "document", document: DOCUMENT },
  { type: "others", files: [FILE] },
  { type: "show", part: "compare" },
  { type: "done", request: 1, refused: null },
];

/** The message with each of its fields, at any depth, taken away in turn. */
function* lessened(value: unknown): Generator<unknown> {
  if (typeof value !== "object" || value === null) return;
  for (const [name, inner] of Object.entries(value)) {
    if (!Array.isArray(value)) {
      const { [name]: _, ...rest } = value as Record<string, unknown>;
      yield rest;
    }
    for (const less of lessened(inner)) {
      yield Array.isArray(value)
        ? value.map((one, i) => (String(i) === name ? less : one))
        : { ...value, [name]: less };
    }
  }
}

describe.each([
  ["the page", isPageMessage, FROM_PAGE],
  ["the host", isHostMessage, FROM_HOST],
] as const)("messages of %s", (_, isMessage, messages) => {
  it.each(messages.map((message) => [message.type, message] as const))("%s passes whole", (_, message) => {
    expect(isMessage(message)).toBe(true);
    expect(isMessage(structuredClone(message))).toBe(true);
  });

  it.each(messages.map((message) => [message.type, message] as const))(
    "%s is refused in part",
    (type, message) => {
      const parts = [...lessened(message)];
      expect(parts.length).toBeGreaterThan(0);
      // Any setting may be left out: the rest stay as they are.
      for (const part of parts) {
        const isShorterSettings = type === "document" && JSON.stringify(part).includes('"settings":{}');
        expect(isMessage(part), JSON.stringify(part)).toBe(isShorterSettings);
      }
    },
  );

  it("refuses what is none", () => {
    for (const value of [null, undefined, 1, "ready", [], {}, { type: "toString" }, { type: "unknown" }])
      expect(isMessage(value)).toBe(false);
  });
});

describe("values within messages", () => {
  it("refuses edits that run backwards or count wrongly", () => {
    const edit = (start: number, end: number) =>
      isPageMessage({ type: "applyEdits", request: 0, version: 0, edits: [{ start, end, newText: "" }] });
    expect(edit(2, 2)).toBe(true);
    for (const [start, end] of [
      [3, 2],
      [-1, 2],
      [0.5, 2],
      [0, Number.NaN],
    ] as const)
      expect(edit(start, end)).toBe(false);
  });

  it.each(["../up.csv", "a/b.csv", "C:\\x.csv", "noending", ".csv", "a.", "a:b.csv", ""])(
    "refuses %j as a file's name",
    (name) => {
      expect(isPageMessage({ type: "saveFile", request: 0, file: { ...TEXT, name } })).toBe(false);
    },
  );

  it("refuses settings that are no numbers", () => {
    for (const settings of [{ squareStrikeDeg: "35" }, { squareStrikeDeg: Number.NaN }, [], null])
      expect(isHostMessage({ type: "document", document: { ...DOCUMENT, settings } })).toBe(false);
  });

  it("takes a saved state, and none of another release", () => {
    const state = { documentUri: null, others: [], part: "compare", parts: { compare: { any: 1 } } };
    expect(isSavedState(state)).toBe(true);
    expect(isSavedState({ ...state, parts: [] })).toBe(false);
    expect(isSavedState({ documentUri: "file:///a.bar" })).toBe(false);
  });
});

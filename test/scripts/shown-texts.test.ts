/** What is handed to translators is what the extension shows, and the manifest names only texts that there are. */
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { expect, it } from "vitest";
import { collectTexts } from "../../scripts/shown-texts.ts";

const ROOT = resolve(import.meta.dirname, "../..");
const readRoot = (name: string) => readFile(resolve(ROOT, name), "utf8");

it("the bundle for translators holds every text that is shown, and no other: npm run texts", async () => {
  expect(await readRoot("extension/l10n/bundle.l10n.json")).toBe(await collectTexts(ROOT));
});

it("each text that the manifest names is there, and each that is there is named", async () => {
  const named = [...(await readRoot("package.json")).matchAll(/"%([\w.]+)%"/g)].map(([, key]) => key);
  const texts: unknown = JSON.parse(await readRoot("package.nls.json"));
  expect(Object.keys(texts as object).sort()).toEqual([...new Set(named)].sort());
});

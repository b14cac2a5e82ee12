/**
 * `npx tsx scripts/collect-texts.ts`: writes every text that the extension shows into `extension/l10n/bundle.l10n.json`,
 * for those who translate. A translation is a copy beside it named `bundle.l10n.<language>.json`.
 */
import { writeFile } from "node:fs/promises";
import { resolve } from "node:path";
import { collectTexts } from "./shown-texts.ts";

const ROOT = resolve(import.meta.dirname, "..");

await writeFile(resolve(ROOT, "extension/l10n/bundle.l10n.json"), await collectTexts(ROOT));

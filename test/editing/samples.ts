import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";

const FOLDER = resolve(import.meta.dirname, "../../samples");

/** The texts of all samples. */
export const SAMPLES: readonly string[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".bar"))
  .sort()
  .map((name) => readFileSync(join(FOLDER, name), "utf8"));

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const FOLDER = join(import.meta.dirname, "../../samples");

export interface Sample {
  readonly file: string;
  readonly text: string;
}

/** The sample bars that come with the project. */
export const SAMPLES: readonly Sample[] = readdirSync(FOLDER)
  .filter((file) => file.endsWith(".bar"))
  .map((file) => ({ file, text: readFileSync(join(FOLDER, file), "utf8") }));

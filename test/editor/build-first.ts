import { resolve } from "node:path";
import { buildBundles } from "../../scripts/build-bundles.ts";

/** Builds what the editor loads, so that the tests never run against an older build. */
export default async function buildFirst(): Promise<void> {
  await buildBundles(resolve(import.meta.dirname, "../.."), {
    only: ["browser", "preview", "playground-page", "playground-files"],
  });
}

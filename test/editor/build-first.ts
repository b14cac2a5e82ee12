import { resolve } from "node:path";
import { buildBundles } from "../../scripts/build-bundles.ts";

/** Builds what the tests load, so that the tests never run against an older build. */
export default async function buildFirst(): Promise<void> {
  await buildBundles(resolve(import.meta.dirname, "../.."), {
    only: [
      "desktop",
      "browser",
      "preview",
      "studies",
      "studies-worker",
      "playground",
      "playground-page",
      "playground-files",
    ],
  });
}

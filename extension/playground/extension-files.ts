import { readFile } from "node:fs/promises";
import { join } from "node:path";

/**
 * A test of which files (by the names of their path) belong to the packaged extension: the manifest and what it
 * lists under `files`, as plain paths of files and folders. So the playground shows a file missing from the package before it is
 * released without it. Throws the system's error, or a SyntaxError for a broken manifest.
 */
export async function packagedFiles(productRoot: string): Promise<(names: readonly string[]) => boolean> {
  const manifest: unknown = JSON.parse(await readFile(join(productRoot, "package.json"), "utf8"));
  const listed = ["package.json", ...listedFiles(manifest)];
  return (names) => {
    const path = names.join("/");
    return listed.some((entry) => path === entry || path.startsWith(`${entry}/`));
  };
}

function listedFiles(manifest: unknown): string[] {
  if (typeof manifest !== "object" || manifest === null || !("files" in manifest)) return [];
  const { files } = manifest;
  if (!Array.isArray(files)) return [];
  return files.filter((entry) => typeof entry === "string").map((entry) => entry.replace(/\/(\*\*)?$/, ""));
}

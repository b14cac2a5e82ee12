import { randomBytes } from "node:crypto";
import { realpath } from "node:fs/promises";
import type { Server } from "node:http";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { basename } from "node:path";
import { answer } from "./answer.ts";
import { createChangeStream } from "./change-stream.ts";
import { createFileApi } from "./file-api.ts";
import { mountProduct } from "./mounts.ts";
import { pageHtml } from "./page-html.ts";
import { serveFolder } from "./served-folder.ts";
import { watchFolder } from "./watch-folder.ts";

/** Far above any outline file, far below what would trouble the machine. */
const MOST_UPLOAD_BYTES = 16 * 1024 * 1024;

export interface PlaygroundOptions {
  /** The folder to edit. */
  readonly folder: string;
  /** Where the product's `package.json` and `dist/` lie. */
  readonly productRoot: string;
  /** 0, the default, takes any free port. */
  readonly port?: number;
  /** The file opened first, such as `/wattlebird.bar`. */
  readonly open?: string | null;
  /** Settings of the editor that differ from the playground's own. */
  readonly settings?: Readonly<Record<string, unknown>>;
}

export interface Playground {
  readonly port: number;
  /** `http://127.0.0.1:PORT`. */
  readonly origin: string;
  /** The address to open, with the key of this run. */
  readonly address: string;
  close(): Promise<void>;
}

/**
 * Serves the editor in a browser with Barwright and the given folder, on the loopback interface only. The folder can
 * be read and written by whoever holds the key of this run, which the address contains; see `admit` for the rest.
 * Throws the system's error where the folder or the product is missing or the port is taken.
 */
export async function startPlayground(options: PlaygroundOptions): Promise<Playground> {
  const root = await realpath(options.folder);
  const mounts = await mountProduct(options.productRoot);
  const server = createServer();
  await listen(server, options.port ?? 0);
  const { port } = server.address() as AddressInfo;
  const key = randomBytes(24).toString("base64url");
  const page = pageHtml({
    folderName: basename(root) || "folder",
    open: options.open ?? null,
    settings: options.settings ?? {},
  });
  const files = createFileApi(serveFolder(root), MOST_UPLOAD_BYTES);
  const changes = createChangeStream();
  const site = { port, key, page, mounts, files, changes };
  server.on("request", (request, response) => {
    // Only a fault of ours gets here; the reader sees a broken connection rather than half an answer.
    answer(site, request, response).catch(() => response.destroy());
  });
  const watch = await watchFolder(root, changes.tell);
  const origin = `http://127.0.0.1:${port}`;
  const close = async () => {
    changes.close();
    await watch.close();
    await stopServer(server);
  };
  return { port, origin, address: `${origin}/?key=${key}`, close };
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => resolve());
  });
}

function stopServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

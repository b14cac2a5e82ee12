import { mkdir, mkdtemp, realpath, rm, writeFile } from "node:fs/promises";
import type { OutgoingHttpHeaders } from "node:http";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Playground } from "../../extension/playground/server.ts";
import { startPlayground } from "../../extension/playground/server.ts";

/** The parts of a built product that the server needs, and two files that it must keep to itself. */
const PRODUCT_FILES: Readonly<Record<string, string>> = {
  "package.json": JSON.stringify({ name: "product", files: ["README.md", "dist/browser.js", "icons/"] }),
  "README.md": "# Product\n",
  "CHANGELOG.md": "# Changes\n",
  ".env": "secret\n",
  "icons/bar.svg": "<svg></svg>",
  "dist/browser.js": "exports.activate = () => {};\n",
  "dist/barwright.js": "not part of the package\n",
  "dist/playground-page.js": "start();\n",
  "dist/playground-files/package.json": "{}",
  "dist/playground-files/browser.js": "exports.activate = () => {};\n",
};

export const FIRST_TEXT = 'bar "Wicker Gull"\n';

export interface Served {
  readonly playground: Playground;
  /** The served folder; it holds `first.bar`, `parts/second.bar` and `beside`, a link to a folder outside. */
  readonly folder: string;
  /** A folder beside it, which holds `secret.txt`. */
  readonly outside: string;
  /** Sends a request with the key, unless `headers` say otherwise. */
  ask(method: string, path: string, sent?: Sent): Promise<Answer>;
  stop(): Promise<void>;
}

export interface Sent {
  readonly headers?: OutgoingHttpHeaders;
  readonly body?: string | Uint8Array;
}

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** A temporary folder of its own for a test, given by its real path. */
export async function temporaryFolder(): Promise<string> {
  return realpath(await mkdtemp(join(tmpdir(), "barwright-playground-")));
}

/** Starts a playground on a small product and folder. Call `stop` when done. */
export async function serve(): Promise<Served> {
  const base = await temporaryFolder();
  const [folder, outside, product] = [join(base, "bars"), join(base, "outside"), join(base, "product")];
  await writeAll(product, PRODUCT_FILES);
  await writeAll(folder, { "first.bar": FIRST_TEXT, "parts/second.bar": 'bar "Tin Plover"\n' });
  await writeAll(outside, { "secret.txt": "secret\n" });
  const playground = await startPlayground({ folder, productRoot: product });
  const cookie = cookieOf(playground);
  return {
    playground,
    folder,
    outside,
    ask: (method, path, sent = {}) =>
      send(playground.port, method, path, { ...sent, headers: { cookie, ...sent.headers } }),
    stop: async () => {
      await playground.close();
      await rm(base, { recursive: true });
    },
  };
}

/** The cookie that the page of a playground gets with its address. */
export function cookieOf({ port, address }: Playground): string {
  return `barwright-playground-${port}=${new URL(address).searchParams.get("key")}`;
}

async function writeAll(folder: string, files: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), text);
  }
}

/** Sends a request as it is: the path is not tidied up, and any header can be set. */
export function send(port: number, method: string, path: string, sent: Sent = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const headers = sent.headers ?? {};
    const outgoing = request({ host: "127.0.0.1", port, method, path, headers, agent: false }, (incoming) => {
      const parts: Buffer[] = [];
      incoming.on("data", (part: Buffer) => parts.push(part));
      incoming.on("end", () => {
        const text = Buffer.concat(parts).toString("utf8");
        resolve({ status: incoming.statusCode ?? 0, headers: incoming.headers, text });
      });
      incoming.on("error", reject);
    });
    outgoing.on("error", reject);
    outgoing.end(sent.body);
  });
}

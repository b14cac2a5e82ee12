import type { IncomingMessage, ServerResponse } from "node:http";
import type { ChangeStream } from "./change-stream.ts";
import type { FileApi } from "./file-api.ts";
import type { Audience } from "./guard.ts";
import { admit, holdsKey, keyCookie, sameKey, webviewOrigin } from "./guard.ts";
import { mediaType } from "./media-type.ts";
import type { Mounts } from "./mounts.ts";
import { ROUTES } from "./protocol.ts";

/** What one run of the playground answers with. */
export interface Site {
  readonly port: number;
  /** The secret of this run; who has it may use the folder. */
  readonly key: string;
  /** The page that loads the workbench. */
  readonly page: string;
  readonly mounts: Mounts;
  readonly files: FileApi;
  readonly changes: ChangeStream;
}

interface Target {
  readonly path: string;
  readonly parameters: URLSearchParams;
}

/** Answers a request: checks whose it is (see `admit`), asks for the key, and passes it on. */
export async function answer(site: Site, request: IncomingMessage, response: ServerResponse): Promise<void> {
  setCommonHeaders(response);
  const admission = admit(request.headers, site.port);
  if (!admission.admitted) return refuse(request, response, 403, admission.why);
  const target = readTarget(request.url ?? "");
  if (target === null) return refuse(request, response, 400, "This address cannot be read.");
  const { audience } = admission;
  const answered =
    audience === "page"
      ? await answerPage(site, target, request, response)
      : await answerWebview(site, target, audience, request, response);
  if (!answered) refuse(request, response, 404, "There is nothing at this address.");
}

/** Answers a webview or its frame, which get files of the product without the key; false where there is none. */
async function answerWebview(
  site: Site,
  { path }: Target,
  audience: Audience,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<boolean> {
  if (request.method !== "GET") return false;
  // A frame names itself to the server by it; nothing else of its address is told, and to nobody else.
  response.setHeader("Referrer-Policy", "origin");
  response.setHeader("Vary", "Origin, Referer");
  const origin = webviewOrigin(request.headers, site.port);
  if (audience === "webview" && origin !== null) response.setHeader("Access-Control-Allow-Origin", origin);
  return site.mounts.send(path, audience, response);
}

/** Answers the workbench's own origin; false where the address names nothing. */
async function answerPage(
  site: Site,
  target: Target,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<boolean> {
  const { path, parameters } = target;
  if (path === "/" && sameKey(parameters.get("key") ?? "", site.key)) {
    response.setHeader(
      "Set-Cookie",
      `${keyCookie(site.port)}=${site.key}; HttpOnly; SameSite=Strict; Path=/`,
    );
  } else if (!holdsKey(request.headers, site.port, site.key)) {
    refuse(request, response, 403, "Open the address that the playground printed when it started.");
    return true;
  }
  if (path.startsWith("/files/") && path !== ROUTES.changes) {
    return site.files.answer(path, parameters, request, response);
  }
  if (request.method !== "GET") return false;
  if (path === ROUTES.changes) site.changes.listen(response);
  else if (path === "/") sendPage(response, site.page);
  else return site.mounts.send(path, "page", response);
  return true;
}

/** The decoded path and the parameters of a request line; null for what is no plain path. */
function readTarget(url: string): Target | null {
  const cut = url.indexOf("?");
  try {
    // Not by `URL`: it would quietly resolve "..", and take "//name" for a host.
    const path = decodeURIComponent(cut < 0 ? url : url.slice(0, cut));
    if (!path.startsWith("/")) return null;
    return { path, parameters: new URLSearchParams(cut < 0 ? "" : url.slice(cut + 1)) };
  } catch {
    return null;
  }
}

function setCommonHeaders(response: ServerResponse): void {
  response.setHeader("X-Content-Type-Options", "nosniff");
  response.setHeader("Referrer-Policy", "no-referrer");
  response.setHeader("Cache-Control", "no-cache");
}

function sendPage(response: ServerResponse, page: string): void {
  response.writeHead(200, {
    "Content-Type": mediaType(".html"),
    "Content-Security-Policy": "frame-ancestors 'self'",
  });
  response.end(page);
}

function refuse(request: IncomingMessage, response: ServerResponse, status: number, why: string): void {
  // What is left of a refused upload is not read: the connection cannot be used again.
  if (!request.complete) response.setHeader("Connection", "close");
  response.writeHead(status, { "Content-Type": mediaType(".txt") });
  response.end(`${why}\n`);
}

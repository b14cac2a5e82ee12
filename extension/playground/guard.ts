import { timingSafeEqual } from "node:crypto";
import type { IncomingHttpHeaders } from "node:http";

/**
 * Whom a request comes for.
 * - `page`: the workbench's own origin, which with the key may read and write the folder.
 * - `frame`: an origin that the editor makes up to keep a webview apart from itself (`ID.localhost`). It gets the
 *   empty frame that a webview is put into.
 * - `webview`: what such a frame asks of the workbench's origin. It gets the extension's scripts and styles.
 */
export type Audience = "page" | "frame" | "webview";

export type Admission =
  | { readonly admitted: true; readonly audience: Audience }
  | { readonly admitted: false; readonly why: string };

const WEBVIEW_NAME = /^[a-z0-9-]+\.localhost$/;

/**
 * Decides by its headers whether a request may be answered at all. A page elsewhere on the web must reach nothing
 * here, also when its own name resolves to this machine (then Host is foreign), and also by a form, a script or an
 * image (then Origin, the fetch metadata or both are foreign, and Referer cannot be forged).
 */
export function admit(headers: IncomingHttpHeaders, port: number): Admission {
  const name = hostName(headers.host, port);
  // The frame is embedded across origins by design; it is the same for everyone and holds nothing.
  if (name !== null && WEBVIEW_NAME.test(name)) return { admitted: true, audience: "frame" };
  if (name !== "127.0.0.1" && name !== "localhost") {
    return { admitted: false, why: "This server answers only under its own address." };
  }
  if (isOwn(headers)) return { admitted: true, audience: "page" };
  if (webviewOrigin(headers, port) !== null) return { admitted: true, audience: "webview" };
  return { admitted: false, why: "Requests of other pages are not answered." };
}

/** The host's name without this server's port; null for any other port. */
function hostName(host: string | undefined, port: number): string | null {
  const suffix = `:${port}`;
  return host?.endsWith(suffix) ? host.slice(0, -suffix.length).toLowerCase() : null;
}

/** Whether the request was made by a page of the same origin, by the user, or by a program (no such headers). */
function isOwn(headers: IncomingHttpHeaders): boolean {
  const { origin } = headers;
  if (origin !== undefined && origin !== `http://${headers.host}`) return false;
  const site = headers["sec-fetch-site"];
  return site === undefined || site === "same-origin" || site === "none";
}

/** The origin of the webview that made a request, by Origin or else by Referer; null where it was no webview. */
export function webviewOrigin(headers: IncomingHttpHeaders, port: number): string | null {
  const source = headers.origin ?? headers.referer ?? "";
  if (!URL.canParse(source)) return null;
  const { protocol, host, origin } = new URL(source);
  const name = hostName(host, port);
  return protocol === "http:" && name !== null && WEBVIEW_NAME.test(name) ? origin : null;
}

/** The name of the cookie that holds the key. Cookies are shared by all ports of a host, so the port is in the name. */
export function keyCookie(port: number): string {
  return `barwright-playground-${port}`;
}

/** Whether the request's cookie holds the key of this run. */
export function holdsKey(headers: IncomingHttpHeaders, port: number, key: string): boolean {
  const wanted = `${keyCookie(port)}=`;
  const cookies = (headers.cookie ?? "").split(";").map((cookie) => cookie.trim());
  return cookies.some((cookie) => cookie.startsWith(wanted) && sameKey(cookie.slice(wanted.length), key));
}

/** Compares in constant time, so that the key cannot be guessed letter by letter. */
export function sameKey(given: string, key: string): boolean {
  const a = Buffer.from(given);
  const b = Buffer.from(key);
  return a.length === b.length && timingSafeEqual(a, b);
}

import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admit } from "../../extension/playground/guard.ts";
import type { Served } from "./served.ts";
import { FIRST_TEXT, send, serve } from "./served.ts";

const FILE = "/files/content?path=/first.bar";
const WEBVIEW_FRAME = "/workbench/out/vs/workbench/contrib/webview/browser/pre/index.html";

let served: Served;

beforeAll(async () => {
  served = await serve();
});

afterAll(() => served.stop());

describe("whom the server answers", () => {
  it("answers its own page with the key", async () => {
    const { port, origin } = served.playground;
    for (const host of [`127.0.0.1:${port}`, `localhost:${port}`, `LOCALHOST:${port}`]) {
      expect((await served.ask("GET", FILE, { headers: { host } })).text).toBe(FIRST_TEXT);
    }
    const own = { origin, "sec-fetch-site": "same-origin" };
    expect((await served.ask("GET", FILE, { headers: own })).text).toBe(FIRST_TEXT);
  });

  it("refuses a foreign Host, which is how another page's name resolved to this machine arrives", async () => {
    const { port } = served.playground;
    const hosts = [
      "elsewhere.example",
      `elsewhere.example:${port}`,
      `127.0.0.1.elsewhere.example:${port}`,
      `127.0.0.1:${port + 1}`,
      `localhost:${port}.elsewhere.example`,
      "127.0.0.1",
      `10.0.0.1:${port}`,
      `[::1]:${port}`,
    ];
    for (const host of hosts) {
      const answer = await served.ask("GET", FILE, { headers: { host } });
      expect(answer, host).toMatchObject({ status: 403 });
      expect(answer.text).not.toContain("Wicker");
    }
  });

  it("refuses a foreign Origin, also of another port of this machine and of a webview", async () => {
    const { port } = served.playground;
    const origins = [
      "http://elsewhere.example",
      `http://127.0.0.1:${port + 1}`,
      `https://127.0.0.1:${port}`,
      `http://localhost:${port}`,
      "null",
      `http://abc.localhost:${port}`,
    ];
    for (const origin of origins) {
      const put = { headers: { origin }, body: "overwritten" };
      const answer = await served.ask("PUT", `${FILE}&create=1&overwrite=1`, put);
      expect(answer.status, origin).toBeGreaterThanOrEqual(403);
      expect((await served.ask("GET", FILE, { headers: { origin } })).text, origin).not.toContain("Wicker");
    }
    expect((await served.ask("GET", FILE)).text).toBe(FIRST_TEXT);
  });

  it("refuses what another page made the browser ask for", async () => {
    for (const site of ["cross-site", "same-site"]) {
      const headers = { "sec-fetch-site": site };
      expect(await served.ask("GET", FILE, { headers }), site).toMatchObject({ status: 403 });
    }
  });

  it("refuses everything without the key but the page's own address", async () => {
    const { port, address } = served.playground;
    const page = await send(port, "GET", address.slice(address.indexOf("/?")));
    expect(page).toMatchObject({ status: 200 });
    expect(page.headers["set-cookie"]?.[0]).toMatch(/HttpOnly; SameSite=Strict/);
    const wrong = { cookie: `barwright-playground-${port}=${"x".repeat(32)}` };
    for (const path of ["/", "/?key=", "/?key=wrong", FILE, "/barwright/dist/browser.js", "/files/changes"]) {
      expect(await send(port, "GET", path), path).toMatchObject({ status: 403 });
      expect(await send(port, "GET", path, { headers: wrong }), path).toMatchObject({ status: 403 });
    }
  });

  it("gives a webview its empty frame and the extension's files, and nothing else", async () => {
    const { port, origin } = served.playground;
    const webview = `http://v--0abc.localhost:${port}`;
    const frame = (path: string) => send(port, "GET", path, { headers: { host: webview.slice(7) } });
    expect(await frame(WEBVIEW_FRAME)).toMatchObject({ status: 200 });
    for (const path of ["/", FILE, "/workbench/out/vs/loader.js", "/barwright/dist/browser.js"]) {
      expect(await frame(path), path).toMatchObject({ status: 404 });
    }
    const script = { referer: `${webview}/`, "sec-fetch-site": "cross-site" };
    const read = { origin: webview, "sec-fetch-site": "cross-site" };
    for (const headers of [script, read]) {
      const answer = await send(port, "GET", "/barwright/dist/browser.js", { headers });
      expect(answer).toMatchObject({ status: 200 });
      expect(answer.headers["access-control-allow-origin"]).toBe(webview);
      for (const path of [FILE, "/", "/workbench/out/vs/loader.js", "/barwright/.env"]) {
        // Even with the cookie, which no browser would send here.
        expect(await served.ask("GET", path, { headers }), path).toMatchObject({ status: 404 });
      }
    }
    const other = { referer: `${origin}.elsewhere.example/`, "sec-fetch-site": "cross-site" };
    expect(await send(port, "GET", "/barwright/dist/browser.js", { headers: other })).toMatchObject({
      status: 403,
    });
  });

  it("takes no name for a webview's that only resembles one", () => {
    for (const name of [
      "a.b.localhost",
      ".localhost",
      "a.localhost.example",
      "a_b.localhost",
      "alocalhost",
    ]) {
      expect(admit({ host: `${name}:4000` }, 4000), name).toMatchObject({ admitted: false });
    }
    expect(admit({}, 4000)).toMatchObject({ admitted: false });
    expect(admit({ host: "abc.localhost:4000" }, 4000)).toEqual({ admitted: true, audience: "frame" });
  });

  it("listens on the loopback interface only", async () => {
    const { origin, port } = served.playground;
    expect(origin).toBe(`http://127.0.0.1:${port}`);
    expect(await listensElsewhere(port)).toEqual([]);
  });
});

/** The addresses of this machine, beside 127.0.0.1, at which something answers on a port. */
async function listensElsewhere(port: number): Promise<string[]> {
  const { networkInterfaces } = await import("node:os");
  const { connect } = await import("node:net");
  const own = Object.values(networkInterfaces()).flatMap((found) => found ?? []);
  const others = own.map(({ address }) => address).filter((address) => address !== "127.0.0.1");
  const answers = others.map((host) => {
    return new Promise<string | null>((resolve) => {
      const socket = connect({ host, port, timeout: 1000 });
      const end = (found: string | null) => {
        socket.destroy();
        resolve(found);
      };
      socket.on("connect", () => end(host));
      socket.on("error", () => end(null));
      socket.on("timeout", () => end(null));
    });
  });
  return (await Promise.all(answers)).filter((host) => host !== null);
}

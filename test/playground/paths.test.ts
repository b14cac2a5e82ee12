import { lstat, readdir, readFile, symlink } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Served } from "./served.ts";
import { FIRST_TEXT, serve } from "./served.ts";

let served: Served;

beforeAll(async () => {
  served = await serve();
  const { folder, outside } = served;
  await symlink(outside, join(folder, "beside"));
  await symlink(join(outside, "secret.txt"), join(folder, "secret.bar"));
  await symlink(join(outside, "new.txt"), join(folder, "nowhere.bar"));
  await symlink("first.bar", join(folder, "same.bar"));
  await symlink("loop.bar", join(folder, "loop.bar"));
});

afterAll(() => served.stop());

/** Paths that lead out of the folder or are no plain paths, as they stand in an address. */
const LEADING_OUT = [
  "/../outside/secret.txt",
  "/parts/../../outside/secret.txt",
  "/%2e%2e/outside/secret.txt",
  "/%2e%2e%2foutside%2fsecret.txt",
  "/.%2e/outside/secret.txt",
  "/..%5coutside%5csecret.txt",
  "../outside/secret.txt",
  "outside/secret.txt",
  "//outside/secret.txt",
  "/beside/secret.txt",
  "/beside/new/secret.txt",
  "/first.bar%00.txt",
  "/./first.bar",
  "/parts//second.bar",
  "",
];

const REFUSED = { status: 403, text: expect.stringContaining('"refused"') };

describe("paths that lead out of the folder", () => {
  it.each(LEADING_OUT)("are neither read nor listed: %s", async (path) => {
    for (const route of ["stat", "folder", "content"]) {
      const answer = await served.ask("GET", `/files/${route}?path=${path}`);
      expect(answer, route).toMatchObject(REFUSED);
      expect(answer.text).not.toContain(served.outside);
    }
  });

  it.each(LEADING_OUT)("are neither written, made, removed nor renamed: %s", async (path) => {
    const calls = [
      ["PUT", `/files/content?path=${path}&create=1&overwrite=1`],
      ["POST", `/files/folder?path=${path}`],
      ["DELETE", `/files/entry?path=${path}&recursive=1`],
      ["POST", `/files/rename?from=${path}&to=/taken.bar&overwrite=1`],
      ["POST", `/files/rename?from=/first.bar&to=${path}&overwrite=1`],
    ] as const;
    for (const [method, address] of calls) {
      const sent = method === "PUT" ? { body: "new" } : {};
      expect(await served.ask(method, address, sent), address).toMatchObject(REFUSED);
    }
    expect(await readFile(join(served.outside, "secret.txt"), "utf8")).toBe("secret\n");
    expect(await readFile(join(served.folder, "first.bar"), "utf8")).toBe(FIRST_TEXT);
  });

  it("leave the folder itself in place", async () => {
    expect(await served.ask("DELETE", "/files/entry?path=/&recursive=1")).toMatchObject(REFUSED);
    expect(await served.ask("POST", "/files/rename?from=/&to=/other")).toMatchObject(REFUSED);
    expect(await served.ask("POST", "/files/rename?from=/parts&to=/&overwrite=1")).toMatchObject(REFUSED);
  });
});

describe("links", () => {
  it("out of the folder are not followed", async () => {
    for (const name of ["secret.bar", "nowhere.bar", "beside", "loop.bar"]) {
      for (const route of ["stat", "content", "folder"]) {
        const answer = await served.ask("GET", `/files/${route}?path=/${name}`);
        // A link to nowhere has nothing to read; what it names is not told.
        if (name === "nowhere.bar") expect(answer.text, route).not.toContain("secret");
        else expect(answer, `${name} ${route}`).toMatchObject(REFUSED);
      }
      const put = await served.ask("PUT", `/files/content?path=/${name}&create=1&overwrite=1`, {
        body: "new",
      });
      expect(put.status, name).toBeGreaterThanOrEqual(400);
    }
    expect(await readdir(served.outside)).toEqual(["secret.txt"]);
    expect(await readFile(join(served.outside, "secret.txt"), "utf8")).toBe("secret\n");
  });

  it("out of the folder are not listed", async () => {
    const { text } = await served.ask("GET", "/files/folder?path=/");
    const names = (JSON.parse(text) as { name: string }[]).map(({ name }) => name).sort();
    expect(names).toEqual(["first.bar", "parts", "same.bar"]);
    expect(JSON.parse((await served.ask("GET", "/files/all")).text)).toEqual([
      "/first.bar",
      "/parts/second.bar",
    ]);
  });

  it("within the folder are followed, and stay links when written through", async () => {
    const put = await served.ask("PUT", "/files/content?path=/same.bar&overwrite=1", { body: 'bar "New"\n' });
    expect(put).toMatchObject({ status: 204 });
    expect(await readFile(join(served.folder, "first.bar"), "utf8")).toBe('bar "New"\n');
    expect((await lstat(join(served.folder, "same.bar"))).isSymbolicLink()).toBe(true);
    const { text } = await served.ask("GET", "/files/stat?path=/same.bar");
    expect(JSON.parse(text)).toMatchObject({ type: "file", isLink: true, sizeBytes: 10 });
  });

  it("are removed themselves, not what they lead to", async () => {
    expect(await served.ask("DELETE", "/files/entry?path=/beside&recursive=1")).toMatchObject({
      status: 204,
    });
    expect(await served.ask("DELETE", "/files/entry?path=/secret.bar")).toMatchObject({ status: 204 });
    expect(await readdir(served.outside)).toEqual(["secret.txt"]);
    expect(await readdir(served.folder)).not.toContain("beside");
  });
});

describe("files of the product", () => {
  it("are offered as the manifest lists them for the package, and no others", async () => {
    const packaged = ["package.json", "README.md", "dist/browser.js", "icons/bar.svg"];
    for (const name of packaged) {
      expect(await served.ask("GET", `/barwright/${name}`), name).toMatchObject({ status: 200 });
    }
    const kept = [
      ".env",
      "CHANGELOG.md",
      "dist/barwright.js",
      "dist/playground-files/browser.js",
      "icons/../.env",
      "icons/%2e%2e/.env",
      "icons%2f..%2f.env",
      "icons",
      "",
    ];
    for (const name of kept) {
      expect(await served.ask("GET", `/barwright/${name}`), name).toMatchObject({ status: 404 });
    }
  });

  it("do not lead out of the workbench either", async () => {
    for (const path of [
      "/workbench/../package.json",
      "/workbench/%2e%2e/package.json",
      "/workbench//etc/passwd",
    ]) {
      expect(await served.ask("GET", path), path).toMatchObject({ status: 404 });
    }
    for (const path of ["/%", "/%c3%28", "http://127.0.0.1/", "*"]) {
      expect(await served.ask("GET", path), path).toMatchObject({ status: 400 });
    }
  });

  it("are told apart by their media types", async () => {
    const types: Readonly<Record<string, string>> = {
      "/": "text/html; charset=utf-8",
      "/built/playground-page.js": "text/javascript; charset=utf-8",
      "/barwright/package.json": "application/json; charset=utf-8",
      "/barwright/icons/bar.svg": "image/svg+xml",
      "/workbench/favicon.ico": "image/x-icon",
      "/workbench/out/vs/workbench/workbench.web.main.css": "text/css; charset=utf-8",
      "/workbench/out/vs/base/browser/ui/codicons/codicon/codicon.ttf": "font/ttf",
      "/workbench/node_modules/vscode-oniguruma/release/onig.wasm": "application/wasm",
      "/files/content?path=/first.bar": "text/plain; charset=utf-8",
      "/files/stat?path=/first.bar": "application/json; charset=utf-8",
    };
    for (const [path, type] of Object.entries(types)) {
      const { headers, status } = await served.ask("GET", path);
      expect([status, headers["content-type"], headers["x-content-type-options"]], path).toEqual([
        200,
        type,
        "nosniff",
      ]);
    }
  });

  it("are only read", async () => {
    for (const method of ["PUT", "POST", "DELETE", "PATCH", "OPTIONS"]) {
      expect(await served.ask(method, "/barwright/package.json"), method).toMatchObject({ status: 404 });
    }
  });
});

import { chmod, mkdir, readdir, readFile, stat, writeFile } from "node:fs/promises";
import { connect } from "node:net";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { writeFileAtomically } from "../../extension/playground/write-file-atomically.ts";
import type { Served } from "./served.ts";
import { cookieOf, FIRST_TEXT, serve } from "./served.ts";

let served: Served;

beforeAll(async () => {
  served = await serve();
});

afterAll(() => served.stop());

const inFolder = (name: string) => join(served.folder, name);
const put = (path: string, body: string, allow = "&create=1&overwrite=1") =>
  served.ask("PUT", `/files/content?path=${path}${allow}`, { body });

describe("reading", () => {
  it("tells what an entry is", async () => {
    const file = JSON.parse((await served.ask("GET", "/files/stat?path=/first.bar")).text);
    const { mtimeMs } = await stat(inFolder("first.bar"));
    expect(file).toMatchObject({
      type: "file",
      isLink: false,
      sizeBytes: FIRST_TEXT.length,
      modifiedMs: Math.trunc(mtimeMs),
    });
    expect(JSON.parse((await served.ask("GET", "/files/stat?path=/")).text)).toMatchObject({
      type: "folder",
    });
  });

  it("says nothing of what is not there, without an error status", async () => {
    expect(await served.ask("GET", "/files/stat?path=/none.bar")).toMatchObject({
      status: 200,
      text: "null",
    });
    expect(await served.ask("GET", "/files/stat?path=/first.bar/x")).toMatchObject({
      status: 200,
      text: "null",
    });
    expect(await served.ask("GET", "/files/content?path=/none.bar")).toMatchObject({ status: 204, text: "" });
    expect(await served.ask("GET", "/files/content?path=/none/none.bar")).toMatchObject({ status: 204 });
  });

  it("tells a folder from a file", async () => {
    const answers = [
      await served.ask("GET", "/files/content?path=/parts"),
      await served.ask("GET", "/files/folder?path=/first.bar"),
      await served.ask("GET", "/files/folder?path=/none"),
      await served.ask("GET", "/files/content"),
    ];
    expect(answers.map(({ status, text }) => [status, JSON.parse(text).code])).toEqual([
      [409, "is-folder"],
      [409, "not-folder"],
      [404, "not-found"],
      [403, "refused"],
    ]);
  });

  it("carries any name and any bytes", async () => {
    const name = "Größe & 100 % #1.bar";
    await writeFile(inFolder(name), "\u{feff}½ é\r\n");
    const path = encodeURIComponent(`/${name}`);
    expect((await served.ask("GET", `/files/content?path=${path}`)).text).toBe("\u{feff}½ é\r\n");
    expect((await served.ask("GET", "/files/folder?path=/")).text).toContain(name);
  });
});

describe("writing", () => {
  it("makes a new file and replaces an old one, only where it may", async () => {
    expect(await put("/new.bar", "one")).toMatchObject({ status: 204 });
    expect(await put("/new.bar", "two", "&create=1")).toMatchObject({ status: 409 });
    expect(await put("/newer.bar", "two", "&overwrite=1")).toMatchObject({ status: 404 });
    expect(await put("/none/new.bar", "two")).toMatchObject({ status: 404 });
    expect(await put("/parts", "two")).toMatchObject({ status: 409 });
    expect(await readFile(inFolder("new.bar"), "utf8")).toBe("one");
  });

  it("keeps the permissions of the old file", async () => {
    await put("/kept.bar", "one");
    await chmod(inFolder("kept.bar"), 0o640);
    await put("/kept.bar", "two");
    expect((await stat(inFolder("kept.bar"))).mode & 0o777).toBe(0o640);
  });

  it("refuses a huge upload, announced or not, and keeps the old file", async () => {
    await put("/big.bar", "old");
    const mebibyte = "x".repeat(1024 * 1024);
    expect(await put("/big.bar", mebibyte.repeat(17))).toMatchObject({ status: 413 });
    expect(await pour("/big.bar", mebibyte, 17)).toMatch(/^HTTP\/1.1 413 /);
    expect(await readFile(inFolder("big.bar"), "utf8")).toBe("old");
  });

  it("leaves the old file whole where an upload breaks off", async () => {
    await put("/broken.bar", "old and whole");
    await breakOff("/broken.bar", "new and never fin");
    // A later request is answered after the broken one has been dealt with.
    expect((await served.ask("GET", "/files/content?path=/broken.bar")).text).toBe("old and whole");
    expect(await unfinished()).toEqual([]);
  });

  it("leaves the old file whole and nothing else behind where the last step fails", async () => {
    await mkdir(inFolder("occupied.bar/inner"), { recursive: true });
    const failed = writeFileAtomically(inFolder("occupied.bar"), Buffer.from("new"));
    await expect(failed).rejects.toThrow();
    expect(await readdir(inFolder("occupied.bar"))).toEqual(["inner"]);
    expect(await unfinished()).toEqual([]);
  });

  it("never shows a reader a part of a file", async () => {
    const texts = ["a", "b"].map((letter) => letter.repeat(400_000));
    await put("/whole.bar", texts[0] ?? "");
    let done = false;
    const writing = (async () => {
      for (let round = 0; round < 20; round++) await put("/whole.bar", texts[round % 2] ?? "");
      done = true;
    })();
    const seen = new Set<string>();
    while (!done) seen.add(await readFile(inFolder("whole.bar"), "utf8"));
    await writing;
    expect([...seen].filter((text) => !texts.includes(text)).map((text) => text.length)).toEqual([]);
    expect(seen.size).toBeGreaterThan(0);
  });

  it("lists and reports no temporary file", async () => {
    await writeFile(inFolder(".first.bar.0123456789ab.part"), "left by a crash");
    expect((await served.ask("GET", "/files/folder?path=/")).text).not.toContain(".part");
    expect((await served.ask("GET", "/files/all")).text).not.toContain(".part");
  });
});

describe("moving and removing", () => {
  it("makes, renames and removes", async () => {
    expect(await served.ask("POST", "/files/folder?path=/made")).toMatchObject({ status: 204 });
    expect(await served.ask("POST", "/files/folder?path=/made")).toMatchObject({ status: 409 });
    await put("/made/a.bar", "a");
    await put("/made/b.bar", "b");
    const rename = (allow: string) =>
      served.ask("POST", `/files/rename?from=/made/a.bar&to=/made/b.bar${allow}`);
    expect(await rename("")).toMatchObject({ status: 409 });
    expect(await rename("&overwrite=1")).toMatchObject({ status: 204 });
    expect(await readFile(inFolder("made/b.bar"), "utf8")).toBe("a");
    expect(await served.ask("DELETE", "/files/entry?path=/made")).toMatchObject({ status: 409 });
    expect(await served.ask("DELETE", "/files/entry?path=/made&recursive=1")).toMatchObject({ status: 204 });
    expect(await served.ask("DELETE", "/files/entry?path=/made")).toMatchObject({ status: 404 });
  });
});

describe("changes on the disk", () => {
  it("are told once each, with what happened", async () => {
    const listener = await listen();
    try {
      await writeFile(inFolder("told.bar"), "one");
      await listener.waitFor('{"kind":"created","path":"/told.bar"}');
      await put("/told.bar", "two, and longer");
      await listener.waitFor('{"kind":"changed","path":"/told.bar"}');
      await served.ask("DELETE", "/files/entry?path=/told.bar");
      await listener.waitFor('{"kind":"deleted","path":"/told.bar"}');
      await mkdir(inFolder("told"));
      await listener.waitFor('{"kind":"created","path":"/told"}');
      await writeFile(inFolder("told/below.bar"), "one");
      await listener.waitFor('{"kind":"created","path":"/told/below.bar"}');
      expect(listener.text()).not.toContain(".part");
    } finally {
      listener.stop();
    }
  });
});

function unfinished(): Promise<string[]> {
  return readdir(served.folder).then((names) => {
    return names.filter((name) => name.endsWith(".part") && !name.startsWith(".first.bar"));
  });
}

function head(path: string, headers: string): string {
  const { port } = served.playground;
  const first = `PUT /files/content?path=${path}&create=1&overwrite=1 HTTP/1.1\r\nHost: 127.0.0.1:${port}`;
  return `${first}\r\nCookie: ${cookieOf(served.playground)}\r\n${headers}\r\n\r\n`;
}

/** Uploads a text so many times over without announcing how much, and gives the first of the answer. */
function pour(path: string, text: string, times: number): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(served.playground.port, "127.0.0.1", () => {
      socket.write(head(path, "Transfer-Encoding: chunked"));
      for (let sent = 0; sent < times; sent++) socket.write(`${text.length.toString(16)}\r\n${text}\r\n`);
      socket.write("0\r\n\r\n");
    });
    socket.once("data", (answer) => {
      resolve(answer.toString("utf8"));
      socket.destroy();
    });
    socket.on("error", reject);
  });
}

/** Starts an upload of twice the text's length and hangs up after the text. */
function breakOff(path: string, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const socket = connect(served.playground.port, "127.0.0.1", () => {
      socket.write(head(path, `Content-Length: ${text.length * 2}`) + text, () => {
        socket.destroy();
      });
    });
    socket.on("error", reject);
    socket.on("close", () => resolve());
  });
}

/** Listens to the event stream of the server until it is stopped. */
async function listen() {
  const { origin } = served.playground;
  const stopper = new AbortController();
  const response = await fetch(`${origin}/files/changes`, {
    headers: { cookie: cookieOf(served.playground) },
    signal: stopper.signal,
  });
  let text = "";
  const reading = (async () => {
    const decoder = new TextDecoder();
    for await (const part of response.body ?? []) text += decoder.decode(part as Uint8Array);
  })().catch(() => {});
  return {
    text: () => text,
    waitFor: (wanted: string) => expect.poll(() => text, { timeout: 5000 }).toContain(wanted),
    stop: () => {
      stopper.abort();
      return reading;
    },
  };
}

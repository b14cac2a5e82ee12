/**
 * The studies page in a real browser with its real workers, under its real content policy, with the stand-in for the
 * editor's side of a webview. Every request is answered here, and any other is refused.
 */
import { build } from "esbuild";
import type { Page } from "playwright-core";
import { isPageMessage } from "../../extension/studies/messages.ts";
import type { HostMessage, PageMessage, StudyDocument, StudyFile } from "../../extension/studies/protocol.ts";
import { pageDocument } from "../../extension/webview/html.ts";
import { editorOf, launchChromium, STAND_IN } from "../preview/rig.ts";
import type { Theme } from "../preview/themes.ts";

const ORIGIN = "https://studies.test";
const NONCE = "bWFkZS11cC1ub25jZQ";

export interface OpenOptions {
  readonly theme?: Theme;
  readonly width?: number;
  readonly height?: number;
  readonly translations?: Readonly<Record<string, string>>;
  /** A state as an earlier page left it. */
  readonly state?: unknown;
  /** Stands in for the worker's script. */
  readonly worker?: string;
}

export interface StudiesRig {
  open(options?: OpenOptions): Promise<OpenStudies>;
  close(): Promise<void>;
}

export interface OpenStudies {
  readonly page: Page;
  send(message: HostMessage | Record<string, unknown>): Promise<void>;
  /** Sends a text as the document, each time with the next version. */
  show(text: string, changes?: Partial<StudyDocument>): Promise<void>;
  said<Type extends PageMessage["type"]>(
    type: Type,
  ): Promise<readonly Extract<PageMessage, { type: Type }>[]>;
  /** What the page has kept for a reload. */
  kept(): Promise<unknown>;
  /** Errors of the script and refusals of the content policy. */
  readonly complaints: readonly string[];
  /** Those so far, which are then forgotten: for tests that provoke them. */
  takeComplaints(): string[];
}

export function fileOf(name: string, text: string): StudyFile {
  return { uri: `file:///bars/${name}`, fileName: name, text };
}

export async function createStudiesRig(): Promise<StudiesRig> {
  const [page, worker] = await Promise.all([
    bundle("extension/studies/page/main.ts"),
    bundle("extension/studies/worker/main.ts"),
  ]);
  const browser = await launchChromium();
  const context = await browser.newContext();
  let options: OpenOptions = {};
  let opened = 0;
  return {
    close: () => browser.close(),
    open: async (next = {}) => {
      options = next;
      opened += 1;
      const complaints: string[] = [];
      const tab = await context.newPage();
      tab.setDefaultTimeout(10_000);
      await tab.setViewportSize({ width: next.width ?? 620, height: next.height ?? 900 });
      await tab.route("**/*", async (route) => {
        const answers: Readonly<Record<string, readonly [type: string, body: string]>> = {
          "/": ["text/html", documentOf(options)],
          "/studies.js": ["text/javascript", page.script],
          "/studies.css": ["text/css", page.style],
          "/studies-worker.js": ["text/javascript", options.worker ?? worker.script],
          "/editor.json": ["application/json", JSON.stringify(editorOf(options))],
        };
        const answer = answers[new URL(route.request().url()).pathname];
        if (!answer) return route.abort();
        return route.fulfill({ contentType: `${answer[0]}; charset=utf-8`, body: answer[1] });
      });
      // What it asks of its own origin before the page's policy stands: the policy names the same origin.
      await tab.addInitScript({ content: STAND_IN });
      tab.on("pageerror", ({ message }) => complaints.push(message));
      tab.on("console", (message) => {
        if (message.type() === "error") complaints.push(message.text());
      });
      await tab.goto(`${ORIGIN}/?${opened}`);
      return openStudies(tab, complaints);
    },
  };
}

function openStudies(page: Page, complaints: string[]): OpenStudies {
  let version = 0;
  const send: OpenStudies["send"] = async (message) => {
    await page.evaluate(`window.postMessage(${JSON.stringify(message)}, "*")`);
  };
  return {
    page,
    complaints,
    takeComplaints: () => complaints.splice(0),
    send,
    show: (text, changes = {}) => {
      version += 1;
      const settings = { version, variant: null, units: "mm", settings: {} } as const;
      return send({ type: "document", document: { ...fileOf("heron.bar", text), ...settings, ...changes } });
    },
    said: async (type) => {
      const messages: unknown = await page.evaluate("window.said");
      const whole = Array.isArray(messages) ? messages.filter(isPageMessage) : [];
      return whole.filter(
        (message): message is Extract<PageMessage, { type: typeof type }> => message.type === type,
      );
    },
    kept: async () =>
      JSON.parse(String(await page.evaluate('sessionStorage.getItem("state" + location.search)'))),
  };
}

async function bundle(entry: string): Promise<{ script: string; style: string }> {
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    format: "iife",
    target: "chrome122",
    outfile: "page.js",
    write: false,
    logLevel: "warning",
  });
  const textOf = (ending: string) => outputFiles.find(({ path }) => path.endsWith(ending))?.text ?? "";
  return { script: textOf(".js"), style: textOf(".css") };
}

function documentOf({ translations = {} }: OpenOptions): string {
  return pageDocument({
    scriptUri: `${ORIGIN}/studies.js`,
    styleUri: `${ORIGIN}/studies.css`,
    cspSource: ORIGIN,
    nonce: NONCE,
    title: "heron.bar",
    language: "en",
    worker: true,
    data: { worker: `${ORIGIN}/studies-worker.js`, translations: JSON.stringify(translations) },
  });
}

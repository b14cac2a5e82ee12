/**
 * The page in a real browser, under its real content policy, with a stand-in for the editor's side of a webview. No
 * server: every request is answered here, and any other is refused. One tab serves all, for a new one costs most of a
 * second.
 */
import { build } from "esbuild";
import { type Browser, chromium, type Page } from "playwright-core";
import { previewHtml } from "../../extension/preview/html.ts";
import { isPageMessage } from "../../extension/preview/messages.ts";
import type { HostMessage, PageMessage, PlanePoint, View } from "../../extension/preview/protocol.ts";
import type { PreviewStrings } from "../../extension/preview/strings.ts";
import { THEMES, type Theme } from "./themes.ts";

const ORIGIN = "https://preview.test";
const NONCE = "bWFkZS11cC1ub25jZQ";

export interface OpenOptions {
  readonly theme?: Theme;
  readonly width?: number;
  readonly height?: number;
  readonly reducedMotion?: boolean;
  readonly forcedColors?: boolean;
  readonly strings?: Partial<PreviewStrings>;
  /** A state as an earlier page left it. */
  readonly state?: unknown;
}

export interface Rig {
  /** The script as it is shipped: bundled and minified. */
  readonly script: string;
  open(options?: OpenOptions): Promise<OpenPage>;
  close(): Promise<void>;
}

export interface OpenPage {
  readonly page: Page;
  /** Say something as the host would. */
  send(message: HostMessage | Record<string, unknown>): Promise<void>;
  /** Send a view and wait until it is drawn. */
  show(view: View, units?: "mm" | "in"): Promise<void>;
  /** What the page has said, of one kind. */
  said<Type extends PageMessage["type"]>(
    type: Type,
  ): Promise<readonly Extract<PageMessage, { type: Type }>[]>;
  /** A computed style of the first element of a selector. */
  styleOf(selector: string, property: string): Promise<string>;
  /** Where a place of the drawing, in mm, stands on the screen. */
  screenOf(place: PlanePoint): Promise<PlanePoint>;
  /** Errors of the script and refusals of the content policy. */
  readonly complaints: readonly string[];
  /** Two frames: what was asked for in one is drawn in the next. */
  settle(): Promise<void>;
}

export async function createRig(): Promise<Rig> {
  const { script, style } = await bundlePage();
  const browser = await launchChromium();
  const page = await browser.newPage();
  let options: OpenOptions = {};
  let complaints: string[] = [];
  let opened = 0;
  await page.route("**/*", async (route) => {
    const answer = answersOf(options, script, style)[new URL(route.request().url()).pathname];
    if (!answer) return route.abort();
    return route.fulfill({ contentType: `${answer[0]}; charset=utf-8`, body: answer[1] });
  });
  await page.addInitScript({ content: STAND_IN });
  page.on("pageerror", ({ message }) => complaints.push(message));
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });

  return {
    script,
    close: () => browser.close(),
    open: async (next = {}) => {
      options = next;
      complaints = [];
      opened += 1;
      await page.mouse.move(0, 0);
      await page.setViewportSize({ width: next.width ?? 620, height: next.height ?? 900 });
      await page.emulateMedia({
        reducedMotion: next.reducedMotion ? "reduce" : "no-preference",
        forcedColors: next.forcedColors ? "active" : "none",
      });
      await page.goto(`${ORIGIN}/?${opened}`);
      return openPage(page, complaints);
    },
  };
}

/** Chromium without a sandbox, drawing in software. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env["BARWRIGHT_CHROMIUM"] ?? "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
    ],
  });
}

async function bundlePage(): Promise<{ script: string; style: string }> {
  const { outputFiles } = await build({
    entryPoints: ["extension/preview/page/main.ts"],
    bundle: true,
    minify: true,
    format: "iife",
    target: "chrome122",
    outfile: "preview.js",
    write: false,
    logLevel: "warning",
  });
  const textOf = (ending: string) => outputFiles.find(({ path }) => path.endsWith(ending))?.text ?? "";
  return { script: textOf(".js"), style: textOf(".css") };
}

function answersOf(options: OpenOptions, script: string, style: string) {
  const answers: Readonly<Record<string, readonly [type: string, body: string]>> = {
    "/": ["text/html", documentOf(options)],
    "/preview.js": ["text/javascript", script],
    "/preview.css": ["text/css", style],
    // What the stand-in reads before the page's own script runs.
    "/editor.json": ["application/json", JSON.stringify(editorOf(options))],
  };
  return answers;
}

function documentOf({ strings = {} }: OpenOptions): string {
  return previewHtml({
    scriptUri: `${ORIGIN}/preview.js`,
    styleUri: `${ORIGIN}/preview.css`,
    cspSource: ORIGIN,
    nonce: NONCE,
    title: "wattlebird.bar",
    language: "en",
    strings,
  });
}

/** What the stand-in for the editor puts on a page. */
export function editorOf({
  theme = THEMES[0],
  reducedMotion,
  state,
}: Pick<OpenOptions, "theme" | "reducedMotion" | "state">) {
  const bodyClass = [theme?.bodyClass, reducedMotion ? "vscode-reduce-motion" : ""].join(" ").trim();
  return { bodyClass, variables: theme?.variables ?? {}, state: state ?? null };
}

/** What the editor does to a webview: colours on the root, a class on the body, and its API. */
export const STAND_IN = `
  const request = new XMLHttpRequest();
  request.open("GET", "/editor.json", false);
  request.send();
  const editor = JSON.parse(request.responseText);
  const key = "state" + location.search;
  window.said = [];
  window.acquireVsCodeApi = () => {
    window.acquireVsCodeApi = () => { throw new Error("acquired twice"); };
    const stored = sessionStorage.getItem(key);
    let kept = stored === null ? editor.state : JSON.parse(stored);
    return {
      postMessage: (message) => window.said.push(structuredClone(message)),
      getState: () => kept,
      setState: (state) => { kept = state; sessionStorage.setItem(key, JSON.stringify(state)); },
    };
  };
  const paint = () => {
    if (!document.documentElement) return;
    for (const [name, value] of Object.entries(editor.variables))
      document.documentElement.style.setProperty("--vscode-" + name, value);
    document.body?.setAttribute("class", editor.bodyClass);
  };
  paint();
  new MutationObserver((_, observer) => { paint(); if (document.body) observer.disconnect(); })
    .observe(document, { childList: true, subtree: true });
`;

function openPage(page: Page, complaints: readonly string[]): OpenPage {
  const settle = async () => {
    await page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");
  };
  const send = async (message: HostMessage | Record<string, unknown>) => {
    await page.evaluate(`window.postMessage(${JSON.stringify(message)}, "*")`);
    await settle();
  };
  return {
    page,
    complaints,
    settle,
    send,
    show: (view, units = "mm") => send({ type: "view", view, units }),
    said: async (type) => {
      const messages: unknown = await page.evaluate("window.said");
      const whole = Array.isArray(messages) ? messages.filter(isPageMessage) : [];
      return whole.filter(
        (message): message is Extract<PageMessage, { type: typeof type }> => message.type === type,
      );
    },
    styleOf: async (selector, property) =>
      String(
        await page.evaluate(
          `getComputedStyle(document.querySelector(${JSON.stringify(selector)}))[${JSON.stringify(property)}]`,
        ),
      ),
    screenOf: async ({ x, y }) => {
      const place = await page.evaluate(
        `(() => {
          const { a, b, c, d, e, f } = document.querySelector(".plane").getScreenCTM();
          return { x: a * ${x} - c * ${y} + e, y: b * ${x} - d * ${y} + f };
        })()`,
      );
      return place as PlanePoint;
    },
  };
}

/**
 * Runs in the page: loads the workbench's scripts and opens the served folder in it. The workbench is an AMD build;
 * its own start script would ask for a product file and could not open a file.
 */
import type { PageSettings } from "../protocol.ts";
import { FOLDER_SCHEME } from "../protocol.ts";

/** The parts of the AMD loader and the workbench that are used here. */
interface AmdLoader {
  (modules: readonly string[], done: (...loaded: never[]) => void, failed: (error: unknown) => void): void;
  config(options: Record<string, unknown>): void;
}

interface WorkbenchModule {
  create(element: HTMLElement, options: Record<string, unknown>): unknown;
}

interface Uri {
  toString(): string;
}

interface UriModule {
  readonly URI: { from(parts: Record<string, string>): Uri; parse(text: string): Uri };
}

interface PageWindow {
  readonly require: AmdLoader;
  readonly webPackagePaths: Record<string, string>;
  readonly trustedTypes?: {
    createPolicy(name: string, rules: { createScriptURL(value: string): string }): unknown;
  };
}

const page = window as unknown as PageWindow;
const { origin, port } = window.location;
const workbenchRoot = `${origin}/workbench`;

/** The settings that make a quiet, predictable editor: nothing is sent, nothing pops up, saving is the user's act. */
const PLAYGROUND_SETTINGS = {
  "workbench.startupEditor": "none",
  "workbench.welcomePage.walkthroughs.openOnInstall": false,
  "telemetry.telemetryLevel": "off",
  "files.autoSave": "off",
  "extensions.ignoreRecommendations": true,
  "workbench.enableExperiments": false,
};

void start();

async function start(): Promise<void> {
  configureLoader();
  await loadScript(`${workbenchRoot}/out/vs/workbench/workbench.web.main.nls.js`);
  await loadScript(`${workbenchRoot}/out/vs/workbench/workbench.web.main.js`);
  const [workbench, uris] = await loadModules();
  workbench.create(document.body, workbenchOptions(readSettings(), uris.URI));
}

function readSettings(): PageSettings {
  const text = document.getElementById("page-settings")?.textContent ?? "{}";
  return JSON.parse(text) as PageSettings;
}

function configureLoader(): void {
  const paths = page.webPackagePaths;
  for (const [name, file] of Object.entries(paths)) {
    paths[name] = `${workbenchRoot}/node_modules/${name}/${file}`;
  }
  const trustedTypesPolicy = page.trustedTypes?.createPolicy("amdLoader", {
    createScriptURL: (value) => {
      if (value.startsWith(origin)) return value;
      throw new Error(`A script of another origin was asked for: ${value}`);
    },
  });
  page.require.config({ baseUrl: `${workbenchRoot}/out`, recordStats: true, trustedTypesPolicy, paths });
}

function loadScript(address: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = address;
    script.onload = () => resolve();
    script.onerror = () => reject(new Error(`${address} cannot be loaded.`));
    document.head.append(script);
  });
}

function loadModules(): Promise<[WorkbenchModule, UriModule]> {
  return new Promise((resolve, reject) => {
    page.require(
      ["vs/workbench/workbench.web.main", "vs/base/common/uri"],
      (workbench: WorkbenchModule, uris: UriModule) => resolve([workbench, uris]),
      reject,
    );
  });
}

/**
 * Whether this tab has shown the editor before. Then it brings back what was open, which it does not while it is told
 * what to open.
 */
function isReload(): boolean {
  const isKnown = sessionStorage.getItem("barwright.opened") !== null;
  sessionStorage.setItem("barwright.opened", "yes");
  return isKnown;
}

function workbenchOptions(settings: PageSettings, uri: UriModule["URI"]): Record<string, unknown> {
  const folderPath = `/${settings.folderName}`;
  const folderUri = uri.from({ scheme: FOLDER_SCHEME, path: folderPath });
  const openUri = uri.from({ scheme: FOLDER_SCHEME, path: `${folderPath}${settings.open ?? ""}` });
  return {
    additionalBuiltinExtensions: [uri.parse(`${origin}/folder-extension`), uri.parse(`${origin}/barwright`)],
    webviewEndpoint: `http://{{uuid}}.localhost:${port}/workbench/out/vs/workbench/contrib/webview/browser/pre/`,
    enableWorkspaceTrust: false,
    workspaceProvider: {
      workspace: { folderUri },
      trusted: true,
      payload: settings.open === null || isReload() ? [] : [["openFile", openUri.toString()]],
      // Another folder or window cannot be opened here.
      open: async () => false,
    },
    configurationDefaults: { ...PLAYGROUND_SETTINGS, ...settings.settings },
    productConfiguration: {
      nameShort: "Barwright playground",
      nameLong: "Barwright playground",
      enableTelemetry: false,
      extensionEnabledApiProposals: { "barwright-playground.folder": ["fileSearchProvider"] },
    },
  };
}

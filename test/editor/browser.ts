import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import process from "node:process";
import type { Browser } from "playwright-core";
import { chromium } from "playwright-core";

const PROGRAM_NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

const ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // Takes the place of Playwright's own list, which holds ThirdPartyStoragePartitioning: without that feature the
  // service worker of a webview is denied and every webview stays empty.
  "--disable-features=Translate",
  // No name but this machine's resolves: whatever wants to leave fails, and is seen to.
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost, EXCLUDE *.localhost",
];

/** Starts the installed Chromium without a window and without a network. Throws where none is installed. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: findChromium(), args: ARGUMENTS });
}

function findChromium(): string {
  const folders = (process.env["PATH"] ?? "").split(delimiter);
  const places = PROGRAM_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  const found = places.find((place) => existsSync(place));
  if (found === undefined) throw new Error(`The editor tests need one of: ${PROGRAM_NAMES.join(", ")}.`);
  return found;
}

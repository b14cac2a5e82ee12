/** `npx tsx scripts/draw-icon.ts`: draws `extension/icon.png`, 128 × 128, from the shape below with Chromium. */
import { resolve } from "node:path";
import { launchBrowser } from "../test/editor/browser.ts";

const ROOT = resolve(import.meta.dirname, "..");
const SIZE = 128;

/** A two-toothed bar about its bore on its tip circle, in a frame of 128 units. */
const PICTURE = `
<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE}" height="${SIZE}" viewBox="-64 -64 128 128">
  <rect x="-64" y="-64" width="128" height="128" rx="24" fill="#1f2a33"/>
  <circle r="52" fill="none" stroke="#5c7282" stroke-width="2" stroke-dasharray="7 6"/>
  <g transform="rotate(-32)">
    <path fill="#f2b134" d="M52 0 L38 0 Q35 0 34 3 L31 13 Q29 17 25 17 L-41 17 Q-45 17 -46 14 L-52 0
      L-38 0 Q-35 0 -34 -3 L-31 -13 Q-29 -17 -25 -17 L41 -17 Q45 -17 46 -14 Z"/>
    <circle r="9" fill="#1f2a33"/>
    <circle cx="21" r="3.5" fill="#1f2a33"/>
    <circle cx="-21" r="3.5" fill="#1f2a33"/>
  </g>
</svg>`;

const browser = await launchBrowser();
const page = await browser.newPage({ viewport: { width: SIZE, height: SIZE } });
await page.setContent(`<body style="margin:0">${PICTURE}</body>`);
await page.screenshot({ path: resolve(ROOT, "extension/icon.png"), omitBackground: true });
await browser.close();

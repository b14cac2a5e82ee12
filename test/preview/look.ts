/**
 * Pictures of the page, to be looked at: `npx tsx test/preview/look.ts`. Each theme, narrow and wide, with dimensions,
 * stale, and with the colours forced by the system; written to a temporary folder whose name is printed.
 */
import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { View } from "../../extension/preview/protocol.ts";
import { madeUpView } from "./made-up-view.ts";
import { createRig, type OpenOptions, type OpenPage } from "./rig.ts";
import { sampleNames, sampleText, showText } from "./sample-view.ts";
import { THEMES } from "./themes.ts";

interface Shot {
  readonly name: string;
  readonly options: OpenOptions;
  readonly view?: () => View;
  readonly before?: (preview: OpenPage) => Promise<unknown>;
}

const [light, dark] = THEMES;
const SHOTS: readonly Shot[] = [
  ...THEMES.map((theme) => ({ name: theme.name, options: { theme, height: 1250 } })),
  {
    name: "wide",
    options: { ...(dark && { theme: dark }), width: 1280, height: 860 },
    before: ({ page }) => page.getByLabel("Dimensions").check(),
  },
  { name: "narrow", options: { ...(light && { theme: light }), width: 250, height: 1400 } },
  {
    name: "dimensions",
    options: { ...(light && { theme: light }), width: 760, height: 700 },
    before: async ({ page, settle }) => {
      await page.getByLabel("Dimensions").check();
      await settle();
    },
  },
  {
    name: "stale",
    options: { ...(dark && { theme: dark }), height: 700 },
    before: ({ show }) => show(madeUpView({ version: 2, stale: true })),
  },
  {
    name: "reading",
    options: { ...(light && { theme: light }), height: 1250 },
    before: ({ page }) => page.locator(".chart").hover({ position: { x: 360, y: 80 } }),
  },
  {
    name: "dragging",
    options: { ...(dark && { theme: dark }), height: 700 },
    before: async ({ page, settle }) => {
      const box = await page.locator(".handle").nth(1).boundingBox();
      if (!box) return;
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.move(box.x + 30, box.y - 24);
      await settle();
    },
  },
  ...THEMES.flatMap((theme) => [
    {
      name: `approach-${theme.name}`,
      options: { theme, width: 420, height: 1900 },
      view: () => showText(against("brass-limpet-one-tooth", "round 6 mm offset 15 mm")).output.view,
      before: openBite,
    },
    {
      name: `bite-${theme.name}`,
      options: { theme, width: 1500, height: 900 },
      view: () => showText(against("quiet-kettle-disc", "face")).output.view,
      before: openBite,
    },
  ]),
  ...sampleNames().map((name) => ({
    name,
    options: { ...(dark && { theme: dark }), width: 700, height: 1000 },
    view: () => showText(sampleText(name)).output.view,
    before: ({ page }: OpenPage) => page.getByLabel("Dimensions").check(),
  })),
  { name: "forced", options: { ...(light && { theme: light }), forcedColors: true, height: 1250 } },
];

function against(name: string, target: string): string {
  return sampleText(name).replace("target edge", `target ${target}`);
}

async function openBite({ page, settle }: OpenPage): Promise<void> {
  await page.locator("summary", { hasText: "One approach" }).click();
  await page.locator("summary", { hasText: "What strikes first" }).click();
  await settle();
}

const folder = await mkdtemp(join(tmpdir(), "barwright-look-"));
const wanted = process.argv.slice(2);
const rig = await createRig();
for (const { name, options, view = madeUpView, before } of SHOTS) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const preview = await rig.open(options);
  await preview.show(view());
  await before?.(preview);
  await preview.settle();
  await preview.page.screenshot({ path: join(folder, `${name}.png`) });
  for (const complaint of preview.complaints) process.stderr.write(`${name}: ${complaint}\n`);
}
await rig.close();
process.stdout.write(`${folder}\n`);

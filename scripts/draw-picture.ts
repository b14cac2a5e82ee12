/** Takes the README's picture: the real editor, a sample bar, its preview beside it. Run: `npx tsx scripts/draw-picture.ts`. */
import { mkdir } from "node:fs/promises";
import { resolve } from "node:path";
import { openEditor } from "../test/editor/harness.ts";
import { openPreview } from "../test/editor/preview-view.ts";
import { HERON } from "../test/editor/samples.ts";

const PICTURE = resolve(import.meta.dirname, "../extension/media/preview.png");

const editor = await openEditor({
  files: { "pickled-heron-two-tooth.bar": HERON },
  open: "pickled-heron-two-tooth.bar",
  viewport: { width: 1500, height: 860 },
});
try {
  await editor.waitForLens("kg");
  const preview = await openPreview(editor);
  await preview.waitForFigure("Mass", "1.051");
  await mkdir(resolve(PICTURE, ".."), { recursive: true });
  await editor.page.screenshot({ path: PICTURE });
} finally {
  await editor.close();
}

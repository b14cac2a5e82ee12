import type { Frame, FrameLocator, Locator } from "playwright-core";
import type { Editor } from "./harness.ts";

/** Drawing anew takes milliseconds on a quiet machine; a busy one needs more. */
const UPDATE_MS = 15_000;

/** What the preview page shows, and ways to use it as its reader does. */
export interface PreviewView {
  readonly frame: FrameLocator;
  readonly title: Locator;
  /** The edges of the drawing; those of the cursor's place have the class `marked`. */
  readonly edges: Locator;
  readonly handles: Locator;
  readonly staleBadge: Locator;
  /** Waits until a key figure reads so, such as `Mass` and `1.051 kg`. */
  waitForFigure(label: string, value: string): Promise<void>;
  /** The frame itself, to run scripts in. */
  frameOf(): Promise<Frame>;
}

/** Opens the preview of the active editor and waits until it is drawn. */
export async function openPreview(editor: Editor): Promise<PreviewView> {
  await editor.runCommand("Barwright: Open Preview Beside");
  const view = viewPreview(editor);
  await view.edges.first().waitFor({ state: "attached", timeout: 60_000 });
  return view;
}

/** The preview that is in view. */
export function viewPreview(editor: Editor): PreviewView {
  const frame = editor.previewFrame();
  return {
    frame,
    title: frame.locator("h1"),
    edges: frame.locator(".edges .edge"),
    handles: frame.locator(".handles > [role=button]"),
    staleBadge: frame.locator(".stale-badge"),
    waitForFigure: (label, value) =>
      keyFigure(frame, label, value).waitFor({ state: "visible", timeout: UPDATE_MS }),
    frameOf: async () => {
      const handle = await frame.locator("body").elementHandle();
      const found = await handle?.ownerFrame();
      if (!found) throw new Error("The preview has no frame.");
      return found;
    },
  };
}

function keyFigure(frame: FrameLocator, label: string, value: string): Locator {
  return frame
    .locator(".key-figure")
    .filter({ has: frame.locator("dt", { hasText: label }) })
    .locator(".key-value", { hasText: value })
    .first();
}

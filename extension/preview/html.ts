import { type PageOptions, pageDocument } from "../webview/html.ts";
import type { PreviewStrings } from "./strings.ts";

export interface PreviewHtmlOptions extends Omit<PageOptions, "data" | "worker"> {
  /** Texts in the reader's language; those left out stay English. */
  readonly strings?: Partial<PreviewStrings>;
}

/** The preview page as a document. */
export function previewHtml({ strings = {}, ...options }: PreviewHtmlOptions): string {
  return pageDocument({ ...options, data: { strings: JSON.stringify(strings) } });
}

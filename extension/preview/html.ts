import type { PreviewStrings } from "./strings.ts";

export interface PreviewHtmlOptions {
  readonly scriptUri: string;
  readonly styleUri: string;
  /** What the editor names as the source of its own files, `webview.cspSource`. */
  readonly cspSource: string;
  /** Fresh for each page, from a secure source. */
  readonly nonce: string;
  readonly title: string;
  /** Language of the texts, such as `en`. */
  readonly language: string;
  /** Texts in the reader's language; those left out stay English. */
  readonly strings?: Partial<PreviewStrings>;
}

/**
 * The page as a document: closed by its content policy to everything but its own script (by nonce) and style sheet.
 * No inline script or style; the texts travel in a data attribute.
 */
export function previewHtml(options: PreviewHtmlOptions): string {
  const { scriptUri, styleUri, nonce, title, language, strings = {} } = options;
  return `<!DOCTYPE html>
<html lang="${attribute(language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${attribute(contentPolicy(options))}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${attribute(styleUri)}">
<title>${attribute(title)}</title>
</head>
<body data-strings="${attribute(JSON.stringify(strings))}">
<script nonce="${attribute(nonce)}" src="${attribute(scriptUri)}"></script>
</body>
</html>
`;
}

/** Everything is forbidden but what is named: no images, fonts, frames, forms or connections at all. */
export function contentPolicy({ cspSource, nonce }: Pick<PreviewHtmlOptions, "cspSource" | "nonce">): string {
  return [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src ${cspSource}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}

function attribute(text: string): string {
  const entities: Readonly<Record<string, string>> = {
    "&": "&amp;",
    "<": "&lt;",
    ">": "&gt;",
    '"': "&quot;",
    "'": "&#39;",
  };
  return text.replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);
}

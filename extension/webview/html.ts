export interface PageOptions {
  readonly scriptUri: string;
  readonly styleUri: string;
  /** What the editor names as the source of its own files, `webview.cspSource`. */
  readonly cspSource: string;
  /** Fresh for each page, from a secure source. */
  readonly nonce: string;
  readonly title: string;
  /** Language of the texts, such as `en`. */
  readonly language: string;
  /** What the page finds on its body, by name: `data-strings` is `strings`. */
  readonly data: Readonly<Record<string, string>>;
  /** Whether the page may fetch the script of a worker from the extension's own files, and start it from a blob. */
  readonly worker?: boolean;
}

/**
 * A page of a webview as a document: closed by its content policy to everything but its own script (by nonce) and style
 * sheet. No inline script or style; what it is given travels in data attributes.
 */
export function pageDocument(options: PageOptions): string {
  const { scriptUri, styleUri, nonce, title, language, data } = options;
  const attributes = Object.entries(data).map(([name, value]) => ` data-${name}="${attribute(value)}"`);
  return `<!DOCTYPE html>
<html lang="${attribute(language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${attribute(contentPolicy(options))}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${attribute(styleUri)}">
<title>${attribute(title)}</title>
</head>
<body${attributes.join("")}>
<script nonce="${attribute(nonce)}" src="${attribute(scriptUri)}"></script>
</body>
</html>
`;
}

/** Everything is forbidden but what is named: no images, fonts, frames or forms, and nothing remote. */
export function contentPolicy({
  cspSource,
  nonce,
  worker = false,
}: Pick<PageOptions, "cspSource" | "nonce" | "worker">): string {
  return [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src ${cspSource}`,
    ...(worker ? ["worker-src blob:", `connect-src ${cspSource}`] : []),
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

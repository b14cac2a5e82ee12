import type { PageSettings } from "./protocol.ts";

/** The page that loads the workbench and hands it the folder; `playground-page.js` (page/start.ts) does the rest. */
export function pageHtml(settings: PageSettings): string {
  // "<" is escaped so that no text in the settings can end the script element.
  const json = JSON.stringify(settings).replaceAll("<", "\\u003c");
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Barwright playground</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="icon" href="/workbench/favicon.ico">
<link rel="stylesheet" href="/workbench/out/vs/workbench/workbench.web.main.css">
</head>
<body aria-label="">
<script type="application/json" id="page-settings">${json}</script>
<script src="/workbench/out/vs/loader.js"></script>
<script src="/workbench/out/vs/webPackagePaths.js"></script>
<script src="/built/playground-page.js"></script>
</body>
</html>
`;
}

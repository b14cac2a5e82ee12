import { describe, expect, it } from "vitest";
import { previewHtml } from "../../extension/preview/html.ts";
import { contentPolicy } from "../../extension/webview/html.ts";

const OPTIONS = {
  scriptUri: "https://files.test/preview.js?a=1&b=2",
  styleUri: "https://files.test/preview.css",
  cspSource: "'self' https://*.files.test",
  nonce: "b25jZQ",
  title: 'a "quoted" <bar>.bar',
  language: "en",
};

describe("the page as a document", () => {
  it("forbids everything but its own script and style sheet", () => {
    const policy = contentPolicy(OPTIONS);
    expect(policy).toBe(
      "default-src 'none'; script-src 'nonce-b25jZQ'; style-src 'self' https://*.files.test; base-uri 'none'; form-action 'none'",
    );
    expect(policy).not.toMatch(/unsafe|https:\/\/\*;|data:|blob:/);
  });

  it("has no inline script, style or handler", () => {
    const html = previewHtml({ ...OPTIONS, strings: { fit: "Fit" } });
    expect(html.match(/<script[^>]*>[^<]*<\/script>/g)).toEqual([
      '<script nonce="b25jZQ" src="https://files.test/preview.js?a=1&amp;b=2"></script>',
    ]);
    expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
  });

  it("lets no text of a file or a translation become markup", () => {
    const html = previewHtml({ ...OPTIONS, strings: { fit: `"><script>alert('1')</script>` } });
    expect(html).not.toContain("<script>");
    expect(html).toContain("<title>a &quot;quoted&quot; &lt;bar&gt;.bar</title>");
    expect(html).toContain(
      "&quot;fit&quot;:&quot;\\&quot;&gt;&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;&quot;",
    );
  });
});

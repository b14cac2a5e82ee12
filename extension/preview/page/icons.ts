import type { Severity } from "../../../geometry/language/problem.ts";
import { svg } from "../../webview/page/dom.ts";

/** The sign of a severity, told apart by its outline as well as its colour; 16 px, middle at (0, 0). */
export function severitySign(severity: Severity): SVGGElement {
  const body = BODIES[severity];
  return svg(
    "g",
    { class: `sign sign-${severity}` },
    svg("path", { class: "sign-body", d: body.outline }),
    svg("path", { class: "sign-mark", d: body.mark }),
  );
}

const BODIES: Readonly<Record<Severity, { outline: string; mark: string }>> = {
  error: {
    outline: "M-2.9-7H2.9L7-2.9V2.9L2.9 7H-2.9L-7 2.9V-2.9Z",
    mark: "M-2.6-2.6L2.6 2.6M2.6-2.6L-2.6 2.6",
  },
  warning: { outline: "M0-7.4L7.8 6.6H-7.8Z", mark: "M0-2.6V2M0 4.1V4.3" },
  information: { outline: "M0-7A7 7 0 1 1 0 7A7 7 0 1 1 0-7Z", mark: "M0-.8V3.6M0-3.5V-3.3" },
};

/** The sign in a box of its own, for lists. */
export function severityIcon(severity: Severity): SVGSVGElement {
  const icon = svg("svg", {
    class: "icon",
    viewBox: "-9 -9 18 18",
    width: 16,
    height: 16,
    "aria-hidden": "true",
  });
  icon.append(severitySign(severity));
  return icon;
}

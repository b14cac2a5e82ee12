/** A small strict reading of the SVG that is written, independent of the writer: well-formed XML and path grammar. */
import type { FoundCurve, FoundVertex } from "../readers/curve-figures.ts";

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

const NAME = "[A-Za-z_][A-Za-z0-9_.-]*";
const ATTRIBUTE = new RegExp(`\\s+(${NAME})="([^"<]*)"`, "gy");
const ENTITIES: Readonly<Record<string, string>> = { "&lt;": "<", "&gt;": ">", "&amp;": "&", "&quot;": '"' };

/** The root of a document; throws on anything that is not well-formed. */
export function parseXml(document: string): Element {
  if (/[^\t\n\r -\uFFFD]/.test(document)) throw new Error("a character that XML does not allow");
  const body = document.replace(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n/, "");
  if (body === document) throw new Error("no XML declaration");
  const top: Element = { name: "", attributes: {}, children: [], text: "" };
  const open = [top];
  let at = 0;
  while (at < body.length) {
    const inner = open.at(-1) ?? top;
    const end = body.indexOf("<", at);
    inner.text += unescaped(body.slice(at, end < 0 ? undefined : end));
    if (end < 0) break;
    const close = body.indexOf(">", end);
    if (close < 0) throw new Error("a tag does not end");
    const tag = body.slice(end + 1, close);
    at = close + 1;
    if (tag.startsWith("/")) {
      if (open.length < 2 || inner.name !== tag.slice(1))
        throw new Error(`</${inner.name}> expected, not <${tag}>`);
      open.pop();
      continue;
    }
    const element = parseTag(tag.replace(/\/$/, ""));
    inner.children.push(element);
    if (!tag.endsWith("/")) open.push(element);
  }
  const [root, ...more] = top.children;
  if (open.length !== 1 || !root || more.length > 0 || top.text.trim() !== "")
    throw new Error("not one closed root");
  return root;
}

function parseTag(tag: string): Element {
  const name = new RegExp(`^${NAME}`).exec(tag)?.[0];
  if (!name) throw new Error(`not a tag: <${tag}>`);
  const attributes: Record<string, string> = {};
  ATTRIBUTE.lastIndex = name.length;
  let at = name.length;
  for (let match = ATTRIBUTE.exec(tag); match; match = ATTRIBUTE.exec(tag)) {
    const [, key = "", value = ""] = match;
    if (key in attributes) throw new Error(`attribute ${key} stands twice`);
    attributes[key] = unescaped(value);
    at = ATTRIBUTE.lastIndex;
  }
  if (at !== tag.length) throw new Error(`not attributes: ${tag.slice(at)}`);
  return { name, attributes, children: [], text: "" };
}

function unescaped(text: string): string {
  return text.replace(/&[^;]*;?/g, (entity) => {
    const letter = ENTITIES[entity];
    if (letter === undefined) throw new Error(`unknown entity ${entity}`);
    return letter;
  });
}

const NUMBER = "-?(?:0|[1-9]\\d*)(?:\\.\\d+)?";
const COMMAND = new RegExp(
  `(?:[ML](${NUMBER}) (${NUMBER})|A(${NUMBER}) (${NUMBER}) 0 0 ([01]) (${NUMBER}) (${NUMBER})|Z)( |$)`,
  "y",
);

/** A path or circle as a curve with y up again: absolute M, L, A without the large-arc flag, and Z, nothing else. */
export function curveOf(element: Element, layer: string): FoundCurve {
  const number = (name: string) => Number(element.attributes[name]);
  if (element.name === "circle")
    return { kind: "circle", layer, x: number("cx"), y: -number("cy"), radius: number("r") };
  const path = element.attributes["d"] ?? "";
  const vertices: FoundVertex[] = [];
  let closed = false;
  let at = 0;
  while (at < path.length) {
    COMMAND.lastIndex = at;
    const match = COMMAND.exec(path);
    if (!match || closed) throw new Error(`not a command: ${path.slice(at, at + 40)}`);
    at = COMMAND.lastIndex;
    const [, x, y, rx, ry, flag, arcX, arcY] = match;
    if (x !== undefined) vertices.push({ x: Number(x), y: -Number(y), bulge: 0 });
    else if (arcX !== undefined) {
      if (rx !== ry) throw new Error("an ellipse");
      const to = { x: Number(arcX), y: -Number(arcY), bulge: 0 };
      const from = vertices.pop();
      if (!from) throw new Error("an arc from nowhere");
      const half = Math.asin(Math.hypot(to.x - from.x, to.y - from.y) / 2 / Number(rx));
      vertices.push({ ...from, bulge: (flag === "0" ? 1 : -1) * Math.tan(half / 2) }, to);
    } else closed = true;
  }
  return { kind: "polyline", layer, closed, vertices: withoutReturn(vertices) };
}

/** After a last arc the path is at its first point already. */
function withoutReturn(vertices: readonly FoundVertex[]): FoundVertex[] {
  const [first] = vertices;
  const last = vertices.at(-1);
  return first && last && first.x === last.x && first.y === last.y ? vertices.slice(0, -1) : [...vertices];
}

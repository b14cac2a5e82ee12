import type { Point } from "../language/design.ts";
import { drawLoop, type PathSink } from "../outline/path-sink.ts";
import type { ArcSegment, Loop, Outline } from "../outline/segment.ts";
import { polar } from "../outline/vector.ts";
import { circleOf } from "./circle-of.ts";
import { COORDINATE_DIGITS, type DrawingUnit, mmPerUnit } from "./drawing-unit.ts";
import { CUT_INNER, CUT_OUTER, MARK } from "./layers.ts";
import { drawnExtents, type Mark, markOf, UNNAMED } from "./mark.ts";
import { plainDecimal } from "./plain-decimal.ts";

export interface SvgOptions {
  readonly units: DrawingUnit;
  /** The part's name: the title, and written on the layer that is not cut. */
  readonly name: string;
}

/** A thousandth of an inch, the width up to which cutters take a line for a path to follow: common practice, no source. */
const HAIRLINE_MM = 0.0254;

/** The layers and their colours, for machines that tell cuts apart by colour. */
const STROKES = { [CUT_OUTER]: "#000000", [CUT_INNER]: "#0000ff", [MARK]: "#00a000" } as const;

/** From the model to the page: y down from the top edge, in the unit of the drawing, as text. */
interface Page {
  readonly width: string;
  readonly height: string;
  length(mm: number): string;
  x(point: Point): string;
  y(point: Point): string;
}

/**
 * An outline as an SVG drawing of true size: one user unit is one unit of length, y is turned down in the coordinates
 * themselves so that no importer has to follow a transform, arcs stay arcs, and the layers are groups of the same
 * names as in the other cut files.
 * @throws RangeError for a coordinate that is not finite
 */
export function toSvg(outline: Outline, { units, name }: SvgOptions): string {
  const label = xmlText(name).trim() || UNNAMED;
  const title = escaped(label);
  const mark = markOf(outline, [...label].length);
  const page = pageOf(outline, mark, units);
  return [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${page.width}${units}" height="${page.height}${units}" viewBox="0 0 ${page.width} ${page.height}">`,
    `  <title>${title}</title>`,
    `  <desc>True size, one unit is 1 ${units}. ${CUT_OUTER} and ${CUT_INNER} are to be cut as drawn, kerf not compensated; ${MARK} is not cut.</desc>`,
    ...layer(CUT_OUTER, page, [curve(outline.outer, page)]),
    ...layer(
      CUT_INNER,
      page,
      outline.inner.map((loop) => curve(loop, page)),
    ),
    ...layer(MARK, page, markShapes(mark, title, page)),
    `</svg>`,
    "",
  ].join("\n");
}

function pageOf(outline: Outline, mark: Mark, units: DrawingUnit): Page {
  const { minX, minY, maxX, maxY } = drawnExtents(outline, mark);
  const length = (mm: number) => plainDecimal(mm / mmPerUnit(units), COORDINATE_DIGITS);
  return {
    width: length(maxX - minX),
    height: length(maxY - minY),
    length,
    x: ({ x }) => length(x - minX),
    y: ({ y }) => length(maxY - y),
  };
}

function layer(name: keyof typeof STROKES, page: Page, shapes: readonly string[]): string[] {
  if (shapes.length === 0) return [];
  const width = page.length(HAIRLINE_MM);
  return [
    `  <g id="${name}" fill="none" stroke="${STROKES[name]}" stroke-width="${width}">`,
    ...shapes.map((shape) => `    ${shape}`),
    `  </g>`,
  ];
}

function curve(loop: Loop, page: Page): string {
  const circle = circleOf(loop);
  if (circle) {
    const { centre, radiusMm } = circle;
    return `<circle cx="${page.x(centre)}" cy="${page.y(centre)}" r="${page.length(radiusMm)}"/>`;
  }
  const path = pathSink(page);
  drawLoop(loop, path);
  return `<path d="${path.commands.join(" ")}"/>`;
}

/** Collects path commands, leaving out pieces whose ends are the same point on the page. */
function pathSink(page: Page): PathSink & { readonly commands: readonly string[] } {
  const commands: string[] = [];
  let last = "";
  const go = (command: string, point: Point) => {
    const at = `${page.x(point)} ${page.y(point)}`;
    if (at !== last) commands.push(`${command}${at}`);
    last = at;
  };
  return {
    commands,
    moveTo: (point) => go("M", point),
    lineTo: (point) => go("L", point),
    arcTo: (arc) => {
      const radius = page.length(arc.radiusMm);
      // Counter-clockwise with y up is what the path grammar calls the negative direction, flag 0.
      const flag = arc.sweepRad > 0 ? 0 : 1;
      for (const end of arcEnds(arc)) go(`A${radius} ${radius} 0 0 ${flag} `, end);
    },
    close: () => commands.push("Z"),
  };
}

/** Rounding in an angle of a few rad; a quarter is not to be split because of its last bit. */
const QUARTER_SLACK = 1e-12;

/**
 * The ends of an arc cut into quarters at most. Readers find the centre again from the ends and the radius, and for an
 * arc of nearly half a circle the last digit of its ends would decide where that is.
 */
function arcEnds({ centre, radiusMm, startRad, sweepRad, to }: ArcSegment): Point[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(sweepRad) / (Math.PI / 2) - QUARTER_SLACK));
  const inner = Array.from({ length: pieces - 1 }, (_, i) =>
    polar(centre, radiusMm, startRad + (sweepRad * (i + 1)) / pieces),
  );
  return [...inner, to];
}

function markShapes({ cross, name }: Mark, title: string, page: Page): string[] {
  const lines = cross.map(
    ([from, to]) => `<line x1="${page.x(from)}" y1="${page.y(from)}" x2="${page.x(to)}" y2="${page.y(to)}"/>`,
  );
  const size = page.length(name.heightMm);
  const text = `<text x="${page.x(name.at)}" y="${page.y(name.at)}" font-family="sans-serif" font-size="${size}" fill="${STROKES[MARK]}" stroke="none">${title}</text>`;
  return [...lines, text];
}

/** What the grammar of XML 1.0 does not allow at all is left out. */
function xmlText(text: string): string {
  return [...text]
    .filter((letter) => /[\t\n\r -\uD7FF\uE000-\uFFFD]/.test(letter) || letter.length === 2)
    .join("");
}

function escaped(text: string): string {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
}

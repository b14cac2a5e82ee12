/** Where strikes land, as SVG path data in mm. */
import type { KindOfStrike } from "../../../../geometry/bite/bite.ts";
import { pieceOf } from "../../../../geometry/outline/trim.ts";
import { segmentPath } from "../../../webview/page/path-data.ts";
import type { DrawnSegment } from "../../protocol.ts";

/** The struck parts of a segment; at a corner a path of no length, which a cap makes a dot. */
export function strikePath({ place, parts }: KindOfStrike, segments: readonly DrawnSegment[]): string {
  const segment = segments[place.index];
  if (!segment) return "";
  const { to, source } = segment;
  if (place.kind === "corner") return segmentPath({ kind: "line", from: to, to, source });
  return parts.map(({ least, most }) => segmentPath(pieceOf(segment, least, most))).join("");
}

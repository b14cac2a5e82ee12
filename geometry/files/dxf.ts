import type { Outline } from "../outline/segment.ts";
import type { DrawingUnit } from "./drawing-unit.ts";
import { drawingOf } from "./dxf/drawing.ts";
import { renderGroups } from "./dxf/group.ts";
import { release2000 } from "./dxf/release-2000.ts";
import { releaseR12 } from "./dxf/release-r12.ts";

/** Release 2000 (AC1015), or release 12 (AC1009) for the oldest readers. */
export type DxfRelease = "2000" | "r12";

export interface DxfOptions {
  readonly release: DxfRelease;
  readonly units: DrawingUnit;
  /** The part's name, written on the layer that is not cut. */
  readonly name: string;
}

const RELEASES = { "2000": release2000, r12: releaseR12 } as const;

/**
 * An outline as a cut file: 1:1, one closed curve a loop with its arcs as arcs, on the layers CUT_OUTER and
 * CUT_INNER; on MARK, which is not cut, a cross on the spin axis and the name. ASCII with LF, and the same bytes for
 * the same input. Check the text with `verifyCut` before it is handed out.
 * @throws RangeError for a coordinate that is not finite
 */
export function toDxf(outline: Outline, { release, units, name }: DxfOptions): string {
  return renderGroups(RELEASES[release](drawingOf(outline, name, units)));
}

import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { lengthNumber, lengthText } from "../../../webview/page/units.ts";
import type { Drawing, DrawnLoop, PlanePoint } from "../../protocol.ts";
import { fill, type PreviewStrings } from "../../strings.ts";

/** A dimension to draw. Places in mm. */
export type Dimension =
  /** A span drawn out to a side of the bar. */
  | {
      readonly kind: "span";
      readonly from: PlanePoint;
      readonly to: PlanePoint;
      readonly outTo: "below" | "left";
      readonly label: string;
    }
  /** The radius of the tip circle, drawn away from the tip where there is room. */
  | { readonly kind: "radius"; readonly radiusMm: number; readonly angleRad: number; readonly label: string }
  /** A label above the bar with a leader to a hole. */
  | { readonly kind: "hole"; readonly at: PlanePoint; readonly label: string };

/** The dimensions worth a look: extent, tip radius, and for each kind of round hole its diameter, count and radius. */
export function dimensionsOf(drawing: Drawing, units: UnitSystem, strings: PreviewStrings): Dimension[] {
  return [
    ...extents(drawing, units, strings),
    tipRadius(drawing, units, strings),
    ...holes(drawing, units, strings),
  ];
}

function extents({ boundsMm }: Drawing, units: UnitSystem, strings: PreviewStrings): Dimension[] {
  const [x0, y0, x1, y1] = boundsMm;
  const corner = { x: x0, y: y0 };
  const wide = fill(strings.extentWide, lengthText(x1 - x0, units));
  const high = fill(strings.extentHigh, lengthText(y1 - y0, units));
  return [
    { kind: "span", from: corner, to: { x: x1, y: y0 }, outTo: "below", label: wide },
    { kind: "span", from: corner, to: { x: x0, y: y1 }, outTo: "left", label: high },
  ];
}

/** An eighth of a turn behind the tip: past a bar's own arm, before the next. */
const BEHIND_TIP_RAD = Math.PI / 4;

function tipRadius({ tips, maxRadiusMm }: Drawing, units: UnitSystem, strings: PreviewStrings): Dimension {
  const tip = tips[0] ?? { x: 1, y: 0 };
  return {
    kind: "radius",
    radiusMm: maxRadiusMm,
    angleRad: Math.atan2(tip.y, tip.x) - BEHIND_TIP_RAD,
    label: fill(strings.tipRadius, lengthText(maxRadiusMm, units)),
  };
}

/** More labels than this would hide the bar. */
const MOST_LABELS = 8;

interface RoundHole {
  readonly centre: PlanePoint;
  readonly diameterMm: number;
  readonly fromAxisMm: number;
}

function holes({ loops }: Drawing, units: UnitSystem, strings: PreviewStrings): Dimension[] {
  const groups = new Map<string, RoundHole[]>();
  for (const hole of loops.flatMap(roundHole)) {
    // Alike to what the label shows.
    const key = [hole.diameterMm, hole.fromAxisMm].map((mm) => lengthNumber(mm, units)).join(" ");
    groups.set(key, [...(groups.get(key) ?? []), hole]);
  }
  return [...groups.values()].slice(0, MOST_LABELS).flatMap((group) => holeLabel(group, units, strings));
}

function roundHole({ kind, segments }: DrawnLoop): RoundHole[] {
  const [circle] = segments;
  if (kind === "outer" || circle?.kind !== "arc" || segments.length > 1) return [];
  const { centre, radiusMm } = circle;
  return [{ centre, diameterMm: 2 * radiusMm, fromAxisMm: Math.hypot(centre.x, centre.y) }];
}

function holeLabel(group: readonly RoundHole[], units: UnitSystem, strings: PreviewStrings): Dimension[] {
  const [first] = group;
  if (!first) return [];
  const { centre, diameterMm, fromAxisMm } = first;
  const diameter = lengthText(diameterMm, units);
  const size =
    group.length > 1 ? fill(strings.holeCount, group.length, diameter) : fill(strings.holeDiameter, diameter);
  const place = fill(strings.atRadius, lengthText(fromAxisMm, units));
  return [{ kind: "hole", at: centre, label: fromAxisMm < 1e-6 ? size : `${size} ${place}` }];
}

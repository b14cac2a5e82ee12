import { fixed } from "../figures/present.ts";
import type { DrilledHole } from "../study/drilling/request.ts";

const HEAD = "hole,drill,radius_mm,angle_deg,x_mm,y_mm,full_depth_mm,point_depth_mm,mass_g";

/** A drilling table as CSV (RFC 4180), in mm; the depth of the point is empty for a through hole. */
export function drillCsv(holes: readonly DrilledHole[]): string {
  const rows = holes.map(({ drill, radiusMm, angleDeg, centre, fullDepthMm, pointDepthMm, massG }, i) =>
    [
      i + 1,
      drill.text,
      fixed(radiusMm, 4),
      fixed(angleDeg, 1),
      fixed(centre.x, 4),
      fixed(centre.y, 4),
      fixed(fullDepthMm, 4),
      pointDepthMm === null ? "" : fixed(pointDepthMm, 4),
      fixed(massG, 4),
    ].join(","),
  );
  return `${[HEAD, ...rows].join("\r\n")}\r\n`;
}

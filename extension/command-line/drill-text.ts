/** A drilling plan in a terminal: at most 80 columns. */
import type { Analysis } from "../../geometry/analysis/analyse.ts";
import { fixed, number, presentMeasure, type UnitSystem } from "../../geometry/figures/present.ts";
import type { DrillResult } from "../../geometry/study/drilling/drill.ts";
import { DRILL_CAUTIONS } from "../../geometry/study/drilling/drill-cautions.ts";
import { addedMass } from "../../geometry/study/drilling/remedy.ts";
import type { DrillAim, DrilledHole, DrilledState, Drilling } from "../../geometry/study/drilling/request.ts";
import { shopSteps } from "../../geometry/study/drilling/shop-steps.ts";
import { cautionsText } from "./cautions-text.ts";
import { paint } from "./paint.ts";
import { oneLine } from "./problem-line.ts";
import type { Terminal } from "./world.ts";
import { MOST_COLUMNS, wrap } from "./wrap.ts";

export interface DrillTextOptions {
  readonly units: UnitSystem;
  readonly isMeasured: boolean;
  readonly terminal: Terminal;
}

/** Lay a drilling plan out for a terminal. */
export function drillText(result: DrillResult, analysis: Analysis, options: DrillTextOptions): string {
  const { terminal, units } = options;
  const drilling = result.solved ? result.drilling : result.nearest;
  const blocks = [
    heading(analysis, terminal),
    result.before && result.aim ? nowBlock(result.before, result.aim, options) : "",
    result.solved ? "" : wrap(`Not solved: ${result.message}`, "").join("\n"),
    drilling && drilling.holes.length > 0 ? holeTable(drilling.holes, options) : "",
    result.solved && result.drilling.holes.length === 0 ? "Within that already: nothing to drill." : "",
    drilling && drilling.holes.length > 0 && result.before
      ? afterBlock(result.before, drilling, options)
      : "",
    result.before ? insteadBlock(result.before.after, analysis, units) : "",
    drilling && drilling.holes.length > 0 ? cautionsText(terminal, DRILL_CAUTIONS) : "",
  ];
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

function heading({ design, variant }: Analysis, terminal: Terminal): string {
  const name = `${design.name ?? "Unnamed bar"}${variant === null ? "" : ` – ${variant}`}`;
  const rule = "─".repeat(Math.min(terminal.columns, MOST_COLUMNS));
  return [paint(oneLine(`${name}: drilled to balance`), "bold", terminal), paint(rule, "dim", terminal)].join(
    "\n",
  );
}

const LABEL_WIDTH = 18;

function row(label: string, text: string): string {
  const [first = "", ...more] = wrap(text, " ".repeat(LABEL_WIDTH + 2));
  return [`  ${label.padEnd(LABEL_WIDTH)}${first.trimStart()}`, ...more].join("\n");
}

function nowBlock(before: Drilling, aim: DrillAim, { units, isMeasured }: DrillTextOptions): string {
  const { angleDeg } = before.after;
  const side = angleDeg === null ? "nowhere" : `at ${fixed(angleDeg, 1)}°`;
  return [
    row("Heavy side", `${side}, ${isMeasured ? "as measured" : "as the outline has it"}`),
    row("Now", balanceText(before.after, units)),
    row("Wanted", `${aim.text}, which is at most ${imbalanceText(aim.neededGMm, units)}`),
  ].join("\n");
}

function balanceText({ gradeMmPerS, imbalanceGMm, eccentricityMm }: DrilledState, units: UnitSystem): string {
  const grade = gradeMmPerS === null ? "" : `G${number(gradeMmPerS, 3)}, `;
  return `${grade}${imbalanceText(imbalanceGMm, units)}, centroid ${number(eccentricityMm, 3)} mm off the axis`;
}

function imbalanceText(imbalanceGMm: number, units: UnitSystem): string {
  const { text, unit } = presentMeasure("imbalance", imbalanceGMm, units);
  return `${text} ${unit}`;
}

const COLUMNS = [4, 10, 10, 9, 11, 11, 9, 8, 8] as const;

function holeTable(holes: readonly DrilledHole[], { units, terminal }: DrillTextOptions): string {
  const { unit, mmPerUnit, decimals } = shopSteps(units === "in");
  const length = (mm: number, digits = decimals): string => (mm / mmPerUnit).toFixed(digits);
  const line = (cells: readonly string[]) => cells.map((cell, i) => cell.padStart(COLUMNS[i] ?? 9)).join("");
  const heads = [
    line(["", "drill", "radius", "angle", "x", "y", "depth", "point", "mass"]),
    line(["", "", unit, "deg", unit, unit, unit, unit, "g"]),
  ];
  const lines = holes.map(({ drill, radiusMm, angleDeg, centre, fullDepthMm, pointDepthMm, massG }, i) =>
    line([
      String(i + 1),
      drill.text,
      length(radiusMm),
      angleDeg.toFixed(1),
      length(centre.x, decimals + 1),
      length(centre.y, decimals + 1),
      pointDepthMm === null ? "through" : length(fullDepthMm),
      pointDepthMm === null ? "" : length(pointDepthMm),
      number(massG, 3),
    ]),
  );
  const notes = holes.some(({ pointDepthMm }) => pointDepthMm !== null)
    ? "Depth is to the full diameter, point to the tip of the drill, both from the face drilled. "
    : "";
  return [
    ...heads.map((head) => paint(head, "dim", terminal)),
    ...lines,
    "",
    ...wrap(`${notes}Radius from the spin axis, angle counter-clockwise from +x, as drawn.`, "  "),
  ].join("\n");
}

function afterBlock(before: Drilling, drilling: Drilling, { units }: DrillTextOptions): string {
  const { after, takenG, coupleGMm2 } = drilling;
  const mass = presentMeasure("mass", after.massKg, units);
  const inertia = presentMeasure("inertia", after.inertiaKgM2, units);
  const share = (after.inertiaKgM2 / before.after.inertiaKgM2 - 1) * 100;
  const energy = after.energyJ === null ? "" : `, energy ${number(after.energyJ, 4)} J`;
  return [
    row("After", balanceText(after, units)),
    row("Taken", `${number(takenG, 4)} g; mass then ${mass.text} ${mass.unit}`),
    row("Moment of inertia", `${inertia.text} ${inertia.unit} (${number(share, 2)} %)${energy}`),
    ...(coupleGMm2 > 0
      ? [row("Couple left", `${number(coupleGMm2, 3)} g·mm² if all are drilled from one face`)]
      : []),
  ].join("\n");
}

function insteadBlock(before: DrilledState, { assessment }: Analysis, units: UnitSystem): string {
  const radiusMm = assessment.section?.maxRadiusMm ?? 0;
  const added = addedMass(before, radiusMm);
  if (!added) return "";
  const { text, unit } = presentMeasure("length", radiusMm, units);
  return row(
    "Or add",
    `${number(added.massG, 3)} g at the largest radius, ${text} ${unit}, at ${fixed(added.angleDeg, 1)}°; ` +
      "nearer the axis more, in proportion",
  );
}

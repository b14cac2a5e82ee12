/**
 * The test-day sheet: one printed page to take to the test box. What a measured speed means, the limits with their
 * margins, and the steps in which people get hurt, to be ticked off.
 */
import type { Analysis } from "../analysis/analyse.ts";
import { requirementLabel, type Standing, standingOf } from "../analysis/judge.ts";
import { number, presentMeasure, type UnitSystem } from "../figures/present.ts";
import { energyJ, tipSpeedMPerS } from "../figures/spin.ts";
import type { Requirement } from "../language/design.ts";
import { statedLimits } from "../language/stated-limits.ts";
import { CAUTIONS } from "./cautions.ts";
import { escapeText, markdownTable } from "./markdown-table.ts";
import { join, summaryOf } from "./report.ts";

/** What the bar does at a part of its spin; null where it is not known. */
export interface SheetStep {
  readonly rpm: number;
  readonly tipMPerS: number | null;
  readonly energyJ: number | null;
  /** The closing speed up to which it bites clean. */
  readonly cleanMPerS: number | null;
}

const MOST_STEPS = 10;
const ROUND = [1, 2, 2.5, 5, 10];
/** A last step this near to the spin is the spin. */
const NEAR = 1e-9;

/**
 * Round speeds up to the spin of the file and the spin itself: ten at most. Tip speed goes with the spin, energy with its
 * square; what strikes first depends on closing speed over spin alone, so that clean bite goes with the spin too.
 */
export function sheetSteps({ design: { spin }, section, mass, bite }: Analysis["assessment"]): SheetStep[] {
  if (spin === null) return [];
  const clean = bite?.clean.closingMPerS ?? null;
  return roundRpm(spin.rpm).map((rpm) => {
    const share = rpm / spin.rpm;
    const radPerS = spin.radPerS * share;
    return {
      rpm,
      tipMPerS: section ? tipSpeedMPerS(section.maxRadiusMm, radPerS) : null,
      energyJ: mass ? energyJ(mass.inertiaKgM2, radPerS) : null,
      cleanMPerS: clean === null ? null : clean * share,
    };
  });
}

function roundRpm(most: number): number[] {
  const rough = most / MOST_STEPS;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * (ROUND.find((factor) => factor * power >= rough * (1 - NEAR)) ?? 10);
  const count = Math.floor((most / step) * (1 + NEAR));
  const steps = Array.from({ length: count }, (_, i) => (i + 1) * step);
  return Math.abs((steps.at(-1) ?? 0) - most) <= NEAR * most ? steps : [...steps, most];
}

/** How figures go with the spin: with this power of it. */
const POWERS: Readonly<Record<string, number>> = {
  tipSpeedMPerS: 1,
  energyJ: 2,
  balanceGrade: 1,
  cleanBiteMPerS: 1,
  teethOnlyMPerS: 1,
};

/**
 * The spin at which a limit is just met, in rpm; null for figures that do not go with the spin, and where nothing is
 * known.
 */
export function rpmAtLimit({ figure, value, limit }: Standing, rpm: number | null): number | null {
  const power = POWERS[figure.key];
  if (power === undefined || rpm === null || value === null || !(value > 0) || !(limit > 0)) return null;
  return rpm * (limit / value) ** (1 / power);
}

/** The page as Markdown; about sixty lines, which fit on A4 and on letter paper. */
export function testDaySheet(analysis: Analysis, system: UnitSystem): string {
  const { title, variant, subtitle } = summaryOf(analysis, system);
  const blocks = [
    `# Test-day sheet: ${escapeText(variant === null ? title : `${title} – ${variant}`)}`,
    escapeText(subtitle),
    "Date ____________  Place ____________________  In charge of safety ____________________",
    speedBlock(analysis, system),
    limitBlock(analysis, system),
    spinDownBlock(analysis),
    list("Before anything is plugged in", INSPECTION),
    list("Power on, spin, power off", STEPS),
    `The order is common practice, no source; where the event, the site or its inspector has another, theirs holds.`,
    `## Take care\n\n${CAUTIONS.map((caution) => `- ${caution}`).join("\n")}`,
  ];
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

function speedBlock({ assessment }: Analysis, system: UnitSystem): string {
  const steps = sheetSteps(assessment);
  if (steps.length === 0) return "The file has no spin: there are no speeds to tell.";
  const shown = (measure: "speed" | "energy", value: number | null) =>
    join(presentMeasure(measure, value, system));
  const rows = steps.map(({ rpm, tipMPerS, energyJ: energy, cleanMPerS }) => [
    `${number(rpm, 6)} rpm`,
    shown("speed", tipMPerS),
    shown("energy", energy),
    shown("speed", cleanMPerS),
    "",
  ]);
  const head = ["Measured", "Tip speed", "Energy of the bar", "Clean bite up to", "Noise, shaking, heat"];
  return markdownTable("What a measured speed means", head, rows);
}

function limitBlock({ design, assessment }: Analysis, system: UnitSystem): string {
  const rows = statedLimits(design).flatMap((stated) => {
    const standing = standingOf(stated, assessment);
    return standing === null ? [] : [limitRow(stated, standing, design.spin?.rpm ?? null, system)];
  });
  if (rows.length === 0) return "";
  return markdownTable("Limits at full spin", ["Limit", "Value", "Margin", "Met at", "Verdict"], rows);
}

function limitRow(stated: Requirement, standing: Standing, rpm: number | null, system: UnitSystem): string[] {
  const { figure, value, limit, margin, holds } = standing;
  const measure = stated.atMPerS === null ? (figure.measure ?? "count") : "length";
  const show = (amount: number | null) => join(presentMeasure(measure, amount, system));
  const side = stated.relation === "<=" ? "at most" : "at least";
  const met = rpmAtLimit(standing, rpm);
  return [
    `${requirementLabel(stated, figure)} ${side} ${show(limit)}`,
    show(value),
    // The difference of two grades is no grade.
    margin === null ? "–" : measure === "grade" ? number(margin, 3) : show(margin),
    met === null ? "–" : `${number(met, 4)} rpm`,
    holds === null ? "not known" : holds ? "met" : "NOT MET",
  ];
}

function spinDownBlock({ design: { event } }: Analysis): string {
  const measured = event?.measuredSpinDownS ?? null;
  const limit = event?.limits.find(({ figure, relation }) => figure === "spin_down" && relation === "<=");
  const known = [
    measured === null ? "" : ` The file says ${number(measured, 4)} s.`,
    limit === undefined ? "" : ` The event allows ${number(limit.limit.value, 4)} s.`,
  ];
  return `Spin-down today: from __________ rpm to standstill in __________ s.${known.join("")}`;
}

function list(title: string, items: readonly string[]): string {
  return `## ${title}\n\n${items.map((item) => `- [ ] ${item}`).join("\n")}`;
}

const INSPECTION: readonly string[] = [
  "Bar: no crack at the bore, the holes, the corners and the roots of the teeth; clean it and look under a light.",
  "Bolts of the bar and its hub: all there, tight, marked across with paint.",
  "Axle and bearings: straight, no play, the bar turns by hand without a rub.",
  "Belt or gears: tension, teeth, nothing loose that the bar can reach.",
  "Battery, wires and connectors: no dent, swelling, cut or loose plug; nothing near the bar.",
  "Weapon lock: fits, holds by hand, and is in.",
];

const STEPS: readonly string[] = [
  "Lock in before power; nobody in the plane of the bar; eyes and ears covered.",
  "Radio on first, weapon at zero; lose the signal with the lock in: everything has to stop.",
  "Into the test box or arena; power on with the lock in; lock out last; out, and the door shut.",
  "Arm from outside. Up through the table step by step; note each; stop at new noise, shaking or smell.",
  "Stop: weapon at zero, time the spin-down, wait until the bar stands still. Disarm from outside.",
  "Lock in before any other work; then power off and the battery out. Look for cracks again.",
];

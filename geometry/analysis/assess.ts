import { biteAt, biteCurve, biteProfile, cleanBite } from "../bite/bite.ts";
import type { Assessment, BiteAssessment } from "../figures/assessment.ts";
import { massOf } from "../figures/mass.ts";
import { type Section, sectionOf } from "../figures/section.ts";
import type { Settings } from "../figures/settings.ts";
import type { Design } from "../language/design.ts";
import type { Outline } from "../outline/segment.ts";

/** What the region checks found: a loop that crosses itself has no area, an axis outside has no bite. */
export interface Soundness {
  readonly isSimple: boolean;
  readonly holdsAxis: boolean;
}

/** Measure a design: everything that can be known from what is there, `null` for the rest. */
export function assess(
  design: Design,
  outline: Outline | null,
  { isSimple, holdsAxis }: Soundness,
  settings: Settings,
): Assessment {
  const section = outline && isSimple ? soundSection(outline) : null;
  const { thicknessMm, densityKgPerM3 } = design;
  const mass =
    section && thicknessMm && densityKgPerM3 !== null
      ? massOf(section, thicknessMm.value, densityKgPerM3)
      : null;
  const bite = outline && isSimple && holdsAxis ? assessBite(design, outline, settings) : null;
  return { design, settings, outline, section, mass, bite };
}

/** Holes far outside can take more away than there is: that is no plate. */
function soundSection(outline: Outline): Section | null {
  const section = sectionOf(outline);
  return section.areaMm2 > 0 ? section : null;
}

function assessBite(design: Design, outline: Outline, settings: Settings): BiteAssessment | null {
  const { spin, target } = design;
  // Faces, rounded edges and offset approaches are other questions than an edge on the axis: no figure is better
  // than the wrong one.
  if (!spin || target.kind !== "edge" || target.offsetMm !== 0) return null;
  const profile = biteProfile(outline.outer, spin.direction);
  const spinning = { radPerS: spin.radPerS, squareStrikeRad: (settings.squareStrikeDeg * Math.PI) / 180 };
  const [defaultFrom, defaultTo] = settings.approachMPerS;
  const { fromMPerS, toMPerS } = design.approach ?? { fromMPerS: defaultFrom, toMPerS: defaultTo };
  return {
    teeth: profile.teeth(spinning.squareStrikeRad),
    clean: cleanBite(profile, spinning),
    curve: biteCurve(profile, { ...spinning, fromMPerS, toMPerS, count: settings.biteSpeeds }),
    at: (closingMPerS) => biteAt(profile, { ...spinning, closingMPerS }),
  };
}

import { biteAt, biteCurve, biteProfile, cleanBite } from "../bite/bite.ts";
import type { Assessment, BiteAssessment } from "../figures/assessment.ts";
import { massOf } from "../figures/mass.ts";
import { sectionOf } from "../figures/section.ts";
import type { Settings } from "../figures/settings.ts";
import type { Design } from "../language/design.ts";
import type { Outline } from "../outline/segment.ts";

/**
 * Measure a design: everything that can be known from what is there, `null` for the rest.
 * @param sound whether the outline may be studied for bite: simple, with the spin axis inside
 */
export function assess(
  design: Design,
  outline: Outline | null,
  sound: boolean,
  settings: Settings,
): Assessment {
  const section = outline ? sectionOf(outline) : null;
  const { thicknessMm, densityKgPerM3 } = design;
  const mass =
    section && thicknessMm && densityKgPerM3 !== null
      ? massOf(section, thicknessMm.value, densityKgPerM3)
      : null;
  const bite = outline && sound ? assessBite(design, outline, settings) : null;
  return { design, settings, outline, section, mass, bite };
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

import { biteAt, biteCurve, biteProfile, cleanBite, meetingReachMm, teethOnly } from "../bite/bite.ts";
import type { Assessment, BiteAssessment } from "../figures/assessment.ts";
import { type FightAssessment, fightOf } from "../figures/fight.ts";
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

/**
 * Measure a design: everything that can be known from what is there, `null` for the rest. The bite is worked out when it
 * is first looked at, for those who vary a bar a thousand times and want its mass.
 */
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
  let bite: BiteAssessment | null | undefined;
  let fight: FightAssessment | undefined;
  return {
    design,
    settings,
    outline,
    section,
    mass,
    get bite() {
      if (bite === undefined)
        bite =
          outline && section && holdsAxis ? assessBite(design, outline, section.maxRadiusMm, settings) : null;
      return bite;
    },
    get fight() {
      fight ??= fightOf({ design, outline, section, mass });
      return fight;
    },
  };
}

/** Holes far outside can take more away than there is: that is no plate. */
function soundSection(outline: Outline): Section | null {
  const section = sectionOf(outline);
  return section.areaMm2 > 0 ? section : null;
}

function assessBite(
  design: Design,
  outline: Outline,
  maxRadiusMm: number,
  settings: Settings,
): BiteAssessment | null {
  const { spin, target } = design;
  // A line that passes the bar by never meets it: no figure is better than a wrong one.
  if (!spin || Math.abs(target.offsetMm) >= meetingReachMm(target, maxRadiusMm)) return null;
  const profile = biteProfile(outline.outer, spin.direction, target);
  const spinning = { radPerS: spin.radPerS, squareStrikeRad: (settings.squareStrikeDeg * Math.PI) / 180 };
  const [defaultFrom, defaultTo] = settings.approachMPerS;
  const { fromMPerS, toMPerS } = design.approach ?? { fromMPerS: defaultFrom, toMPerS: defaultTo };
  let curve: BiteAssessment["curve"] | null = null;
  return {
    profile,
    fromMPerS,
    toMPerS,
    teeth: profile.teeth(spinning.squareStrikeRad).teeth,
    clean: cleanBite(profile, spinning),
    teethOnly: teethOnly(profile, spinning),
    get curve() {
      curve ??= biteCurve(profile, { ...spinning, fromMPerS, toMPerS, count: settings.biteSpeeds });
      return curve;
    },
    at: (closingMPerS) => biteAt(profile, { ...spinning, closingMPerS }),
  };
}

/** Plain advice on the bite, each with its reason: nothing that is wrong, but what a builder would want to know. */
import {
  advanceMmPerRad,
  closingMPerS,
  isPlainEdge,
  type OtherStrike,
  type Place,
  shortTeeth,
} from "../bite/bite.ts";
import type { Assessment, BiteAssessment } from "../figures/assessment.ts";
import { number } from "../figures/present.ts";
import type { Point, Spin } from "../language/design.ts";
import type { Problem } from "../language/problem.ts";
import type { ProblemCode } from "../language/problem-codes.ts";
import type { TextRange } from "../language/text.ts";
import type { Outline } from "../outline/segment.ts";

/** What the bite study knows of one bar. */
interface Study {
  readonly bite: BiteAssessment;
  readonly outline: Outline;
  readonly spin: Spin;
  /** The fastest closing speed of the file, and its advance in mm per radian. */
  readonly fastestMPerS: number;
  readonly advanceMm: number;
  readonly squareStrikeRad: number;
}

/** Advice for the closing speeds of the file. */
export function advise({ bite, outline, design: { spin }, settings }: Assessment): Problem[] {
  if (!bite || !outline || !spin) return [];
  const fastestMPerS = bite.toMPerS;
  const advanceMm = advanceMmPerRad({ closingMPerS: fastestMPerS, radPerS: spin.radPerS });
  const squareStrikeRad = (settings.squareStrikeDeg * Math.PI) / 180;
  const study = { bite, outline, spin, fastestMPerS, advanceMm, squareStrikeRad };
  return [...adviseOnOthers(study), ...adviseOnShortTeeth(study)];
}

/** What strikes that is no tooth, within the closing speeds of the file. */
function adviseOnOthers(study: Study): Problem[] {
  const { closingMPerS, endedBy } = study.bite.teethOnly;
  const { place, point } = endedBy ?? {};
  if (!endedBy || !place || !point || !closingMPerS || closingMPerS >= study.fastestMPerS) return [];
  const from = `from ${number(closingMPerS, 3)} m/s at ${number(study.spin.rpm, 5)} rpm`;
  const plain = isPlainEdge(study.bite.profile.target);
  if (endedBy.part === "back") {
    const message = `The back of a tooth strikes first at ${told(point)} ${from}.${plain ? reliefAdvice(study, closingMPerS) : ""}`;
    return [information("relief-too-small", rangeOf(study, place), message)];
  }
  const message = `The bar strikes first at ${told(point)}, which is no tooth, ${from}.${plain ? lengthAdvice(study, endedBy) : ""}`;
  return [information("struck-beside-teeth", rangeOf(study, place), message)];
}

/** A target that comes κ nearer for each radian falls by atan(κ/R) below the tip circle where it clears the tip. */
function reliefAdvice({ bite, spin, advanceMm, fastestMPerS }: Study, closingMPerS: number): string {
  const angle = (advance: number) => (Math.atan(advance / bite.profile.rimMm) * 180) / Math.PI;
  const has = number(angle(advanceMmPerRad({ closingMPerS, radPerS: spin.radPerS })), 3);
  const needs = number(angle(advanceMm), 3);
  return ` Its relief behind the tip comes to ${has}°; for ${number(fastestMPerS, 3)} m/s it takes ${needs}°.`;
}

function lengthAdvice({ bite, advanceMm, fastestMPerS }: Study, { behindRad, belowMm }: OtherStrike): string {
  const rim = bite.profile.rimMm;
  const allowed = rim - advanceMm * behindRad;
  if (allowed <= 0) return "";
  const now = number(rim - belowMm, 4);
  return ` It is ${now} mm from the spin axis there; at ${number(allowed, 4)} mm it would stay clear up to ${number(fastestMPerS, 3)} m/s.`;
}

/** Teeth that a longer one keeps from striking. */
function adviseOnShortTeeth(study: Study): Problem[] {
  const { bite, spin, advanceMm, squareStrikeRad } = study;
  if (!isPlainEdge(bite.profile.target)) return [];
  return shortTeeth(bite.profile, squareStrikeRad, advanceMm).map(
    ({ point, place, shortMm, fromAdvanceMm }) => {
      const when =
        fromAdvanceMm === null
          ? `does not strike up to ${number(study.fastestMPerS, 3)} m/s`
          : `strikes only from ${number(closingMPerS(fromAdvanceMm, spin.radPerS), 3)} m/s`;
      const message =
        `The tooth at ${told(point)} is ${number(shortMm, 3)} mm shorter than the longest one` +
        ` and ${when} at ${number(spin.rpm, 5)} rpm.`;
      return information("short-tooth", rangeOf(study, place), message);
    },
  );
}

function told({ x, y }: Point): string {
  const whole = (value: number) => number(Math.abs(value) < 0.005 ? 0 : value, 4);
  return `(${whole(x)}, ${whole(y)}) mm`;
}

function rangeOf({ outline }: Study, { index }: Place): TextRange {
  return outline.outer.segments[index]?.source ?? outline.outer.source;
}

function information(code: ProblemCode, range: TextRange, message: string): Problem {
  return { severity: "information", code, message, range, fixes: [] };
}

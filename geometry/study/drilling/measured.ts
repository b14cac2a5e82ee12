import { ANGLE, IMBALANCE, LENGTH, MASS } from "../../language/dimension.ts";
import type { Dimension } from "../../language/quantity.ts";
import { quantityOfText } from "../../language/quantity-text.ts";
import type { HeavySpot } from "./request.ts";

export type MeasuredText =
  | { readonly ok: true; readonly heavySpot: HeavySpot }
  | { readonly ok: false; readonly message: string };

const SHAPE = 'what a balancing stand says, such as "2.4 g at 110 mm, 35 deg" or "264 g*mm at 35 deg"';

/**
 * What a balancing stand says is too heavy, and where: a mass at a radius and an angle, or a mass times a radius at an
 * angle. Values are read as a file reads them.
 */
export function measuredOfText(text: string): MeasuredText {
  const wrong = (message: string): MeasuredText => ({ ok: false, message });
  const [what, where, ...more] = text.split(/\bat\b/);
  if (what === undefined || where === undefined || more.length > 0) return wrong(`Expected ${SHAPE}.`);
  const comma = where.lastIndexOf(",");
  const isMoment = comma < 0;
  const heavy = readValue(what, isMoment ? IMBALANCE : MASS);
  const radius = isMoment ? { value: 1 } : readValue(where.slice(0, comma), LENGTH);
  const angle = readValue(where.slice(comma + 1), ANGLE);
  for (const found of [heavy, radius, angle])
    if ("message" in found) return wrong(`${found.message}. Expected ${SHAPE}.`);
  if (!("value" in heavy) || !("value" in radius) || !("value" in angle)) return wrong(`Expected ${SHAPE}.`);
  if (heavy.value < 0 || radius.value < 0) return wrong("What is too heavy cannot be less than nothing.");
  const turned = (angle.value * 180) / Math.PI;
  const angleDeg = turned - 360 * Math.floor(turned / 360);
  return { ok: true, heavySpot: { imbalanceGMm: heavy.value * radius.value * G_PER_KG, angleDeg } };
}

/** The language counts in kilograms and millimetres. */
const G_PER_KG = 1000;

function readValue(
  text: string,
  dimension: Dimension,
): { readonly value: number } | { readonly message: string } {
  const read = quantityOfText(text, dimension);
  return read.ok ? { value: read.quantity.value } : { message: read.message.replace(/\.$/, "") };
}

/** A drill by its diameter and by the name on its shank. */
export interface DrillSize {
  readonly diameterMm: number;
  /** `6.5 mm`, `1/4 in`. */
  readonly text: string;
}

const MM_PER_INCH = 25.4;

/**
 * Whole and half millimetres from 3 to 13 mm: what a shop has in its rack and a 13 mm chuck takes. All of them are
 * jobber series sizes of ISO 235 and BS 328 (which makes every tenth from 3.0 to 13.9 mm); which of them are in the
 * rack is common practice, no source.
 */
export const METRIC_DRILLS: readonly DrillSize[] = Array.from({ length: 21 }, (_, i) =>
  metricDrill(3 + i / 2),
);

/**
 * Fractional inches from 1/8 to 1/2 in by thirty-seconds: jobber drills of ANSI B94.11M, which makes every
 * sixty-fourth; the choice is common practice, no source.
 */
export const INCH_DRILLS: readonly DrillSize[] = Array.from({ length: 13 }, (_, i) => inchDrill(4 + i, 32));

export function metricDrill(diameterMm: number): DrillSize {
  return { diameterMm, text: `${Number(diameterMm.toFixed(4))} mm` };
}

function inchDrill(parts: number, of: number): DrillSize {
  const common = greatestCommon(parts, of);
  return { diameterMm: (parts / of) * MM_PER_INCH, text: `${parts / common}/${of / common} in` };
}

function greatestCommon(a: number, b: number): number {
  return b === 0 ? a : greatestCommon(b, a % b);
}

/** A drill of any diameter, named by its fraction where it is a sixty-fourth of an inch and inches are spoken. */
export function drillOf(diameterMm: number, inches: boolean): DrillSize {
  if (!inches) return metricDrill(diameterMm);
  const parts = (diameterMm / MM_PER_INCH) * 64;
  const isFraction = Math.abs(parts - Math.round(parts)) < 1e-6 && parts < 64;
  if (isFraction) return inchDrill(Math.round(parts), 64);
  return { diameterMm, text: `${Number((diameterMm / MM_PER_INCH).toFixed(5))} in` };
}

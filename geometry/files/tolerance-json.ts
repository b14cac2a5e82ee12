import type { ToleranceResult } from "../study/tolerance/tolerance.ts";

/** A tolerance study as one plain object with stable keys, units in the names; unknown is `null`. */
export function toleranceJson(result: ToleranceResult) {
  if (!result.ok) return { ok: false as const, reason: result.reason, message: result.message };
  const { study } = result;
  const { plate, cut, wedgeMm, edges, spread, parts, seed } = study.given;
  return {
    ok: true as const,
    given: {
      plate: plate.text,
      thicknessLowerMm: plate.lowerMm,
      thicknessUpperMm: plate.upperMm,
      withinPlateMm: plate.withinPlateMm,
      wedgeAcrossBarMm: wedgeMm,
      cut: cut.text,
      edges,
      spread,
      parts,
      seed,
    },
    nominalGMm: study.nominalGMm,
    imbalanceGMm: study.imbalanceGMm,
    eccentricityMm: study.eccentricityMm,
    balanceGrade: study.grade,
    massKg: study.massKg,
    expectedMomentGMm: [study.expected.mean.x, study.expected.mean.y],
    expectedCovarianceG2Mm2: { xx: study.expected.xx, xy: study.expected.xy, yy: study.expected.yy },
    causes: study.causes,
    wanted: study.wanted,
    within: study.within,
    byGrade: study.byGrade,
    takeOffG: study.takeOffG,
    takeOffAtRadiusMm: study.atRadiusMm,
    stockMm: study.stockMm,
    histogram: study.histogram,
  };
}

import type { WearResult, WearRow } from "../study/wear/wear.ts";

/** A wear study as one plain object with stable keys, units in the names; unknown is `null`. */
export function wearJson(result: WearResult) {
  if (!result.ok) return { ok: false as const, reason: result.reason, message: result.message };
  const { model, teeth, tips, closingMPerS, rows, wanted, leavesBalanceAtMm } = result.study;
  return {
    ok: true as const,
    model,
    teeth,
    tipsMm: tips.map(({ x, y }) => [x, y]),
    closingMPerS,
    wanted,
    leavesBalanceAtMm,
    rows: rows.map(rowJson),
  };
}

function rowJson({ byMm, bar }: WearRow) {
  if (!bar) return { byMm, isSound: false as const };
  const { outline: _, ...figures } = bar;
  return { byMm, isSound: true as const, ...figures };
}

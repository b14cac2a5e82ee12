export interface Spread {
  readonly count: number;
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly greatestMs: number;
}

/** Median, 95th percentile and greatest of some times; each is one of them. Throws for none. */
export function spreadOf(timesMs: readonly number[]): Spread {
  const sorted = [...timesMs].sort((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? NaN;
  if (sorted.length === 0) throw new RangeError("nothing was measured");
  return { count: sorted.length, medianMs: at(0.5), p95Ms: at(0.95), greatestMs: at(1) };
}

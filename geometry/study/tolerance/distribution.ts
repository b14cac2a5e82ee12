/** What a sample of parts says. */

export const QUANTILES = [0.5, 0.9, 0.95, 0.99] as const;

export interface Distribution {
  readonly mean: number;
  /** So many of the parts have no more than this: the least value of the sample that holds for them. */
  readonly p50: number;
  readonly p90: number;
  readonly p95: number;
  readonly p99: number;
}

/** Of at least one value. */
export function distributionOf(values: readonly number[]): Distribution {
  const sorted = Float64Array.from(values).sort();
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const [p50 = 0, p90 = 0, p95 = 0, p99 = 0] = QUANTILES.map((share) => quantile(sorted, share));
  return { mean, p50, p90, p95, p99 };
}

/** Nearest rank: the value that the share of the sample does not exceed. */
export function quantile(sorted: Float64Array, share: number): number {
  return sorted[Math.min(sorted.length, Math.max(1, Math.ceil(share * sorted.length))) - 1] ?? Number.NaN;
}

export interface Share {
  readonly share: number;
  /** Between these the share of all parts lies, with 95 % confidence. */
  readonly from: number;
  readonly to: number;
}

const Z_95 = 1.959964;

/** The share of a sample. Source of the interval: E. B. Wilson 1927, for a proportion. */
export function shareOf(count: number, total: number): Share {
  const share = count / total;
  const z2 = (Z_95 * Z_95) / total;
  const middle = (share + z2 / 2) / (1 + z2);
  const half = (Z_95 * Math.sqrt((share * (1 - share)) / total + z2 / (4 * total))) / (1 + z2);
  return { share, from: Math.max(0, middle - half), to: Math.min(1, middle + half) };
}

export interface Bin {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

const BINS = 24;

/** Even bins from 0 to the largest value of 99.5 % of the sample; what is beyond counts into the last. */
export function histogramOf(values: readonly number[]): readonly Bin[] {
  const sorted = Float64Array.from(values).sort();
  const top = quantile(sorted, 0.995);
  if (!(top > 0)) return [{ from: 0, to: 0, count: values.length }];
  const counts = new Array<number>(BINS).fill(0);
  for (const value of values) {
    const bin = Math.min(BINS - 1, Math.floor((value / top) * BINS));
    counts[bin] = (counts[bin] ?? 0) + 1;
  }
  return counts.map((count, i) => ({ from: (i / BINS) * top, to: ((i + 1) / BINS) * top, count }));
}

/** Benches that say what they measured: inputs, median, spread, a checksum of the results, and the ratio to a peer. */
import { Bench } from "tinybench";

export interface BenchCase {
  readonly area: string;
  /** Unique within its area. */
  readonly name: string;
  /** Name of the case of the same area that this one is compared with, measured in the same run. */
  readonly peer?: string;
  /** Least ratio to the peer (its median over this one's): a miss fails the run. */
  readonly target?: number;
  /** What is measured on, where the name does not say it. */
  readonly inputs?: string;
  /** Takes seconds: measured a few times instead of for a while. */
  readonly isLong?: boolean;
  /** Do the work once; the number is made from its result, so that nothing can be left out unseen. */
  run(): number;
}

export interface BenchResult {
  readonly benchCase: BenchCase;
  readonly medianMs: number;
  /** Median absolute deviation from the median, as a share of it. */
  readonly spread: number;
  readonly samples: number;
  readonly checksum: number;
  /** The peer's median over this one's: above 1 this one is faster. */
  readonly ratio: number | null;
}

/** Measured time of each case, after half as long to warm up. */
const TIME_MS = 500;
/** Enough for a median. */
const LONG_RUNS = 3;

/** Measure the cases one after the other. Throws for a peer that is not among them, and for a case that throws. */
export async function measureCases(cases: readonly BenchCase[]): Promise<BenchResult[]> {
  const short = new Bench({ time: TIME_MS, warmupTime: TIME_MS / 2 });
  const long = new Bench({ time: 0, iterations: LONG_RUNS, warmup: false });
  const benchOf = ({ isLong }: BenchCase) => (isLong ? long : short);
  for (const benchCase of cases)
    benchOf(benchCase).add(keyOf(benchCase), () => void benchCase.run(), { async: false });
  await short.run();
  await long.run();
  const latency = (benchCase: BenchCase) => latencyOf(benchOf(benchCase), benchCase);
  const medians = new Map(cases.map((benchCase) => [keyOf(benchCase), latency(benchCase).p50]));
  return cases.map((benchCase) => {
    const { p50, mad, samplesCount } = latency(benchCase);
    const peerMs = peerMedian(benchCase, medians);
    const ratio = peerMs === null ? null : peerMs / p50;
    return {
      benchCase,
      medianMs: p50,
      spread: mad / p50,
      samples: samplesCount,
      checksum: benchCase.run(),
      ratio,
    };
  });
}

function keyOf({ area, name }: Pick<BenchCase, "area" | "name">): string {
  return `${area}: ${name}`;
}

function latencyOf(bench: Bench, benchCase: BenchCase) {
  const result = bench.getTask(keyOf(benchCase))?.result;
  if (result?.state !== "completed") {
    const cause = result?.state === "errored" ? result.error : result?.state;
    throw new Error(`${keyOf(benchCase)} was not measured`, { cause });
  }
  return result.latency;
}

function peerMedian({ area, peer }: BenchCase, medians: ReadonlyMap<string, number>): number | null {
  if (peer === undefined) return null;
  const median = medians.get(keyOf({ area, name: peer }));
  if (median === undefined) throw new Error(`no case "${peer}" in ${area} to compare with`);
  return median;
}

/** Measure the cases and print them as a table. True where every target is met. */
export async function runBench(cases: readonly BenchCase[]): Promise<boolean> {
  const results = await measureCases(cases);
  console.log(tableOf(results));
  const missed = results.filter(
    ({ benchCase: { target }, ratio }) => target !== undefined && !((ratio ?? 0) >= target),
  );
  for (const { benchCase, ratio } of missed)
    console.log(
      `MISSED: ${keyOf(benchCase)} is ${ratio?.toPrecision(3)} times its peer, wanted ${benchCase.target}`,
    );
  return missed.length === 0;
}

const HEADINGS = [
  "case",
  "inputs",
  "median",
  "spread",
  "samples",
  "checksum",
  "× peer",
  "wanted",
  "peer",
] as const;

function tableOf(results: readonly BenchResult[]): string {
  const rows = [HEADINGS, ...results.map(rowOf)];
  const widths = HEADINGS.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

function rowOf({ benchCase, medianMs, spread, samples, checksum, ratio }: BenchResult): readonly string[] {
  const { inputs, target, peer } = benchCase;
  return [
    keyOf(benchCase),
    inputs ?? "",
    durationText(medianMs),
    `±${(100 * spread).toFixed(1)} %`,
    String(samples),
    checksum.toPrecision(12),
    ratio === null ? "" : ratio.toPrecision(3),
    target === undefined ? "" : `≥ ${target.toPrecision(2)}`,
    peer ?? "",
  ];
}

function durationText(ms: number): string {
  if (ms >= 1000) return `${(ms / 1000).toPrecision(3)} s`;
  if (ms >= 1) return `${ms.toPrecision(3)} ms`;
  return `${(ms * 1000).toPrecision(3)} µs`;
}

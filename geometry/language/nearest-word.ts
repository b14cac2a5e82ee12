/** A longer word is no slip of the keyboard, and comparing it would cost time. */
const LONGEST_COMPARED = 32;

/**
 * The candidate that `word` was probably meant to be, or null where none is near. Differences of case alone come
 * first; then the least Damerau-Levenshtein distance (optimal string alignment: insert, delete, change, swap two
 * neighbours). At most one slip is forgiven in a word of up to four letters, two up to eight, three beyond. Of several
 * equally near candidates the first wins.
 */
export function nearestWord(word: string, candidates: Iterable<string>): string | null {
  if (word.length > LONGEST_COMPARED) {
    return null;
  }
  const lower = word.toLowerCase();
  let best: string | null = null;
  let bestDistance = slipsForgiven(word.length) + 1;
  for (const candidate of candidates) {
    const distance = wordDistance(lower, candidate.toLowerCase(), bestDistance);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

function slipsForgiven(length: number): number {
  if (length <= 1) {
    return 0;
  }
  if (length <= 4) {
    return 1;
  }
  return length <= 8 ? 2 : 3;
}

/** Distance of two words; any number not under `limit` may be returned for words at least that far apart. */
function wordDistance(a: string, b: string, limit: number): number {
  if (a === b) {
    return 0;
  }
  // One letter against another, or against nothing, says nothing about what was meant.
  if (Math.min(a.length, b.length) <= 1 || Math.abs(a.length - b.length) >= limit) {
    return limit;
  }
  return alignmentDistance(a, b);
}

/** Optimal string alignment distance, row by row. */
function alignmentDistance(a: string, b: string): number {
  let beforeLast: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row: number[] = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = at(last, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = isSwap ? at(beforeLast, j - 2) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(change, swap, at(last, j) + 1, at(row, j - 1) + 1));
    }
    beforeLast = last;
    last = row;
  }
  return at(last, b.length);
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? Number.POSITIVE_INFINITY;
}

import { compareRatings, type Steps, type Tried } from "./rating.ts";

const FIRST_WIDTH = 1 / 64;
const LEAST_WIDTH = 1e-5;

/**
 * Steps along one let after the other, halved where none is better (Kolda, Lewis and Torczon 2003): the last word at
 * kinks, and along what the checker refuses, where slopes say nothing.
 */
export function* compass(begin: Tried): Steps<Tried> {
  let best = begin;
  let width = FIRST_WIDTH;
  while (width > LEAST_WIDTH) {
    let isMoved = false;
    for (let i = 0; i < best.at.length; i += 1) {
      for (const side of [width, -width]) {
        const at = best.at.map((value, k) => (k === i ? Math.min(1, Math.max(0, value + side)) : value));
        if (at[i] === best.at[i]) continue;
        const rating = yield at;
        if (rating === null || compareRatings(rating, best.rating) >= 0) continue;
        best = { at, rating };
        isMoved = true;
        break;
      }
    }
    if (!isMoved) width /= 4;
  }
  return best;
}

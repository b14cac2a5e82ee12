/** The element of a list that goes round. The list is not empty. */
export function atRound<T>(list: readonly T[], index: number): T {
  const found = list[index] ?? list[((index % list.length) + list.length) % list.length];
  if (found === undefined) throw new RangeError(`no element ${index} in a list of ${list.length}`);
  return found;
}

/** The few of many numbered items that have the least keys. */

/** The `size` numbers below `count` of least key, least first; equal keys in the order of the numbers. */
export function leastOf(count: number, size: number, key: (item: number) => number): number[] {
  const kept: number[] = [];
  const keys: number[] = [];
  if (size < 1) return kept;
  for (let item = 0; item < count; item++) {
    const k = key(item);
    if (kept.length === size && k >= keys[size - 1]!) continue;
    let at = Math.min(kept.length, size - 1);
    for (; at > 0 && keys[at - 1]! > k; at--) [kept[at], keys[at]] = [kept[at - 1]!, keys[at - 1]!];
    [kept[at], keys[at]] = [item, k];
  }
  return kept;
}

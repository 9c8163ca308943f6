/** A figure that differs by more than this from the median of the others is unusual. Common practice, no source. */
const unusualFrom = 0.2
/** Among fewer others there is no saying what is usual. */
const fewestOthers = 4

/**
 * A figure and the median of the same figure of others, where it is far from that; null: it is not, or too little is known.
 *
 *   |own - median| > 0.2 median
 *
 * Checked: tests/domain/signal/compare/besideOthers.spec.ts by hand.
 */
export function besideOthers(
  own: number | null,
  others: readonly (number | null)[],
): { own: number; usual: number } | null {
  const known = others.filter((value) => value !== null).toSorted((a, b) => a - b)
  if (own === null || known.length < fewestOthers) return null
  const usual = (known[(known.length - 1) >> 1]! + known[known.length >> 1]!) / 2
  return Math.abs(own - usual) > unusualFrom * usual ? { own, usual } : null
}

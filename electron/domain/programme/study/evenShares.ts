/**
 * So many blocks taken from boards as evenly as these allow: a board that gives less than an even share gives all it has, and
 * the others share the rest. Numerators over one denominator, for the shares are seldom whole. Throws RangeError where the boards
 * do not give so many.
 */
export function evenShares(gives: readonly number[], blocks: number): { numerators: number[]; denominator: number } {
  const rising = gives.toSorted((one, other) => one - other)
  let left = blocks
  for (const [exhausted, most] of rising.entries()) {
    const open = rising.length - exhausted
    if (most * open >= left) return { numerators: gives.map((one) => Math.min(one * open, left)), denominator: open }
    left -= most
  }
  throw new RangeError(`evenShares requires boards that give ${blocks} blocks`)
}

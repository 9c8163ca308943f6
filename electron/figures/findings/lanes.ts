/**
 * In which lane each of rising places stands so that those of one lane keep `gap` apart: 0 the middle, then one above and
 * one below in turn. Throws RangeError for places that fall.
 */
export function lanesOf(rising: readonly number[], gap: number): number[] {
  const lastOf: number[] = []
  return rising.map((place, index) => {
    if (index > 0 && place < rising[index - 1]!) throw new RangeError('lanesOf requires rising places')
    let slot = 0
    while (slot < lastOf.length && place - lastOf[slot]! < gap) slot += 1
    lastOf[slot] = place
    return slot % 2 === 0 ? slot / 2 : -(slot + 1) / 2
  })
}

/**
 * Below and above which water in wood counts as frozen and as thawed, °C (our choice, no source): the band keeps a reading that
 * trembles about 0 from counting.
 */
export const frozenC = -1
export const thawedC = 1

/** Counts how often a store froze and thawed again. Checked: tests/domain/climate/freezeThaw.spec.ts. */
export function freezeThawCounter(): { push(temperatureC: number): void; cycles(): number } {
  let isFrozen = false
  let cycles = 0
  return {
    push(temperatureC) {
      if (temperatureC <= frozenC) isFrozen = true
      else if (isFrozen && temperatureC >= thawedC) {
        isFrozen = false
        cycles += 1
      }
    },
    cycles: () => cycles,
  }
}

import type { SizeDoubt } from '#domain/programme/glueUp/sizeDoubts.ts'
import type { Quantity } from '../units/quantities.ts'

/** What is asked about the size of a block that was just measured. */
export function sizeDoubtWords(doubt: SizeDoubt, length: Quantity): string {
  if (doubt.kind === 'swapped') return 'Length and width seem to be in each other’s place.'
  if (doubt.kind === 'side-missing') return `The ${doubt.side} is missing: without it there is no area.`
  const { side, mm, expectedMm } = doubt
  const is = `The ${side} is ${length.text(mm)}`
  if (doubt.kind === 'decimal-point') return `${is}: should the point stand elsewhere, ${length.text(doubt.instead)}?`
  if (doubt.kind === 'other-unit') return `${is}: in the other unit it would be ${length.text(doubt.instead)}.`
  if (doubt.kind === 'far') return `${is}, far from ${length.text(expectedMm)}. Measure again?`
  return `${is}, and the middle of all is ${length.text(expectedMm)}. Measure again?`
}

import type { StudyTotals } from '#domain/programme/study/totals.ts'
import { writeNumber } from '../../units/numbers.ts'

const mm3PerLitre = 1e6
const mmPerMetre = 1000

/** Grams of adhesive, as people weigh it out. */
export function gramsWords(grams: number): string {
  return grams >= 1000 ? `${writeNumber(grams / 1000, 2)}\u00a0kg` : `${writeNumber(grams, 1)}\u00a0g`
}

/** Room on a shelf, in litres. */
export function litresWords(mm3: number): string {
  return `${writeNumber(mm3 / mm3PerLitre, 1)}\u00a0litres`
}

/** How much wood a study needs; null: the pieces are not measured. */
export function woodWords({ woodMm, woodMm3 }: Pick<StudyTotals, 'woodMm' | 'woodMm3'>): string | null {
  if (woodMm === null) return null
  const run = `${writeNumber(woodMm / mmPerMetre, 1)}\u00a0m of pieces, without saw cuts`
  return woodMm3 === null ? run : `${run}, ${litresWords(woodMm3)}`
}

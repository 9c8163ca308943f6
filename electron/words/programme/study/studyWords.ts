import type { Series } from '#contract/programme/study.ts'
import type { BlockCounts } from '#contract/programme/studyRecord.ts'
import { gapInWords, joined } from '../../breaks/groupName.ts'
import { countOf } from '../../units/counts.ts'
import { writeCount } from '../../units/numbers.ts'
import type { Quantities } from '../../units/quantities.ts'

/** An age as a heading has it: "at once", "6 months", "2 years". */
export function ageWords(ageMonths: number | null): string {
  if (ageMonths === null) return 'spares'
  if (ageMonths === 0) return 'at once'
  return ageMonths % 12 === 0 && ageMonths > 12 ? `${ageMonths / 12} years` : countOf(ageMonths, 'month')
}

/** How a series differs from the others of its adhesive; '' where nothing is said. */
export function seriesWords({ jointType, gapMm, exposure }: Series, { length }: Quantities): string {
  return joined([jointType, gapMm === 0 ? '' : gapInWords(gapMm, length.text), exposure])
}

/** What became of the blocks of a cell, in a few words each: "12 to glue", or "9 broken" and "2 wait" and "1 lost". */
export function cellParts({ allocated, glued, waiting, broken, lost }: BlockCounts): string[] {
  const parts: [number, string][] = [
    [broken, 'broken'],
    [waiting, waiting === 1 ? 'waits' : 'wait'],
    [lost, 'lost'],
    [allocated - glued, 'to glue'],
  ]
  return parts.filter(([count]) => count > 0).map(([count, word]) => `${writeCount(count)} ${word}`)
}

/** How far a study is: "1,728 blocks: 300 broken, 1,428 wait". */
export function progressWords(counts: BlockCounts): string {
  if (counts.allocated === 0) return 'planned, no block is allocated yet'
  return `${countOf(counts.allocated, 'block')}: ${cellParts(counts).join(', ')}`
}

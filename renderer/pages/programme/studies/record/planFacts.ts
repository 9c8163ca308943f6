import type { Study } from '#contract/programme/study.ts'
import type { StudyRecord } from '#contract/programme/studyRecord.ts'
import { windowWords } from '#words/programme/pullWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { percentWords, writeCount } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'

/** What a plan says besides its groups, line by line; what nobody planned is left out. */
export function planFacts(
  { fields }: Pick<Study, 'fields'>,
  runnings: StudyRecord['runnings'],
  { length, area }: Pick<Quantities, 'length' | 'area'>,
): [name: string, words: string][] {
  const { overlapLengthMm, overlapWidthMm, areaMm2 } = fields
  const overlap =
    overlapLengthMm === null || overlapWidthMm === null
      ? area.text(areaMm2)
      : `${length.text(overlapLengthMm)} × ${length.text(overlapWidthMm)}`
  const facts: [string, string | null][] = [
    ['Blocks a cell', writeCount(fields.blocksPerCell)],
    ['Spares a series', fields.sparesPerSeries === 0 ? null : writeCount(fields.sparesPerSeries)],
    ['Reference', fields.referenceAdhesive],
    ['To be glued on', fields.startOn === null ? null : calendarDayWords(fields.startOn)],
    ['Window of a pull', windowWords(fields.windowDays)],
    ['Overlap', overlapLengthMm === null && areaMm2 === null ? null : overlap],
    ['Wood', fields.wood === '' ? null : fields.wood],
    ['Spread assumed', fields.cvPercent === null ? null : percentWords(fields.cvPercent)],
    ['Short numbers', runnings === null ? null : `${runnings.first} to ${runnings.last}, without check digits`],
    ['Seed', String(fields.seed)],
  ]
  return facts.flatMap(([name, words]) => (words === null ? [] : [[name, words]]))
}

import type { LabelledBlock } from '#contract/programme/labelProcedures.ts'
import { seriesWords } from '#words/programme/pullWords.ts'
import { ageInMonthsWords } from '#words/units/calendarDays.ts'
import type { Label } from './labelSvg.ts'

/** What stands on the label of a block: its number, and what it is of; of a planned block of no age, that it is a spare. */
export function blockLabel({ number, group }: LabelledBlock, planned: boolean): Label {
  if (group === null) return { number, group: '' }
  const { ageMonths, ...series } = group
  const age = ageMonths === null ? (planned ? 'spare' : '') : ageInMonthsWords(ageMonths)
  return { number, group: [seriesWords(series), age].filter((part) => part !== '').join(', ') }
}

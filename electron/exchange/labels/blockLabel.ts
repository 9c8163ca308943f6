import type { LabelledBlock } from '#contract/programme/labelProcedures.ts'
import { seriesWords } from '#words/programme/pullWords.ts'
import { ageInMonthsWords } from '#words/units/calendarDays.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import type { Label } from './labelSvg.ts'

/**
 * What stands on the label of a block: its number, and what it is of; of a planned block of no age, that it is a spare. Age and
 * exposure, which say when and from where it is taken, stand before the joint: what a small label has no room for is cut at the end.
 */
export function blockLabel({ number, group }: LabelledBlock, planned: boolean): Label {
  if (group === null) return { number, group: '' }
  const { adhesive, exposure, ageMonths, ...joint } = group
  const age = ageMonths === null ? (planned ? 'spare' : '') : ageInMonthsWords(ageMonths)
  const rest = seriesWords({ ...joint, adhesive: '', exposure: '' }, quantitiesIn('SI').length)
  return { number, group: [adhesive, age, exposure, rest].filter((part) => part !== '').join(', ') }
}

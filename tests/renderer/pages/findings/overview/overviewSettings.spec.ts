import { expect, it } from 'vitest'
import {
  filterOf,
  firstOverviewSettings,
  levelOf,
  levelText,
  viewOf,
} from '#renderer/pages/findings/overview/overviewSettings.ts'

it('asks for all where nothing is chosen', () => {
  const every = { adhesives: null, jointTypes: null, bondLineGapsMm: null, exposures: null, agesMonths: null }
  expect(filterOf(null, firstOverviewSettings)).toEqual({ studyId: null, ...every })
})
it('asks for the chosen levels, those that are not known too', () => {
  const chosen = { adhesive: 'C1', jointType: 'lap', gap: '0.5', exposure: 'loft', age: levelText(null) }
  expect(filterOf(3, { ...firstOverviewSettings, ...chosen })).toEqual({
    ...{ studyId: 3, adhesives: ['C1'], jointTypes: ['lap'], bondLineGapsMm: [0.5], exposures: ['loft'] },
    agesMonths: [null],
  })
})
it('reads a level back from the text that names it', () => {
  expect([0, 12, 0.25, null].map((level) => levelOf(levelText(level)))).toEqual([0, 12, 0.25, null])
})

it('shows means beside a reference only where one is chosen', () => {
  const chosen = { ...firstOverviewSettings, view: 'means' as const, treatment: 'bond-only' as const }
  expect(viewOf(firstOverviewSettings)).toEqual({ kind: 'blocks' })
  expect(viewOf(chosen)).toEqual({ kind: 'means', woodFailure: 'bond-only', reference: null })
  expect(viewOf({ ...chosen, reference: 'E4' })).toMatchObject({ reference: 'E4' })
})

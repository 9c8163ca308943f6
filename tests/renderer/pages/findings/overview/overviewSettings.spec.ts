import { expect, it } from 'vitest'
import { meanTreatment } from '#contract/findings/overview.ts'
import {
  filterOf,
  firstOverviewSettings,
  levelOf,
  levelText,
  meanTreatments,
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
  const chosen = { ...firstOverviewSettings, view: 'means' as const }
  expect(viewOf(firstOverviewSettings)).toEqual({ kind: 'blocks' })
  expect(viewOf(chosen)).toEqual({ kind: 'means', treatment: meanTreatment.parse({}), reference: null })
  expect(viewOf({ ...chosen, reference: 'E4' })).toMatchObject({ reference: 'E4' })
})

it('takes torn wood as it is chosen, with the usual numbers for what cannot be read', () => {
  const treated = (treatment: string, limitPercent: string, adjustFactor = '0.5') =>
    viewOf({ ...firstOverviewSettings, view: 'means', treatment, limitPercent, adjustFactor })
  expect(treated('Censored, Weibull', '60')).toMatchObject({
    treatment: { woodFailure: 'censored', distribution: 'weibull', limitPercent: 60, adjustFactor: 0.5 },
  })
  expect(treated('Bond failures only', 'half', 'x')).toMatchObject({
    treatment: { woodFailure: 'bond-only', limitPercent: 75, adjustFactor: 1 },
  })
  expect(new Set(meanTreatments.map(({ label }) => label)).size).toBe(meanTreatments.length)
})

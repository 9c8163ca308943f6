import { expect, it, vi } from 'vitest'
import type { StudyFields } from '#contract/programme/study.ts'
import { madeStudy } from '#tests/domain/programme/study/madeStudy.ts'
import { standIn } from '#tests/fakes/time/standIn.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

async function facts(change: Partial<StudyFields>): Promise<Map<string, string>> {
  const { planFacts } = await import('#renderer/pages/programme/studies/record/planFacts.ts')
  const lines = planFacts({ fields: madeStudy(change) }, { first: 7, last: 42 }, quantitiesIn('SI'))
  return new Map(lines.map(([name, words]) => [name, plainText(words)]))
}

it('say the day that was planned, also west of Greenwich', async () => {
  standIn('America/Los_Angeles')
  // Formats are made once, where the program stands then
  vi.resetModules()
  expect((await facts({ startOn: '2031-05-02' })).get('To be glued on')).toBe('2 May 2031')
})

it('say how far from its day a pull may be made', async () => {
  expect((await facts({ windowDays: 0 })).get('Window of a pull')).toBe('On the day itself.')
  expect((await facts({ windowDays: 1 })).get('Window of a pull')).toBe('Up to 1 day early or late.')
})

it('leave out what nobody planned', async () => {
  const none = await facts({ startOn: null, sparesPerSeries: 0, referenceAdhesive: null, wood: '', cvPercent: null })
  for (const name of ['To be glued on', 'Spares a series', 'Reference', 'Wood', 'Spread assumed'])
    expect(none.has(name)).toBe(false)
  const sized = await facts({ overlapLengthMm: 30, overlapWidthMm: 25.4 })
  expect(sized.get('Overlap')).toBe('30 mm x 25.4 mm')
  expect(sized.get('Short numbers')).toBe('7 to 42, without check digits')
})

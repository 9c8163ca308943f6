import { expect, it, vi } from 'vitest'
import { standIn } from '#tests/fakes/time/standIn.ts'

it('says the day that was chosen, also west of Greenwich', async () => {
  standIn('America/Los_Angeles')
  // Formats are made once, where the program stands then
  vi.resetModules()
  const { dueWords } = await import('#words/calibration/dueWords.ts')
  expect(dueWords('2032-05-02')).toBe('2 May 2032')
  expect(dueWords(null)).toBe('no date set')
})

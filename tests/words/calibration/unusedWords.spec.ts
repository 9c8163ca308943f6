import { expect, test } from 'vitest'
import { unusedWords } from '#words/calibration/unusedWords.ts'

const unused = { calibrationId: 3, name: 'Lever, May', device: 'virtual', readingUnit: 'counts' } as const

test('a calibration that is in force and not used says why', () => {
  expect(unusedWords({ ...unused, because: 'not-connected' })).toMatch(/in force and is used as soon as/)
  expect(unusedWords({ ...unused, because: 'other-device' })).toMatch(/made with the virtual amplifier/)
  expect(unusedWords({ ...unused, device: 'serial', because: 'other-device' })).toMatch(/made with a real amplifier/)
  expect(unusedWords({ ...unused, because: 'other-unit' })).toMatch(/for readings in counts/)
})

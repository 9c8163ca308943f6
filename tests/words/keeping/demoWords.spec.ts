import { expect, test } from 'vitest'
import { deviceWords, isSimulated, simulatedBreaksWords } from '#words/keeping/demoWords.ts'

test('a record is simulated when the demo study made it up or the virtual amplifier sent it', () => {
  expect(isSimulated({ demo: true })).toBe(true)
  expect(isSimulated({ demo: false, simulated: true })).toBe(true)
  expect(isSimulated({ demo: false, simulated: false })).toBe(false)
})

test('says how much of an archive nobody measured', () => {
  expect(simulatedBreaksWords(1, 1)).toBe('The one break in it.')
  expect(simulatedBreaksWords(64, 64)).toBe('All 64 breaks in it.')
  expect(simulatedBreaksWords(3, 20)).toMatch(/^3 of its 20 breaks/)
})

test('says of a virtual device that what is found on it is simulated', () => {
  expect(deviceWords('virtual')).toBe('virtual, simulated')
  expect(deviceWords('serial')).toBe('serial')
})

import { expect, it } from 'vitest'
import { wrongAtOpening } from '#words/keeping/openingWords.ts'

const openingTrouble = { code: 'archive-damaged', message: 'Calibration 2 is gone.', hint: 'Take a backup.' } as const

it('says nothing of an archive that is as it should be', () => {
  expect(wrongAtOpening({ chainFinding: null, openingTrouble: null })).toBeNull()
})

it('says a chain that was cut short, what cannot be read, and both together', () => {
  expect(wrongAtOpening({ chainFinding: 'shorter', openingTrouble: null })?.message).toContain('lacks records')
  expect(wrongAtOpening({ chainFinding: null, openingTrouble })).toEqual(openingTrouble)
  const both = wrongAtOpening({ chainFinding: 'shorter', openingTrouble })
  expect(both).toMatchObject({ message: expect.stringMatching(/lacks records.*gone\.$/), hint: 'Take a backup.' })
})

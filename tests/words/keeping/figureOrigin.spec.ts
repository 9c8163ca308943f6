import { expect, it } from 'vitest'
import { figureFileName, figureOrigin, simulatedShare } from '#words/keeping/figureOrigin.ts'

const origin = {
  ...{ archive: 'boats.breakledger', instant: '2026-11-25T12:00:00.000Z', about: 'Calibration 3.' },
  simulated: 'none' as const,
}

it('says archive, day and what is shown', () => {
  expect(figureOrigin(origin)).toEqual(['Archive boats.breakledger, 25 Nov 2026. Calibration 3.'])
  expect(figureOrigin({ ...origin, archive: null })[0]).toMatch(/^25 Nov 2026\./)
})

it('marks what nobody measured', () => {
  expect(figureOrigin({ ...origin, simulated: 'all' })[1]).toMatch(/^Simulated: nobody/)
  expect(figureOrigin({ ...origin, simulated: 'some' })[1]).toMatch(/^Simulated in part/)
})

it('counts how much nobody measured', () => {
  expect([simulatedShare(0, 4), simulatedShare(1, 4), simulatedShare(4, 4), simulatedShare(0, 0)]).toEqual([
    ...['none', 'some', 'all', 'none'],
  ])
})

it('makes a file name of any title', () => {
  expect(figureFileName('Strength: "E4" & Größe/2')).toBe('strength-e4-größe-2')
  expect(figureFileName('***')).toBe('figure')
})

import { expect, it } from 'vitest'
import { figureFileName, originLines } from '#words/findings/originWords.ts'

const origin = {
  ...{ archive: 'boats.breakledger', instant: '2026-11-25T12:00:00.000Z', treatment: 'as observed' },
  ...{ dataSha256: '0123456789abcdef0123', simulated: 'none' as const },
}

it('says archive, day, treatment and data', () => {
  expect(originLines(origin)).toEqual([
    'Archive boats.breakledger, 25 Nov 2026. Torn wood: as observed. Data 0123456789abcdef.',
  ])
  expect(originLines({ ...origin, archive: null })[0]).toMatch(/^25 Nov 2026\./)
})

it('marks what nobody measured', () => {
  expect(originLines({ ...origin, simulated: 'all' })[1]).toMatch(/^Simulated: nobody/)
  expect(originLines({ ...origin, simulated: 'some' })[1]).toMatch(/^Simulated in part/)
})

it('makes a file name of any title', () => {
  expect(figureFileName('Strength: "E4" & Größe/2')).toBe('strength-e4-größe-2')
  expect(figureFileName('***')).toBe('figure')
})

import { expect, it } from 'vitest'
import { catalogueFields } from '#contract/programme/catalogue.ts'
import { adhesiveNoteWords, lotQuestion } from '#words/programme/glueUpWords.ts'

const noted = (known: object) => {
  const fields = catalogueFields.parse({ kind: 'adhesive', name: 'resorcinol R2', ...known })
  return fields.kind === 'adhesive' ? adhesiveNoteWords(fields) : null
}

it('says mix, times and safety of an adhesive, as far as the catalogue knows them', () => {
  expect(noted({ mix: '5 : 1', openTimeMin: 10, clampTimeMin: 720, safetyNote: 'Gloves; air the room.' })).toBe(
    'mix 5 : 1 · open time 10 min · clamp time 720 min · Gloves; air the room.',
  )
  expect(noted({ openTimeMin: 5 })).toBe('open time 5 min')
  expect(noted({})).toBe('')
})

it('asks about a lot that had expired, or was opened after the glue-up', () => {
  const asked = (known: object, gluedOn = '2031-03-01') =>
    lotQuestion(catalogueFields.parse({ kind: 'lot', name: 'C1-2', adhesive: 'casein C1', ...known }), gluedOn)
  expect(asked({ expiresOn: '2031-02-28' })).toMatch(/^It expired on 28 Feb 2031, before/)
  expect(asked({ openedOn: '2031-03-02' })).toMatch(/^It was opened on 2 Mar 2031, after/)
  expect([asked({}), asked({ openedOn: '2031-03-01', expiresOn: '2031-03-01' })]).toEqual([null, null])
  expect(asked({ expiresOn: '2031-02-28' }, '')).toBeNull()
})

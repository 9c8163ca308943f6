import { expect, it } from 'vitest'
import { catalogueFields } from '#contract/programme/catalogue.ts'
import { adhesiveNoteWords } from '#words/programme/glueUpWords.ts'

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

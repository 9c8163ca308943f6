import { expect, it } from 'vitest'
import { readAddedPull } from '#renderer/pages/programme/due/addedPull.ts'

const typed = { gluedOn: '2031-05-02', age: '18', dueOn: '2032-11-09', spares: '2' }

it('reads an added pull as it is typed', () => {
  expect(readAddedPull(typed).pull).toEqual({
    ...{ gluedOn: '2031-05-02', ageMonths: 18, dueOn: '2032-11-09', blocksPerSeries: 2 },
  })
})

it('knows no day of blocks that are not glued yet, and none where nobody chose one', () => {
  expect(readAddedPull({ ...typed, gluedOn: '', dueOn: '' }).pull).toMatchObject({ gluedOn: null, dueOn: null })
})

it('says what is missing, each beside its field', () => {
  expect(readAddedPull({ ...typed, age: '1.5', spares: '0' }).errors).toEqual({
    age: 'Give the age in whole months.',
    spares: 'Give a whole number, 1 or more.',
  })
  expect(readAddedPull({ ...typed, age: ' ' }).errors).toEqual({ age: 'Give the age in whole months.' })
})

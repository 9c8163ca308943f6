import { expect, it } from 'vitest'
import { emptyOwnBlocks, ownRows, readOwnBlocks } from '#renderer/pages/programme/glueUp/ownBlocks.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const own = (change: Partial<typeof emptyOwnBlocks>) => ({ ...emptyOwnBlocks, adhesive: 'hide', ...change })
const read = (change: Partial<typeof emptyOwnBlocks>) => readOwnBlocks(own(change), quantitiesIn('SI'))

it('has a row for each number, and for each further block that gets a short one', () => {
  expect(ownRows(own({ numbers: 'K-1\n\n K-2 ; K-3' })).map(({ number }) => number)).toEqual(['K-1', 'K-2', 'K-3'])
  expect(ownRows(own({ numbers: 'K-1', count: '3' })).map(({ number }) => number)).toEqual(['K-1', '', ''])
  expect(ownRows(own({ count: '2', exposure: 'loft' }))[0]).toEqual({ key: 'own0', number: '', words: 'hide · loft' })
})

it('makes no rows of what is no count, and no more than anybody glues by hand', () => {
  for (const count of ['', 'two', '-1', '1.5', '99999']) expect(ownRows(own({ count }))).toEqual([])
})

it('reads what the blocks have in common', () =>
  expect(read({ count: '2', bondLineGapMm: '0,5', jointType: 'scarf' })).toEqual({
    common: { adhesive: 'hide', jointType: 'scarf', exposure: '', wood: '', board: '', bondLineGapMm: 0.5 },
    errors: null,
  }))

it('stores no other count than the one that was typed', () => {
  const tooMany = 'Write how many blocks there are, 500 at most.'
  expect(read({ count: '600' }).errors).toEqual({ count: tooMany })
  expect(read({ count: 'two', numbers: 'K-1' }).errors).toEqual({ count: tooMany })
  expect(read({ count: '500' }).errors).toBeNull()
})

it('says what is missing, and which number is written twice', () => {
  expect(read({ adhesive: ' ' }).errors).toEqual({
    adhesive: 'Write which adhesive these blocks were glued with.',
    count: 'Write how many blocks there are, 500 at most.',
  })
  expect(read({ numbers: 'K-1\nK-2\nK-1' }).errors).toEqual({ numbers: 'K-1 is written twice.' })
  expect(read({ count: '1', bondLineGapMm: 'thin' }).errors?.bondLineGapMm).toContain('not a number')
})

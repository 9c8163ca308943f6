import { expect, test } from 'vitest'
import { catalogueFields } from '#contract/programme/catalogue.ts'
import { alikeWords, entryDetail, mergeWords, ownerNameOf } from '#words/programme/catalogueWords.ts'

const detail = (fields: object) => entryDetail(catalogueFields.parse(fields))

test('an entry says what tells it from others, and nothing where nothing is known', () => {
  expect(detail({ kind: 'adhesive', name: 'casein C1', adhesiveClass: 'casein' })).toBe('casein')
  expect(detail({ kind: 'lot', name: '7', adhesive: 'epoxy E4', expiresOn: '2032-05-02' })).toBe(
    'of epoxy E4, expires 2 May 2032',
  )
  expect(detail({ kind: 'place', name: 'shelf 2', capacityBlocks: 96 })).toBe('room for 96 blocks')
  expect(detail({ kind: 'board', name: 'B3' })).toBeUndefined()
  expect(detail({ kind: 'exposure', name: 'loft' })).toBeUndefined()
})

test('a lot belongs to its adhesive, a board to its wood, and nothing else to anything', () => {
  const owners = [
    { kind: 'lot', name: '7', adhesive: 'epoxy E4' },
    { kind: 'board', name: 'B3', wood: 'beech' },
    { kind: 'place', name: 'shelf 2' },
  ].map((fields) => ownerNameOf(catalogueFields.parse(fields)))
  expect(owners).toEqual(['epoxy E4', 'beech', ''])
  expect(alikeWords('case')).not.toBe(alikeWords('letter'))
})

test('says before a merge what becomes one', () => {
  const merge = { fromEntryId: 2, intoEntryId: 1, fromSpecimens: 2, intoSpecimens: 3, groups: [] }
  expect(mergeWords(merge, 'casein-C1', 'casein C1')).toBe(
    '2 specimens of casein-C1 and 3 of casein C1 are shown as casein C1. No two groups become one.',
  )
  expect(mergeWords({ ...merge, fromSpecimens: null }, 'A. B.', 'AB')).toBe('A. B. counts as AB.')
})

import { expect, test } from 'vitest'
import { alikeNames } from '#domain/programme/catalogue/alike.ts'

const pairs = (...names: string[]) =>
  alikeNames(names.map((name, id) => ({ id, name }))).map(({ id, otherId, differ }) => [
    names[id],
    names[otherId],
    differ,
  ])

test.each([
  ['Casein C1', 'casein-c1', 'case'],
  ['long grain to long grain', 'long-grain to  long-grain', 'case'],
  ['épôxy E4', 'epoxy E4', 'case'],
  ['epoxy E4', 'epoxi E4', 'letter'],
  ['resorcinol R2', 'resorcnol R2', 'letter'],
  ['sail loft', 'sail lofft', 'letter'],
  ['resorcinol', 'resorcniol', 'letter'],
])('points out "%s" and "%s"', (one, other, differ) => {
  expect(pairs(one, other)).toEqual([[one, other, differ]])
  expect(pairs(other, one)).toEqual([[other, one, differ]])
})

test.each([
  ['shelf 2', 'shelf 3'],
  ['shelf 2', 'shelf 12'],
  ['epoxy E4', 'epoxy E5'],
  ['oak', 'ash'],
  ['loft', 'left'],
  ['casein C1', 'casein D1 x'],
  ['resorcinol', 'rezorcinal'],
  ['-', '–'],
])('leaves "%s" and "%s" alone', (one, other) => {
  expect(pairs(one, other)).toEqual([])
})

test('names each pair once among many, also where both rules find it', () => {
  expect(pairs('epoxy E4', 'epoxi E4', 'Epoxy-E4', 'casein C1')).toEqual([
    ['epoxy E4', 'Epoxy-E4', 'case'],
    ['epoxy E4', 'epoxi E4', 'letter'],
    ['epoxi E4', 'Epoxy-E4', 'letter'],
  ])
})

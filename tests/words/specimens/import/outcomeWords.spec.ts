import { expect, it } from 'vitest'
import { fateSentence, importUseWords, outcomeWords, someFatesListed } from '#words/specimens/import/outcomeWords.ts'

const nothing = { new: 0, alreadyThere: 0, rejected: 0, emptyRows: 0, fileSha256: '', dryRun: false }

it.each([
  [{ new: 3, dryRun: true }, '3 blocks would be added; nothing is stored yet.'],
  [{ new: 1 }, '1 block was added.'],
  [
    { alreadyThere: 400 },
    'Nothing was added, for the archive has all that could be read. 400 blocks are there already.',
  ],
  [
    { rejected: 1, emptyRows: 2, dryRun: true },
    'Nothing would be added. 1 block cannot be taken, for the reasons below. 2 rows hold nothing.',
  ],
])('says what %j means', (summary, words) => expect(outcomeWords({ ...nothing, ...summary })).toBe(words))

const fate = { row: 4, column: null, fate: 'new', reason: null, number: null, specimenId: null } as const

it('says of a new block what it becomes, and what was done on reading it', () => {
  expect(fateSentence(fate, true)).toBe('Becomes a specimen with a number of ours.')
  expect(fateSentence({ ...fate, number: '28', reason: 'A formula.' }, false)).toBe('Became specimen 28. A formula.')
  expect(fateSentence({ ...fate, fate: 'rejected', reason: 'Row 4: spoilt.' }, true)).toBe('Row 4: spoilt.')
})

it('says how many results of an import count', () => {
  expect(importUseWords({ results: 5, inUse: 5 })).toBe('5 results, in use')
  expect(importUseWords({ results: 5, inUse: 0 })).toBe('5 results, set aside')
  expect(importUseWords({ results: 5, inUse: 3 })).toBe('3 of 5 results in use')
  expect(someFatesListed(50_000, 60_000)).toContain('50 000 of 60 000')
})

import { expect, it } from 'vitest'
import { chainFindingWords, checkedWords, soundWords } from '#words/keeping/verifyWords.ts'

const report = { sound: true, ledgerEntries: 1, breaks: 1, curves: 2, samples: 12_345, head: null, faults: [] }

it('says how much of an archive was looked at', () => {
  expect(checkedWords(report)).toBe('1 ledger entry, 1 break, 2 curves and 12\u2009345 samples were checked')
})

it('says that the archive is sound, or counts its faults', () => {
  const fault = { where: 'break 1', what: 'its curve does not match' }
  expect([[], [fault], [fault, fault]].map((faults) => soundWords({ ...report, faults }))).toEqual([
    'sound',
    '1 fault',
    '2 faults',
  ])
})

it('says what a chain that does not hold its head may come from, and what to do', () => {
  expect(chainFindingWords('shorter')).toMatch(/lacks records .* --accept-head/)
  expect(chainFindingWords('other')).toMatch(/Another archive .* --accept-head/)
  expect(chainFindingWords('different')).toMatch(/other records .* --accept-head/)
})

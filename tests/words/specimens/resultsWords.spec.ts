import { expect, test } from 'vitest'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import {
  againQuestion,
  brokenAtHandWords,
  resultsWords,
  severalResultsWords,
  waitingWords,
} from '#words/specimens/resultsWords.ts'

const [first, second] = createScriptedHost().specimens

test('speaks of results on one specimen only where there is more than one', () => {
  expect([resultsWords(0), resultsWords(1), severalResultsWords(1)]).toEqual([null, null, null])
  expect(resultsWords(2)).toBe('2 results on this specimen')
  expect(severalResultsWords(2)).toMatch(/^2 results on this specimen, though a joint breaks once/)
})

test('tells a specimen that waits from one that broke without a result', () => {
  expect(waitingWords({ timesBroken: 0 })).toBe('waiting')
  expect(waitingWords({ timesBroken: 1 })).toBe('broke, set aside')
})

test('asks with the number, the load and what was said of the last break', () => {
  const broken = { fields: first!.fields, timesBroken: 1 }
  const peak = (peakN: number | null) => `${peakN} N`
  expect(againQuestion(broken, { breakId: 7, peakN: 4812, setAside: null }, peak)).toMatch(
    /^Specimen C1-LL-01 broke once already: break 7, 4812 N\./,
  )
  expect(againQuestion({ ...broken, timesBroken: 2 }, { breakId: 7, peakN: 4812, setAside: 'slipped' }, peak)).toMatch(
    /broke 2 times already, last in break 7, 4812 N, set aside\. .*all results/,
  )
})

test('says what becomes of the next load', () => {
  expect(brokenAtHandWords({ again: true, next: second! })).toMatch(/second result/)
  expect(brokenAtHandWords({ again: false, next: second! })).toContain(second!.fields.number)
  expect(brokenAtHandWords({ again: false, next: null })).toContain('no specimen')
})

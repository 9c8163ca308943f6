import { describe, expect, it } from 'vitest'
import { findingsSettings } from '#contract/findings/keptFinding.ts'
import {
  changedBlockWords,
  changesWords,
  keptBlockWords,
  keptSummary,
  keptWords,
  standsWords,
} from '#words/findings/keptWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const row = {
  ...{ keptFindingId: 1, revision: 1, recordedAt: '2031-06-02T09:30:00.000Z', by: 'Mara', reason: '' },
  ...{ name: 'Spring', settings: findingsSettings.parse({}), said: [], dataSha256: 'a'.repeat(64) },
  ...{ blocks: 12, isStale: false },
}
const block = {
  ...{ specimenId: 1, breakId: 1, number: 'E4-1', group: 'E4', ageMonths: 0, strengthMPa: 9 },
  ...{ woodFailurePercent: 80, excludedBecause: null },
}

it('says who kept it when, and which version it is', () => {
  expect(keptWords(row)).toBe('kept 2 Jun 2031 by Mara')
  expect(keptWords({ ...row, by: '', revision: 2, reason: 'more blocks' })).toBe(
    'kept 2 Jun 2031, version 2: more blocks',
  )
})

it('calls a finding stale only where something changed', () => {
  expect(standsWords(row)).toBe('rests on the same 12 results as then')
  expect(standsWords({ ...row, isStale: true })).toBe('stale: its results changed since')
})

it('says how many results came, went and changed', () => {
  const none = { came: [], went: [], changed: [] }
  expect(changesWords({ ...none, came: [block, block], changed: [{ before: block, now: block }] })).toBe(
    'Since then 2 results came and 1 result changed.',
  )
  expect(changesWords({ ...none, went: [block] })).toBe('Since then 1 result went.')
  expect(changesWords(none)).toBe('Since then nothing changed.')
})

describe('what is another in a result', () => {
  const words = (change: object) => changedBlockWords(block, { ...block, ...change }, strength)
  it('is told with what it was', () => {
    expect(keptBlockWords(block, strength)).toBe('9.00\u00a0MPa, 80 % wood failure')
    expect(words({ excludedBecause: 'slipped' })).toBe(
      '9.00\u00a0MPa, 80 % wood failure, left out: slipped; it was 9.00\u00a0MPa, 80 % wood failure',
    )
    expect(words({ number: 'E4-01' })).toBe('its number was E4-1')
    expect(words({ group: 'E5' })).toBe('it belongs to another group')
    expect(words({ strengthMPa: 9.0001 })).toBe('9.00\u00a0MPa, 80 % wood failure, changed by less than is shown')
  })
})

it('counts what is kept, and what is stale of it', () => {
  expect(keptSummary([row, row])).toBe('Kept findings: 2')
  expect(keptSummary([row, { ...row, isStale: true }])).toBe('Kept findings: 2, 1 of them stale')
})

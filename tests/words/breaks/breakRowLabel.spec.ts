import { describe, expect, it, test } from 'vitest'
import { breakRowLabel, breakTitle } from '#words/breaks/breakRowLabel.ts'

type Row = Parameters<typeof breakRowLabel>[0]

const plain: Row = {
  ...{ breakId: 7, number: 'C1-L0-03' },
  outcome: 'break',
  ending: 'complete',
  ...{ setAside: null, setAsideCause: null, overruled: null },
  ...{ resultsOfSpecimen: 1, demo: false, simulated: false },
}
const overruled: Row['overruled'] = {
  kind: 'peak-picked',
  ...{ by: 'bench 1', reason: 'a spike', recordedAt: '2031-04-06T08:00:00.000Z', timeS: 8.6, foundPeakN: 4812 },
}

describe('breakRowLabel', () => {
  it('names a break, its specimen and what became of it', () => {
    expect(breakRowLabel(plain)).toBe('break 7, C1-L0-03, broke')
    expect(breakRowLabel({ ...plain, number: null, outcome: 'none' })).toBe('break 7, no specimen, not loaded')
  })
  it('says that nobody measured it', () => {
    expect(breakRowLabel({ ...plain, simulated: true })).toBe('break 7, C1-L0-03, simulated, broke')
  })
  it('says that its specimen has another result too', () => {
    expect(breakRowLabel({ ...plain, resultsOfSpecimen: 2 })).toContain('2 results on this specimen')
  })
  it('gives the reason of a person who set it aside or overruled its peak', () => {
    const aside: Row = { ...plain, setAside: 'heard it knock', setAsideCause: 'fixture-touched' }
    expect(breakRowLabel(aside)).toBe('break 7, C1-L0-03, set aside: fixture touched; heard it knock')
    expect(breakRowLabel({ ...plain, overruled })).toBe(
      'break 7, C1-L0-03, broke, peak picked by hand by bench 1: a spike',
    )
  })
})

test('breakTitle names a break by its specimen, and by its own number where it has none', () => {
  expect(breakTitle(plain)).toBe('C1-L0-03 broke')
  expect(breakTitle({ ...plain, number: null })).toBe('Break 7, no specimen: broke')
})

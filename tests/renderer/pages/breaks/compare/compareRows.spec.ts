import { describe, expect, it } from 'vitest'
import { type CompareRow, orderRows, timeToPeakS } from '#renderer/pages/breaks/compare/compareRows.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'

const row = (breakId: number, name: string, peakN: number | null, distance: number | null): CompareRow => ({
  breakId,
  name,
  standing: '',
  adhesive: null,
  peakN,
  overruled: null,
  strengthMPa: null,
  timeToPeakS: peakN === null ? null : peakN / 1000,
  curve: {
    breakId,
    number: name,
    outcome: 'break',
    setAside: false,
    peakN,
    originS: 0,
    timeUnit: 1,
    forceUnit: 1,
    samples: 1,
    distance,
    zScore: null,
    outlying: null,
  },
})
const rows = [row(1, 'C1-10', 5000, 110), row(2, 'C1-2', null, 420), row(3, 'C1-1', 6000, null)]
const order = (...how: [Parameters<typeof orderRows>[1], boolean]) => orderRows(rows, ...how).map((r) => r.breakId)

describe('orderRows', () => {
  it('keeps the order given', () => {
    expect(order('given', false)).toEqual([1, 2, 3])
    expect(orderRows(rows.toReversed(), 'given', false).map((r) => r.breakId)).toEqual([3, 2, 1])
  })
  it('puts numbers of specimens in natural order', () => {
    expect(order('name', false)).toEqual([3, 2, 1])
    expect(order('name', true)).toEqual([1, 2, 3])
  })
  it('puts what is not known last, whichever way round', () => {
    expect(order('peak', true)).toEqual([3, 1, 2])
    expect(order('peak', false)).toEqual([1, 3, 2])
    expect(orderRows(rows.toReversed(), 'peak', false).map((r) => r.breakId)).toEqual([1, 3, 2])
    expect(order('time', true)).toEqual([3, 1, 2])
    expect(order('distance', true)).toEqual([2, 1, 3])
  })
})

describe('timeToPeakS', () => {
  const host = createScriptedHost()
  host.addBreak(4000)
  const record = host.breaks[0]!
  it('counts from the onset, by the evaluation in force', () => expect(timeToPeakS(record)).toBeCloseTo(9.4 - 2.35, 12))
  it('ends at the peak that a person picked', () => {
    const overruled = { ...record.summary, overruled: { timeS: 7 } } as typeof record.summary
    expect(timeToPeakS({ ...record, summary: overruled })).toBeCloseTo(7 - 2.35, 12)
  })
  it('is not known without an evaluation in force', () =>
    expect(timeToPeakS({ ...record, inForceId: null })).toBeNull())
})

import { expect, test } from 'vitest'
import { allTreatments, treatmentRows } from '#renderer/pages/findings/torn/treatmentRows.ts'

const means = (all: Record<string, number | null>) =>
  new Map(Object.entries(all).map(([group, meanMPa]) => [group, { meanMPa, lowMPa: null, highMPa: null }]))

test('keeps the order of the first treatment and says how far each group moved under the others', () => {
  const rows = treatmentRows(['a', 'b', 'c'], [means({ a: 1, b: 3, c: 2 }), means({ a: 9, b: 3, c: 2 })])
  expect(rows.map(({ group, cells }) => [group, cells[0]!.place, cells[1]!.place, cells[1]!.up])).toEqual([
    ['b', 1, 2, -1],
    ['c', 2, 3, -1],
    ['a', 3, 1, 2],
  ])
})

test('a group without a mean has no place, and the others have not moved by that', () => {
  const rows = treatmentRows(['a', 'b', 'c'], [means({ a: 3, b: 2, c: 1 }), means({ a: null, b: 2, c: 1 })])
  expect(rows.map(({ cells }) => [cells[1]!.place, cells[1]!.up])).toEqual([
    [null, null],
    [1, 0],
    [2, 0],
  ])
})

test('a group that has no mean as observed comes last', () => {
  const rows = treatmentRows(['a', 'b'], [means({ b: 2 }), means({ a: 5, b: 2 })])
  expect(rows.map(({ group, cells }) => [group, cells[1]!.up])).toEqual([
    ['b', 0],
    ['a', null],
  ])
})

test('stands every treatment beside what was observed', () => {
  expect(allTreatments[0]).toEqual({ woodFailure: 'observed', distribution: null })
  expect(new Set(allTreatments.map(({ woodFailure }) => woodFailure)).size).toBe(4)
})

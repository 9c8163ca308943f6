import { expect, it } from 'vitest'
import type { Comparison } from '#contract/breaks/comparison.ts'
import type { CompareRow } from '#renderer/pages/breaks/compare/compareRows.ts'
import { unlikeWords } from '#words/breaks/compare/unlikeWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

type Axes = Pick<Comparison, 'unit' | 'timeUnit'>

function row(breakId: number, peakN: number | null, timeToPeakS: number | null, setAside = false): CompareRow {
  const axes = { originS: 0, timeUnit: 1, forceUnit: 1, samples: 1, distance: null, zScore: null, outlying: null }
  const curve = { breakId, number: null, outcome: 'break', setAside, peakN, ...axes } as const
  return {
    breakId,
    name: `E4-${breakId}`,
    curve,
    standing: '',
    adhesive: null,
    peakN,
    overruled: null,
    strengthMPa: null,
    timeToPeakS,
  }
}
// Mean rates 400, 300, 250 and 200 N/s: their median is 275 N/s; that of the peaks 6000 N.
const others = [row(1, 6000, 15), row(2, 6000, 20), row(3, 6000, 24), row(4, 6000, 30)]
const words = (
  one: CompareRow,
  among: CompareRow[] = others,
  units: 'SI' | 'US' = 'SI',
  axes: Axes = { unit: 'N', timeUnit: 's' },
) => unlikeWords(one, [one, ...among], axes, quantitiesIn(units)).replaceAll('\u00a0', ' ')

it('says how fast the load rose where that was unusual', () => {
  expect(words(row(9, 6300, 10.5))).toBe(
    'Its load rose faster: 600.0 N/s on average up to its peak, the others’ median 275.0 N/s.',
  )
  expect(words(row(9, 6300, 42))).toMatch(/^Its load rose more slowly: 150\.0 N\/s/)
})

it('does not call a weak one quickly loaded because it was soon at its peak', () =>
  expect(words(row(9, 3025, 11))).toBe('Its peak is lower: 3025 N, the others’ median 6000 N.'))

it('writes in the units shown', () =>
  // 9000 N / 4.4482216152605 = 2023.28 lbf, 6000 N: 1348.85 lbf
  expect(words(row(9, 9000, 32), others, 'US')).toBe('Its peak is higher: 2023 lbf, the others’ median 1349 lbf.'))

it('says nothing of what is usual, not known, or has too few others beside it', () => {
  expect(words(row(9, 6500, 22))).toBe('')
  expect(words(row(9, null, null))).toBe('')
  expect(words(row(9, 9000, 5), others.slice(1))).toBe('')
})

it('leaves out what plays no part on the axes', () => {
  const odd = row(9, 9000, 10)
  const speedOnly = words(odd, others, 'SI', { unit: '%', timeUnit: 's' })
  expect(speedOnly).toMatch(/^Its load rose faster: [^.]*900\.0[^.]*275\.0 N\/s\.$/)
  expect(words(odd, others, 'SI', { unit: '%', timeUnit: '%' })).toBe('')
})

it('says that the peak is a person’s word', () => {
  const by = {
    kind: 'premature-failure',
    by: 'bench',
    reason: 'cracked',
    recordedAt: '',
    timeS: 9,
    foundPeakN: 6900,
  } as const
  expect(words({ ...row(9, 6000, 22), overruled: by })).toBe('Its peak was set by hand.')
})

it('counts none that is set aside among the others', () =>
  expect(words(row(9, 9000, 32), [...others.slice(1), row(7, 6000, 15, true)])).toBe(''))

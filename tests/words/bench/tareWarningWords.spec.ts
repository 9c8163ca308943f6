import { expect, it } from 'vitest'
import { tareWarningWords } from '#words/bench/tareWarningWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const lbf = quantitiesIn('US').force

it('says how old the zero is', () =>
  expect(tareWarningWords({ kind: 'old', minutes: 20 }, force)).toMatch(/^The zero is 20 minutes old/))

it('says what the bench reads in the units of the program, and in counts where there is no scale', () => {
  // NIST SP 811: 1 lbf = 4.448 222 N.
  expect(tareWarningWords({ kind: 'drifted', reads: 44.5, unit: 'N' }, force)).toMatch(
    /^The bench reads 45\u00a0N at rest/,
  )
  expect(tareWarningWords({ kind: 'drifted', reads: 44.5, unit: 'N' }, lbf)).toMatch(
    /^The bench reads 10\u00a0lbf at rest/,
  )
  expect(tareWarningWords({ kind: 'far-below-zero', reads: -200, unit: 'counts' }, lbf)).toMatch(
    /^The bench reads −200\u00a0counts, far below its zero.*wired in reverse/,
  )
})

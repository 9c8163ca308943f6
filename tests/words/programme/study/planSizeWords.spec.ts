import { expect, it } from 'vitest'
import { planSizeWords } from '#words/programme/study/planSizeWords.ts'

it('says how large a plan is, and what can be planned', () => {
  expect(planSizeWords({ kind: 'cells', count: 8_000_000 })).toMatch(
    /^Levels and ages make 8.000.000\scells, and 200.000 /,
  )
  expect(planSizeWords({ kind: 'blocks', count: 432_000 })).toMatch(/^These are 432.000\sblocks, and 100.000 /)
})

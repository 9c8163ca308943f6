import { expect, it } from 'vitest'
import { planLength } from '#words/calibration/routine/planLength.ts'

it('counts the zero before and after every run, and the way down without its highest step', () => {
  const plan = { steps: [['a'], ['b'], ['c']], runs: 2, decreasing: false, preloads: 0, averageS: 2, creepHoldS: null }
  expect(planLength(plan)).toMatch(/^10 readings/)
  expect(planLength({ ...plan, decreasing: true })).toMatch(/^14 readings/)
})

it('counts the time that the highest load is held', () => {
  const plan = { steps: [['a']], runs: 1, decreasing: false, preloads: 0, averageS: 2 }
  expect(planLength({ ...plan, creepHoldS: null })).toMatch(/about 1 minute\./)
  expect(planLength({ ...plan, creepHoldS: 300 })).toMatch(/about 6 minutes\./)
})

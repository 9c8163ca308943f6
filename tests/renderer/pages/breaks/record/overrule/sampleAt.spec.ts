import { expect, test } from 'vitest'
import { sampleAt } from '#renderer/pages/breaks/record/overrule/sampleAt.ts'

const curve = { timeS: Float64Array.of(0, 0.5, 1), force: Float64Array.of(2, 30, 400), unit: 'N' } as const

test('the sample nearest to a time is the one that is taken', () => {
  expect(sampleAt(curve, 0.6)).toEqual({ timeS: 0.5, force: 30, unit: 'N' })
  expect(sampleAt(curve, 1.9)).toEqual({ timeS: 1, force: 400, unit: 'N' })
})

test('a time beyond the ends of the curve has none', () => {
  expect(sampleAt(curve, -5)).toBeNull()
  expect(sampleAt(curve, -1.1)).toBeNull()
  expect(sampleAt(curve, 2.1)).toBeNull()
  expect(sampleAt(curve, 99_999)).toBeNull()
  expect(sampleAt({ timeS: new Float64Array(0), force: new Float64Array(0), unit: 'N' }, 0)).toBeNull()
})

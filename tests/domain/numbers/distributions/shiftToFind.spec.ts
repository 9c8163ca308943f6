import { expect, it } from 'vitest'
import { powerOfT, shiftToFind } from '#domain/numbers/distributions/shiftToFind.ts'

// R 4.2.2: t <- qt(1 - (1 - confidence) / 2, df); pt(t, df, delta, lower.tail = FALSE) + pt(-t, df, delta)
it.each([
  [2.5, 18, 0.95, 0.657326027841818],
  [1, 3, 0.99, 0.0247611227669717],
  [3, 100, 0.9, 0.90902327203316],
])(
  'the power of a shift of %d standard errors with %d degrees of freedom is that of pt',
  (delta, df, confidence, power) => {
    expect(powerOfT(delta, df, confidence)).toBeCloseTo(power, 9)
  },
)

it('is the shift of power.t.test for two groups of twelve', () => {
  // R 4.2.2: power.t.test(n = 12, power = 0.9, strict = TRUE, tol = 1e-12)$delta * sqrt(12 / 2)
  expect(shiftToFind(22, 0.95, 0.9)).toBeCloseTo(3.39293477826054, 8)
})

it('is none for the power of a false alarm', () => {
  expect(shiftToFind(22, 0.95, 0.05)).toBe(0)
})

it('is found where the first guess is too small', () => {
  expect(powerOfT(shiftToFind(1, 0.95, 0.9), 1, 0.95)).toBeCloseTo(0.9, 9)
})

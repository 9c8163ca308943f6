import { expect, test } from 'vitest'
import { addToSums, type Sums } from '#domain/numbers/sums.ts'

const timeS = Float64Array.of(0.1, 0.2, 0.3, 0.7, 1.3)
const force = Float64Array.of(1e9, 0.1, -1e9, 0.3, 7)

test('adds the samples of a stretch, and counts them', () => {
  const sums: Sums = { n: 2, sumT: 10, sumF: 20 }
  addToSums(sums, Float64Array.of(1, 2, 4, 8), Float64Array.of(3, 5, 7, 11), 1, 3)
  expect(sums).toEqual({ n: 4, sumT: 16, sumF: 32 })
})

test('comes to the same to the last bit however the samples are cut', () => {
  const whole: Sums = { n: 0, sumT: 0, sumF: 0 }
  addToSums(whole, timeS, force, 0, 5)
  const cut: Sums = { n: 0, sumT: 0, sumF: 0 }
  for (const [from, to] of [
    [0, 2],
    [2, 2],
    [2, 5],
  ] as const)
    addToSums(cut, timeS, force, from, to)
  expect(cut).toEqual(whole)
})

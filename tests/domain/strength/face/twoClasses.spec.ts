import { expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { along, twoClassesFrom } from '#domain/strength/face/twoClasses.ts'
import { outcomeOf } from '#tests/reference/faces/outcomeOf.ts'

/** Two features of 3000 pixels, every third of which lies ten SDs of its class further on in both. */
function twoClouds(seed: number) {
  const random = createRandom(seed)
  const second = Array.from({ length: 3000 }, (_, i) => i % 3 === 0)
  const feature = () => Float32Array.from(second, (is) => random.normal() + (is ? 10 / Math.SQRT2 : 0))
  return { second, features: [feature(), feature()] }
}

it('finds two clouds again from a first division that is half wrong', () => {
  const { second, features } = twoClouds(1)
  const random = createRandom(2)
  const seed = Float32Array.from(second, (is) => (is ? 1 : 0) + random.normal())
  const { discriminant, distance } = outcomeOf(twoClassesFrom(features, seed))!
  const middle = (discriminant.firstMean + discriminant.secondMean) / 2
  expect(second.filter((is, i) => along(discriminant, features, i) > middle !== is)).toHaveLength(0)
  expect(distance).toBeGreaterThan(9.5)
  expect(distance).toBeLessThan(10.5)
})

it('says how far the halves of one cloud lie apart: less than two clouds do', () => {
  const random = createRandom(3)
  const feature = Float32Array.from({ length: 3000 }, () => random.normal())
  // Halves of a normal distribution: means at ±√(2/π), SD √(1 − 2/π); distance 2.647, separation 1.752.
  const { distance, separation } = outcomeOf(twoClassesFrom([feature], feature))!
  expect(distance).toBeCloseTo(2.647, 0)
  expect(separation).toBeCloseTo(1.752, 0)
})

it('takes a stain for no class', () => {
  const feature = Float32Array.from({ length: 3000 }, (_, i) => (i < 5 ? 100 + i : i % 7))
  expect(outcomeOf(twoClassesFrom([feature], feature))).toBeNull()
})

it('finds none where the first division cannot be made', () => {
  const same = new Float32Array(300)
  expect(outcomeOf(twoClassesFrom([same], same))).toBeNull()
})

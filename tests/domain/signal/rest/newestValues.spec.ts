import { expect, it } from 'vitest'
import { median } from '#domain/numbers/quantile.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createNewestValues } from '#domain/signal/rest/newestValues.ts'

it('has the median of the newest values, fewer at first', () => {
  const random = createRandom(2)
  const newest = createNewestValues(5)
  const pushed: number[] = []
  for (let i = 0; i < 40; i++) {
    pushed.push(random.wholeBetween(-50, 50))
    newest.push(pushed.at(-1)!)
    expect(newest.count()).toBe(Math.min(5, i + 1))
    expect(newest.median()).toBe(median(pushed.slice(-5)))
  }
})

it('has none when nothing was pushed or all was forgotten', () => {
  const newest = createNewestValues(3)
  expect(newest.median()).toBeNaN()
  newest.push(1)
  newest.clear()
  expect([newest.count(), newest.median()]).toEqual([0, Number.NaN])
})

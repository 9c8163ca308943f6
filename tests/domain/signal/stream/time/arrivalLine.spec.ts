import { expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createArrivalLine } from '#domain/signal/stream/time/arrivalLine.ts'

it('finds the interval of readings that wait up to 0.3 s, from those that waited least', () => {
  const random = createRandom(5)
  const line = createArrivalLine()
  expect(line.intervalS()).toBeNaN()
  line.begin(0.0129, 0, 0)
  for (let n = 1; n <= 80 * 40; n++)
    line.see(n, 3 + n / 80 + (random.unit() < 0.3 ? 0.001 * random.unit() : 0.3 * random.unit()))
  // Waits of 1 ms at both ends of 30 s bend the interval by less than 1 part in 10,000.
  expect(Math.abs(line.intervalS() * 80 - 1)).toBeLessThan(1e-4)
  expect(Math.abs(line.at(3200) - 43)).toBeLessThan(0.002)
})

it('keeps the interval when it starts anew after a pause', () => {
  const line = createArrivalLine()
  line.begin(0.0125, 0, 0)
  line.restart(80, 100)
  expect(line.intervalS()).toBe(0.0125)
  expect(line.at(160)).toBeCloseTo(101, 12)
})

it('needs three windows before it changes the interval', () => {
  const line = createArrivalLine()
  line.begin(0.01, 0, 0)
  for (let n = 1; n <= 200; n++) line.see(n, n / 80)
  expect(line.intervalS()).toBe(0.01)
  for (let n = 201; n <= 400; n++) line.see(n, n / 80)
  expect(line.intervalS()).toBeCloseTo(0.0125, 6)
})

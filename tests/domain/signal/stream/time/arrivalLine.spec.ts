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

it('is the line of least squares through the earliest arrivals of the last thirty windows of a second', () => {
  const random = createRandom(12)
  const line = createArrivalLine()
  let interval = 0.013
  line.begin(interval, 0, 0)
  const points: [number, number][] = []
  let best: [number, number] | null = null
  let windowStartS = 0
  for (let n = 1; n <= 80 * 60; n++) {
    const arrivalS = n / 80 + 0.2 * random.unit()
    line.see(n, arrivalS)
    if (best === null || arrivalS - interval * n < best[1] - interval * best[0]) best = [n, arrivalS]
    if (arrivalS - windowStartS < 1) continue
    points.push(best)
    if (points.length > 30) points.shift()
    best = null
    windowStartS = arrivalS
    const mean = [0, 1].map((k) => points.reduce((sum, point) => sum + point[k]!, 0) / points.length) as [
      number,
      number,
    ]
    if (points.length >= 3) {
      const snn = points.reduce((sum, [x]) => sum + (x - mean[0]) ** 2, 0)
      const sna = points.reduce((sum, [x, a]) => sum + (x - mean[0]) * (a - mean[1]), 0)
      if (sna > 0) interval = sna / snn
    }
    expect(line.intervalS()).toBeCloseTo(interval, 12)
    expect(line.at(n)).toBeCloseTo(mean[1] + interval * (n - mean[0]), 9)
  }
  expect(points).toHaveLength(30)
})

it('begins anew with what it is told', () => {
  const line = createArrivalLine()
  line.begin(0.5, 10, 100)
  expect([line.at(10), line.at(12)]).toEqual([100, 101])
  for (let n = 11; n < 30; n++) line.see(n, 100 + 0.5 * (n - 10) + 0.25)
  line.restart(40, 200)
  expect([line.at(40), line.at(44)]).toEqual([200, 202])
  // Its first window is a second long from there.
  line.see(41, 200.6)
  expect(line.at(40)).toBe(200)
  line.see(41, 201)
  expect(line.at(41)).toBeCloseTo(200.6, 9)
})

import { describe, expect, it } from 'vitest'
import { createRandom } from '#acquisition/virtual/random.ts'
import { createSuddenFall } from '#domain/signal/suddenFall.ts'

/** How far a load given by time has come down in sudden steps after a time at a rate of means. */
function fallen(rateHz: number, lengthS: number, load: (timeS: number) => number, noise = 1): number {
  const random = createRandom(6)
  const sudden = createSuddenFall({ zero: 0, noise, samplesPerMean: 1 })
  for (let i = 0; i < lengthS * rateHz; i++) sudden.push(i / rateHz, load(i / rateHz) + noise * random.normal())
  return sudden.fallen()
}

describe('sudden steps down', () => {
  const steps = (t: number) => 1000 - [1, 1.5, 2].reduce((sum, atS) => sum + (t >= atS ? 200 : 0), 0)

  it('add up', () => {
    expect(Math.abs(fallen(200, 3, steps) - 600)).toBeLessThan(30)
  })

  it('are forgotten when the load is back', () => {
    expect(fallen(200, 4, (t) => (t < 3 ? steps(t) : 1000))).toBe(0)
  })

  it('are none when a valve is opened', () => {
    expect(fallen(200, 3, (t) => 1000 * Math.exp(-t / 0.8))).toBe(0)
  })

  it('are none when frame and cell swing', () => {
    const swinging = (t: number) =>
      1000 - (t < 1 ? 0 : 200 + 150 * Math.exp(-(t - 1) / 0.03) * Math.sin(2 * Math.PI * 90 * (t - 1)))
    expect(Math.abs(fallen(200, 3, swinging) - 200)).toBeLessThan(20)
  })

  it('are none in the noise of a hundred thousand means', () => {
    expect(fallen(200, 500, () => 40)).toBe(0)
  })
})

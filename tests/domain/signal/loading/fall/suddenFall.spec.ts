import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createSuddenFall } from '#domain/signal/loading/fall/suddenFall.ts'

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

  /** How far means that come so often have come down in sudden steps, from the first on. */
  function fallenOf(everyS: number, means: readonly number[], noise = 0, samplesPerMean = 1, zero = 0): number {
    const sudden = createSuddenFall({ zero, noise, samplesPerMean })
    for (const [i, mean] of means.entries()) sudden.push(i * everyS, mean)
    return sudden.fallen()
  }

  it('are at least 0.02 of the highest load, 2.5 of it in a second, and eight noise SDs of the means', () => {
    expect(fallenOf(0.001, [1000, 960, 941])).toBe(40)
    expect(fallenOf(0.001, [1000, 960, 939])).toBe(61)
    expect(fallenOf(0.1, [1000, 755])).toBe(0)
    expect(fallenOf(0.1, [1000, 745])).toBe(255)
    // 8 x 20 N / sqrt(4) = 80 N.
    expect(fallenOf(0.001, [1000, 922], 20, 4)).toBe(0)
    expect(fallenOf(0.001, [1000, 918], 20, 4)).toBe(82)
    // The load counts from the level at rest: 0.02 of 500 N.
    expect(fallenOf(0.001, [1500, 1460, 1448], 0, 1, 1000)).toBe(52)
  })

  it('are made good at 0.98 of the highest load, and by sudden steps up no further than to none', () => {
    const slowlyUp = (to: number) => Array.from({ length: to - 700 + 1 }, (_, i) => 700 + i)
    expect(fallenOf(0.001, [1000, ...slowlyUp(975)])).toBe(300)
    expect(fallenOf(0.001, [1000, ...slowlyUp(985)])).toBe(0)
    expect(
      fallenOf(0.001, [
        1000,
        900,
        ...Array(40)
          .fill(0)
          .map((_, i) => 899 - i),
        970,
        900,
      ]),
    ).toBe(70)
  })

  it('are none before any was seen; those that are just at a limit count', () => {
    expect(createSuddenFall({ zero: 0, noise: 1, samplesPerMean: 1 }).fallen()).toBe(0)
    expect(fallenOf(0.001, [1000, 940, 920])).toBe(80)
    expect(fallenOf(0.001, [1000, 900, 980])).toBe(0)
    expect(fallenOf(0.001, [1000, 900, 979])).toBe(21)
  })

  it('are none in the noise of a hundred thousand means', () => {
    expect(fallen(200, 500, () => 40)).toBe(0)
  })
})

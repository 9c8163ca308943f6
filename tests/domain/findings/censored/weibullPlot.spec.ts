import { describe, expect, it } from 'vitest'
import { weibullPlot } from '#domain/findings/censored/weibullPlot.ts'

/** NIST/SEMATECH e-Handbook 8.4.1.3: ten failures, ten units censored at 500. */
const handbook = {
  failed: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386],
  censored: new Array<number>(10).fill(500),
}

describe('weibullPlot', () => {
  // NIST/SEMATECH e-Handbook 8.2.1.5 gives the Kaplan-Meier steps 1, 0.95, 0.90, 0.847, 0.794, 0.737, 0.670; the middles follow.
  it('stands each failure in the middle of its Kaplan-Meier step', () => {
    const { failed, held } = weibullPlot(
      { failed: [181, 122, 10, 32, 56, 98], censored: [150, 50, 100, 125, ...new Array<number>(10).fill(200)] },
      [0.5],
      0.95,
    )
    const middles = [0.025, 0.075, 0.126470588, 0.179411765, 0.234243698, 0.296122995]
    for (const [i, share] of middles.entries()) expect(failed[i]!.share).toBeCloseTo(share, 8)
    expect(held.slice(0, 4)).toEqual([50, 100, 125, 150])
  })
  it('stands them at (i - 0.5)/n where no wood failed', () => {
    const { failed } = weibullPlot({ failed: [3, 1, 2, 4], censored: [] }, [], 0.95)
    expect(failed.map(({ share }) => share)).toEqual([0.125, 0.375, 0.625, 0.875])
  })
  it('has the scale, the shape and the strength of one in ten that the handbook and R survreg find', () => {
    const { parameters, line } = weibullPlot(handbook, [0.1, 1 - Math.exp(-1)], 0.95)
    expect(parameters!.scaleMPa).toBeCloseTo(606.527558, 4)
    expect(parameters!.shape).toBeCloseTo(1.72079726, 6)
    const [tenth, scale] = line as Exclude<typeof line, string>
    expect(tenth!.strengthMPa).toBeCloseTo(164.0224, 3)
    expect(scale!.strengthMPa).toBeCloseTo(606.527558, 4)
    expect(tenth!.low!).toBeLessThan(164)
    expect(tenth!.high!).toBeGreaterThan(165)
  })
  it('takes the standard error where failures are many, close to what the profile says', () => {
    const of = (count: number) => {
      const failed = Array.from({ length: count }, (_, i) => 10 * (-Math.log(1 - (i + 0.5) / count)) ** (1 / 8))
      return weibullPlot({ failed, censored: [] }, [0.1], 0.95).line as readonly { low: number; high: number }[]
    }
    const [few, many] = [of(149)[0]!, of(150)[0]!]
    expect(many.low).toBeCloseTo(few.low, 0)
    expect(many.high / few.high).toBeCloseTo(1, 2)
  })
  it('says why there is no line, and still shows what held', () => {
    expect(weibullPlot({ failed: [], censored: [7, 5] }, [0.5], 0.95)).toEqual({
      failed: [],
      held: [5, 7],
      line: 'no-failure',
      parameters: null,
    })
    expect(weibullPlot({ failed: [5, 5], censored: [] }, [0.5], 0.95).line).toBe('no-spread')
  })
})

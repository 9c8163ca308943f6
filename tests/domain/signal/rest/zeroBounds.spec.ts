import { describe, expect, it } from 'vitest'
import { createZeroBounds } from '#domain/signal/rest/zeroBounds.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

const steady = (mean: number, sd: number, swing = 0) => ({ mean, sd, swing, unsteadyBecause: null })
const noCodes = { endCodes: null }

/** What is said of a zero of 0 after so many readings, 0.1 s apart from 0 s on. */
function saidAfter(readings: readonly number[], endCodes: [number, number] | null) {
  const bounds = createZeroBounds({ endCodes })
  const timeS = Float64Array.from(readings, (_, i) => i / 10)
  bounds.see(timeS, Float64Array.from(readings), 0, readings.length)
  return bounds.refusal(steady(0, 0), null)?.because ?? null
}

describe('the bounds of a zero', () => {
  it('lie at half the rated load on either side', () => {
    const refused = (mean: number) => createZeroBounds(noCodes).refusal(steady(mean, 1), 20_000)
    expect(limitOf((mean) => refused(mean) === null, 1, 20_000)).toBeCloseTo(10_000, 0)
    expect(limitOf((mean) => refused(-mean) === null, 1, 20_000)).toBeCloseTo(10_000, 0)
    expect(refused(10_000)).toBeNull()
    expect(refused(83_886)!.because).toContain('half the rated load')
    expect(refused(83_886)!.advice).toContain('Take the load off')
  })

  it('lie at a noise of a hundredth of the rated load', () => {
    const refused = (sd: number) => createZeroBounds(noCodes).refusal(steady(0, sd), 20_000)
    expect(limitOf((sd) => refused(sd) === null, 1, 1000)).toBeCloseTo(200, 1)
    expect(refused(200)).toBeNull()
    expect(refused(84_510)!.because).toContain('scatter')
    expect(refused(84_510)!.advice).toContain('wires')
  })

  it('lie at a swing of two thousandths of the rated load', () => {
    const refused = (swing: number) => createZeroBounds(noCodes).refusal(steady(0, 1, swing), 20_000)
    expect(limitOf((swing) => refused(swing) === null, 1, 1000)).toBeCloseTo(40, 1)
    expect(refused(40)).toBeNull()
    expect(refused(41)!.because).toContain('swings')
    expect(refused(41)!.advice).toContain('look at the wires')
  })

  it('are not known without a rated load, and not needed while the signal moves or nothing was read', () => {
    expect(createZeroBounds(noCodes).refusal(steady(1e9, 1e9, 1e9), null)).toBeNull()
    expect(
      createZeroBounds(noCodes).refusal(
        { mean: 1e9, sd: 1e9, swing: 1e9, unsteadyBecause: 'the force is still rising' },
        1,
      ),
    ).toBeNull()
    expect(
      createZeroBounds(noCodes).refusal({ mean: null, sd: null, swing: null, unsteadyBecause: null }, 1),
    ).toBeNull()
  })
})

describe('a converter at the end of its range', () => {
  it('is one at either code, within the last second', () => {
    expect(saidAfter([0, 500, 0], [-500, 500])).toContain('end of its range')
    expect(saidAfter([0, -500, 0], [-500, 500])).toContain('end of its range')
    expect(saidAfter([0, 499, -499, 0], [-500, 500])).toBeNull()
    const after = (count: number) => saidAfter([501, ...Array<number>(count).fill(0)], [-500, 500])
    expect([after(10) !== null, after(11)]).toEqual([true, null])
  })

  it('is said whatever else may be said of the signal', () => {
    const bounds = createZeroBounds({ endCodes: [-500, 500] })
    bounds.see(Float64Array.of(3), Float64Array.of(500), 0, 1)
    const moving = { mean: 0, sd: 0, swing: 0, unsteadyBecause: 'the force is still rising' }
    expect(bounds.refusal(moving, null)?.because).toContain('end of its range')
    bounds.reset()
    expect(bounds.refusal(moving, null)).toBeNull()
  })

  it('shows itself by a newest reading at full scale of 16, 24 or 32 bits where its codes are not known', () => {
    const full = [
      -32_768, 32_767, 65_535, -8_388_608, 8_388_607, 16_777_215, -2_147_483_648, 2_147_483_647, 4_294_967_295,
    ]
    expect(full.map((code) => saidAfter([0, code], null)).filter((said) => said === null)).toEqual([])
    for (const code of full) for (const near of [code - 1, code + 1]) expect(saidAfter([0, near], null)).toBeNull()
    expect(saidAfter([8_388_607, 0], null)).toBeNull()
    expect(saidAfter([8_388_607], [-9e6, 9e6])).toBeNull()
  })

  it('is looked for in the samples that are handed over, and no others', () => {
    const bounds = createZeroBounds({ endCodes: [-500, 500] })
    const timeS = Float64Array.of(0, 1, 2, 3)
    bounds.see(timeS, Float64Array.of(500, 0, 0, 500), 1, 3)
    expect(bounds.refusal(steady(0, 0), null)).toBeNull()
    bounds.see(timeS, Float64Array.of(500, 0, 0, 500), 0, 0)
    expect(bounds.refusal(steady(0, 0), null)).toBeNull()
    const unknown = createZeroBounds(noCodes)
    unknown.see(timeS, Float64Array.of(0, 0, 0, 65_535), 0, 3)
    expect(unknown.refusal(steady(0, 0), null)).toBeNull()
  })
})

import { describe, expect, it } from 'vitest'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'
import type { OverlayCurve } from '#renderer/plots/overlay/overlayCurve.ts'
import { finerStretches, inView, narrowestSpan, rangeInView, wholeSpan } from '#renderer/plots/overlay/overlayView.ts'

/** Ten seconds, held in so many points of so many samples; the load is ten times the time. */
function curveOf(points: number, samples = points, change: Partial<OverlayCurve> = {}): OverlayCurve {
  const timeS = Float64Array.from({ length: points }, (_, i) => (10 * i) / (points - 1))
  const levels = buildLevels(
    timeS,
    timeS.map((time) => 10 * time),
  )
  return {
    key: 1,
    label: 'a',
    levels,
    samples,
    originS: 0,
    timeUnit: 1,
    forceUnit: 1,
    setAside: false,
    outlying: null,
    ...change,
  }
}
const stretch = (fromS: number, toS: number, points = 500) => {
  const timeS = Float64Array.from({ length: points }, (_, i) => fromS + ((toS - fromS) * i) / (points - 1))
  return buildLevels(
    timeS,
    timeS.map((time) => 10 * time),
  )
}

describe('finerStretches', () => {
  const thinned = { curve: curveOf(1000, 1_000_000), fine: null }

  it('asks for nothing while the view shows two points a column', () =>
    expect(finerStretches([thinned], { fromS: 0, toS: 10 }, 400)).toEqual([]))
  it('asks for the view with half of it more on either side', () =>
    expect(finerStretches([thinned], { fromS: 4, toS: 5 }, 400)).toEqual([{ key: 1, fromS: 3.5, toS: 5.5 }]))
  it('asks in the curve’s own time', () => {
    const shifted = { curve: { ...thinned.curve, originS: 2, timeUnit: 0.1 }, fine: null }
    expect(finerStretches([shifted], { fromS: 20, toS: 30 }, 400)).toEqual([{ key: 1, fromS: 3.5, toS: 5.5 }])
  })
  it('asks for nothing of a curve that came whole, or that lies outside the view', () => {
    const whole = { curve: curveOf(1000), fine: null }
    const elsewhere = { curve: { ...thinned.curve, originS: -100 }, fine: null }
    expect(finerStretches([whole, elsewhere], { fromS: 4, toS: 5 }, 400)).toEqual([])
  })
  it('asks for nothing that is there already, and again for a stretch that was thinned too', () => {
    const fine = { levels: stretch(3.5, 5.5), complete: true }
    expect(finerStretches([{ ...thinned, fine }], { fromS: 4, toS: 5 }, 400)).toEqual([])
    expect(
      finerStretches([{ ...thinned, fine: { ...fine, complete: false } }], { fromS: 4, toS: 4.1 }, 400),
    ).toHaveLength(1)
  })
})

describe('inView', () => {
  const curve = curveOf(1000, 1_000_000)
  const fine = { levels: stretch(3.5, 5.5), complete: true }
  it('takes the finer stretch where it reaches over the view', () =>
    expect(inView({ curve, fine }, { fromS: 4, toS: 5 })).toBe(fine))
  it('takes the whole curve where the finer stretch ends within the view', () =>
    expect(inView({ curve, fine }, { fromS: 4, toS: 6 })).toEqual({ levels: curve.levels, complete: false }))
  it('looks at the view in the curve’s own time', () => {
    // 40 to 50 of a tenth of a second each, from 0 s on, are 4 s to 5 s.
    const percent = { ...curve, timeUnit: 0.1 }
    expect(inView({ curve: percent, fine }, { fromS: 40, toS: 50 })).toBe(fine)
    expect(inView({ curve: percent, fine }, { fromS: 40, toS: 60 }).complete).toBe(false)
  })
  it('takes a finer stretch that reaches the end of the curve though the view goes on', () => {
    const last = { levels: stretch(8, 10), complete: true }
    expect(inView({ curve, fine: last }, { fromS: 9, toS: 12 })).toBe(last)
  })
})

describe('the view of several curves', () => {
  const early = curveOf(1000, 1000, { originS: 1 })
  const late = curveOf(5000, 5000, { originS: -2, forceUnit: 2 })
  it('reaches from the first sample of all to the last', () =>
    expect(wholeSpan([early, late])).toEqual({ fromS: -1, toS: 12 }))
  it('is a second without curves', () => expect(wholeSpan([])).toEqual({ fromS: 0, toS: 1 }))
  it('goes no narrower than eight samples of the fastest', () =>
    expect(narrowestSpan([early, late])).toBeCloseTo((8 * 10) / 5000, 12))
  it('does not mind a curve of one sample, and is a second about one alone', () => {
    const dot = { ...curveOf(2), levels: buildLevels(Float64Array.of(3), Float64Array.of(5)), samples: 1 }
    expect(narrowestSpan([early, dot])).toBeCloseTo((8 * 10) / 1000, 12)
    expect(wholeSpan([dot])).toEqual({ fromS: 0, toS: 1 })
  })
  it('ranges below zero as well, in shown units', () => {
    const below = curveOf(1000)
    const levels = buildLevels(
      below.levels.timeS,
      below.levels.timeS.map((time) => -10 * time),
    )
    const range = rangeInView([{ curve: { ...below, levels }, fine: null }], { fromS: 0, toS: 10 }, 3)
    expect(range).toEqual({ low: -300, high: 0 })
  })
  it('ranges over what is in sight, in shown units, zero always with it', () => {
    const range = rangeInView(
      [
        { curve: early, fine: null },
        { curve: late, fine: null },
      ],
      { fromS: 2, toS: 4 },
      3,
    )
    // early: 10 x (4 + 1) x 3 = 150 and a sample more; late: 10 x (4 - 2) / 2 x 3 = 30.
    expect(range.low).toBe(0)
    expect(range.high).toBeGreaterThanOrEqual(150)
    expect(range.high).toBeLessThan(151)
    const alone = rangeInView([{ curve: late, fine: null }], { fromS: 2, toS: 4 }, 3)
    expect(alone.high).toBeGreaterThanOrEqual(30)
    expect(alone.high).toBeLessThan(30.5)
  })
})

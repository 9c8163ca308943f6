import { describe, expect, it } from 'vitest'
import { createColumnSpans, fillColumnSpans, fillWithStretches, type PixelMap } from '#renderer/plots/columnSpans.ts'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'
import { seededNumbers } from '#tests/fakes/scripted/scriptedCurve.ts'

const noisy = (samples: number, seed: number) => {
  const random = seededNumbers(seed)
  const timeS = Float64Array.from({ length: samples }, (_, i) => i / 1000)
  const force = timeS.map((time) => 100 * Math.sin(time) + 20 * (random() - 0.5))
  return buildLevels(timeS, force)
}
const map = (change: Partial<PixelMap>): PixelMap => ({
  originS: 0,
  xPerS: 100,
  zeroY: 200,
  yPerForce: 1,
  columns: 300,
  ...change,
})
const filled = (curve: ReturnType<typeof noisy>, where: PixelMap) => {
  const spans = createColumnSpans(where.columns)
  fillColumnSpans(curve, where, spans)
  return spans
}

describe('fillColumnSpans', () => {
  it.each([
    ['all of a long curve', { xPerS: 300 / 20 }],
    ['a part of it', { originS: 7.3, xPerS: 300 / 3 }],
    ['single samples', { originS: 7.3, xPerS: 300 / 0.25 }],
    ['more than the curve', { originS: -5, xPerS: 300 / 40 }],
  ])('reaches as far as every sample, no more than a column beside it, looking at %s', (_what, change) => {
    const curve = noisy(20_000, 4)
    const where = map(change)
    const { top, bottom } = filled(curve, where)
    for (let i = 0; i < curve.timeS.length; i++) {
      const column = Math.floor((curve.timeS[i]! - where.originS) * where.xPerS)
      if (column < 0 || column >= where.columns) continue
      const y = where.zeroY - curve.force[i]! * where.yPerForce
      const beside = (spans: Float32Array) =>
        [...spans.subarray(Math.max(column - 1, 0), column + 2)].filter((edge) => !Number.isNaN(edge))
      expect(Math.min(...beside(top))).toBeLessThanOrEqual(y + 1e-4)
      expect(Math.max(...beside(bottom))).toBeGreaterThanOrEqual(y - 1e-4)
    }
  })

  it('reaches no farther than the samples that stand in the column and beside it', () => {
    const curve = noisy(20_000, 9)
    const where = map({ xPerS: 300 / 20 })
    const { top, bottom } = filled(curve, where)
    const perColumn = 1000 / where.xPerS
    for (let column = 2; column < where.columns - 2; column++) {
      const around = curve.force.subarray(Math.floor((column - 1) * perColumn), Math.ceil((column + 2) * perColumn))
      expect(top[column]!).toBeGreaterThanOrEqual(where.zeroY - Math.max(...around) - 1e-4)
      expect(bottom[column]!).toBeLessThanOrEqual(where.zeroY - Math.min(...around) + 1e-4)
    }
  })

  it('draws the straight line between samples that lie far apart', () => {
    const curve = buildLevels(Float64Array.of(0, 1), Float64Array.of(0, 100))
    const { top, bottom } = filled(curve, map({ columns: 100 }))
    // Column 25 lies from 0.25 s to 0.26 s, where the line goes from 25 to 26.
    expect([top[25], bottom[25]]).toEqual([200 - 26, 200 - 25])
  })

  it('draws the line through the view of a curve whose samples all lie outside it', () => {
    const curve = buildLevels(Float64Array.of(0, 1), Float64Array.of(0, 100))
    const { top } = filled(curve, map({ originS: 0.4, xPerS: 1000, columns: 100 }))
    expect([...top].every((y) => y > 200 - 51 && y < 200 - 39)).toBe(true)
  })

  it('is nowhere before and after the curve', () => {
    const { top, bottom } = filled(noisy(1000, 2), map({ originS: -1 }))
    expect([top[99], bottom[99], top[205], bottom[205]]).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN])
    expect(top[100]).not.toBeNaN()
  })

  it('leaves the room between the stretches of an interrupted line empty', () => {
    const spans = createColumnSpans(300)
    const stretch = (from: number) => buildLevels(Float64Array.of(from, from + 0.5), Float64Array.of(1, 1))
    fillWithStretches([stretch(0), stretch(2)], map({}), spans)
    expect([10, 100, 210].map((column) => Number.isNaN(spans.top[column]!))).toEqual([false, true, false])
  })
})

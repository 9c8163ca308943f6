import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'
import type { OverlayCurve } from '#renderer/plots/overlay/overlayCurve.ts'
import { createOverlayStretch } from '#renderer/plots/overlay/overlayStretch.ts'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

function curveOf(key: number, fromS: number, toS: number): OverlayCurve {
  const timeS = Float64Array.from({ length: 101 }, (_, i) => fromS + ((toS - fromS) * i) / 100)
  return {
    key,
    label: `${key}`,
    levels: buildLevels(
      timeS,
      timeS.map((at) => at * 10),
    ),
    samples: 101,
    originS: 0,
    timeUnit: 1,
    forceUnit: 1,
    setAside: false,
    outlying: null,
  }
}

function looked() {
  const told = { spans: 0, moves: 0, rests: 0 }
  const stretch = createOverlayStretch({
    onSpan: () => told.spans++,
    onMove: () => told.moves++,
    onRest: () => told.rests++,
  })
  stretch.setCurves([curveOf(1, 0, 10)], false)
  return { stretch, told }
}

const part = { fromS: 2, toS: 4 }

it('shows all curves first, and follows them while it shows all', () => {
  const { stretch } = looked()
  expect(stretch.view()).toMatchObject({ span: { fromS: 0, toS: 10 }, leastS: 80 / 101 })
  stretch.setCurves([curveOf(1, 0, 10), curveOf(2, 0, 20)], false)
  expect(stretch.view().span).toEqual({ fromS: 0, toS: 20 })
})

it('stays where it is when a curve comes or goes, and shows all when curves moved or none is left there', () => {
  const { stretch } = looked()
  stretch.show(part)
  stretch.setCurves([curveOf(1, 0, 10), curveOf(2, 0, 20)], false)
  expect(stretch.view().span).toEqual(part)
  stretch.setCurves([curveOf(1, 0, 10)], true)
  expect(stretch.view().span).toEqual({ fromS: 0, toS: 10 })
  stretch.show(part)
  stretch.setCurves([curveOf(3, 6, 10)], false)
  expect(stretch.view().span).toEqual({ fromS: 6, toS: 10 })
})

it('keeps a chosen range of values until all is shown', () => {
  const { stretch } = looked()
  const curves = [{ curve: curveOf(1, 0, 10), fine: null }]
  stretch.chooseRange({ bottom: 5, top: 7 })
  stretch.show(part)
  expect(stretch.range(curves, 1)).toEqual({ bottom: 5, top: 7 })
  stretch.show(null)
  expect(stretch.range(curves, 1).top).toBeCloseTo(110, 9)
})

it('tells once that the view has come to rest', () => {
  const { stretch, told } = looked()
  stretch.show(part)
  vi.advanceTimersByTime(200)
  stretch.show({ fromS: 3, toS: 4 })
  vi.advanceTimersByTime(200)
  expect(told.rests).toBe(0)
  vi.advanceTimersByTime(100)
  expect(told).toEqual({ spans: 3, moves: 2, rests: 1 })
  stretch.show(part)
  stretch.end()
  vi.runAllTimers()
  expect(told.rests).toBe(1)
})

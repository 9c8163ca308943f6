import { expect, it } from 'vitest'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'
import type { OverlayCurve } from '#renderer/plots/overlay/overlayCurve.ts'
import { overlayMarks } from '#renderer/plots/overlay/overlayMarks.ts'
import { createOverlayPicture, type OverlayView } from '#renderer/plots/overlay/overlayPicture.ts'

const black = { red: 0, green: 0, blue: 0 }
const ink = {
  plain: black,
  outlying: black,
  setAside: black,
  median: black,
  band: black,
  emphasis: black,
  ground: black,
  ratio: 1,
}
/** Up to its peak at 5 s, and down to 10 s. */
const tent = (key: number, peak: number, change: Partial<OverlayCurve> = {}): OverlayCurve => ({
  key,
  label: `C1-LL-0${key}`,
  levels: buildLevels(Float64Array.of(0, 5, 10), Float64Array.of(0, peak, 0)),
  samples: 3,
  originS: 0,
  timeUnit: 1,
  forceUnit: 1,
  setAside: false,
  outlying: null,
  ...change,
})

function marksOf(curves: OverlayCurve[], emphasis: number | null, change: Partial<OverlayView> = {}) {
  const view = { span: { fromS: 0, toS: 10 }, bottom: 0, top: 120, factor: 1, ...change }
  const picture = createOverlayPicture(200, 120)
  picture.paint(
    curves.map((curve) => ({ curve, fine: null })),
    null,
    view,
    ink,
  )
  return overlayMarks(curves, emphasis, view, picture)
}

const many = [1, 2, 3, 4, 5, 6, 7].map((key) => tent(key, 10 * key))

it('names each of a few curves at its peak', () => {
  const marks = marksOf([tent(1, 60), tent(2, 100)], null)
  expect(marks.map(({ label }) => label)).toEqual(['C1-LL-01', 'C1-LL-02'])
  expect(marks[1]!.timeS).toBeCloseTo(5, 1)
  expect(marks[1]!.value).toBeCloseTo(100, 0)
  expect(marks[1]!.value).toBeCloseTo(100, 0)
  const [raised] = marksOf([tent(2, 100)], null, { bottom: 40 })
  expect(Math.abs(raised!.value - 100)).toBeLessThan(1)
})

it('names of many curves only the one that stands out', () => {
  expect(marksOf(many, null)).toEqual([])
  expect(marksOf(many, 6).map(({ label }) => label)).toEqual(['C1-LL-06'])
})

it('names it at its highest point in view when its peak is not', () => {
  const [mark] = marksOf(many, 7, { span: { fromS: 0, toS: 2 } })
  expect(mark!.timeS).toBeCloseTo(2, 1)
  expect(mark!.value).toBeCloseTo(28, 0)
})

it('names each of six curves, and none of seven', () => {
  expect(marksOf(many.slice(0, 6), null)).toHaveLength(6)
  expect(marksOf(many, null)).toEqual([])
})

it('names a curve at the edge of the view where it only falls', () => {
  const [mark] = marksOf(many, 7, { span: { fromS: 6, toS: 10 } })
  // The middle of the first of 200 columns.
  expect(mark!.timeS).toBeCloseTo(6.01, 6)
  // 70 N x 4 s / 5 s.
  expect(mark!.value).toBeCloseTo(56, 0)
})

it('marks an outlying curve by shape and words where it lies farthest off', () => {
  const marks = marksOf([...many, tent(8, 5, { outlying: { at: 2.5, words: '90 % below' } })], null, { factor: 2 })
  expect(marks).toEqual([{ timeS: 2.5, value: 5, label: 'C1-LL-08: 90 % below', shape: 'event' }])
})

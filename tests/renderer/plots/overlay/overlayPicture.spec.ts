import { describe, expect, it } from 'vitest'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'
import type { OverlayCurve } from '#renderer/plots/overlay/overlayCurve.ts'
import { createOverlayPicture, type OverlayInk } from '#renderer/plots/overlay/overlayPicture.ts'

const shade = (red: number) => ({ red, green: 0, blue: 0 })
const ink: OverlayInk = {
  plain: shade(10),
  outlying: shade(20),
  setAside: shade(30),
  median: shade(40),
  band: shade(50),
  emphasis: shade(60),
  ground: shade(70),
  ratio: 1,
}
/** A level line over 0 to 10 s. */
const level = (key: number, force: number, change: Partial<OverlayCurve> = {}): OverlayCurve => ({
  key,
  label: `curve ${key}`,
  levels: buildLevels(Float64Array.of(0, 10), Float64Array.of(force, force)),
  samples: 2,
  originS: 0,
  timeUnit: 1,
  forceUnit: 1,
  setAside: false,
  outlying: null,
  ...change,
})
const view = { span: { fromS: 0, toS: 10 }, bottom: 0, top: 100, factor: 1 }

function painted(...curves: OverlayCurve[]) {
  const picture = createOverlayPicture(100, 100)
  picture.paint(
    curves.map((curve) => ({ curve, fine: null })),
    null,
    view,
    ink,
  )
  return picture
}
const redAt = (picture: ReturnType<typeof painted>, column: number, row: number) =>
  picture.pixels.words[row * 100 + column]! & 255

describe('the picture of many curves', () => {
  it('lays each curve on axes of its own', () => {
    const plain = painted(level(1, 80))
    // 0 to 10 s from −50 s on, in tenths of a second, and four times the force.
    const levels = buildLevels(Float64Array.of(-50, -49), Float64Array.of(320, 320))
    const moved = painted(level(1, 0, { levels, originS: -50, timeUnit: 0.1, forceUnit: 4 }))
    expect(moved.spansOf(1)).toEqual(plain.spansOf(1))
    expect(moved.nearest(50, 20, 3)).toBe(1)
  })

  it('finds the curve nearest to a point, and none where none is near', () => {
    const picture = painted(level(1, 80), level(2, 40))
    expect(picture.nearest(50, 22, 10)).toBe(1)
    expect(picture.nearest(50, 56, 10)).toBe(2)
    expect(picture.nearest(50, 40, 10)).toBeNull()
  })

  it('lays the curve that stands out over the others, and takes it off again', () => {
    const picture = painted(level(1, 50.5), level(2, 50.5))
    picture.emphasise(1, ink)
    expect(redAt(picture, 50, 49)).toBe(60)
    picture.emphasise(null, ink)
    expect(redAt(picture, 50, 49)).toBe(10)
  })

  it('draws outlying curves over plain ones and those set aside with gaps', () => {
    const outlying = painted(level(1, 50.5, { outlying: { at: 1, words: '' } }), level(2, 50.5))
    outlying.emphasise(null, ink)
    expect(redAt(outlying, 50, 49)).toBe(20)
    const aside = painted(level(1, 50.5, { setAside: true }))
    aside.emphasise(null, ink)
    const drawn = Array.from({ length: 100 }, (_, column) => redAt(aside, column, 49))
    expect(drawn).toContain(30)
    expect(drawn).toContain(0)
  })

  it('draws the median over all, where there is one', () => {
    const picture = createOverlayPicture(100, 100)
    const line = [buildLevels(Float64Array.of(0, 5), Float64Array.of(50, 50))]
    picture.paint([{ curve: level(1, 50), fine: null }], { median: line, lower: line, upper: line }, view, ink)
    picture.emphasise(null, ink)
    expect([redAt(picture, 20, 50), redAt(picture, 80, 50)]).toEqual([40, 10])
  })
})

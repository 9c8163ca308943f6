import { describe, expect, it } from 'vitest'
import { createThinnedPoints } from '#renderer/plots/decimation.ts'
import { latestOf, moves, shownRange, thinInView } from '#renderer/plots/live/liveSamples.ts'
import { startView } from '#renderer/plots/live/liveView.ts'
import { createSampleRing } from '#renderer/plots/live/sampleRing.ts'

function ringOf(...force: number[]) {
  const ring = createSampleRing(64)
  ring.push(
    Float64Array.from(force, (_, i) => i),
    Float64Array.from(force),
    [-1000, 1000],
  )
  return ring
}

describe('thinInView', () => {
  it('reaches as far as the samples in view, and draws them in shown units', () => {
    const into = createThinnedPoints(10)
    const view = { shownFromS: 0, shownToS: 4, captureFromS: null }
    expect(thinInView(ringOf(1, -3, 8, 2, 5), view, 10, 2, into)).toEqual({ lowest: -3, highest: 8 })
    expect([...into.force.subarray(0, into.length)]).toContain(16)
  })

  it('lets no glitch set the axis, and draws it all the same', () => {
    const ring = createSampleRing(64)
    const into = createThinnedPoints(10)
    ring.push(Float64Array.of(0, 1, 2, 3), Float64Array.of(1, 73_000, -9000, 5), [1, 5])
    ring.push(Float64Array.of(4), Float64Array.of(8000), null)
    const view = { shownFromS: 0, shownToS: 4, captureFromS: null }
    expect(thinInView(ring, view, 10, 2, into)).toEqual({ lowest: 0, highest: 5 })
    expect([...into.force.subarray(0, into.length)]).toContain(146_000)
  })

  it('lets what came before a capture not set its height', () => {
    const view = { shownFromS: 0, shownToS: 4, captureFromS: 3 }
    const reach = thinInView(ringOf(900, 1, 2, 3, 5), view, 10, 1, createThinnedPoints(10))
    expect(reach.highest).toBe(5)
  })
})

describe('shownRange', () => {
  it('leaves a little room below zero, and more where the force lies there', () => {
    expect(shownRange({ shownCeiling: 100 }, 0, 2, false)).toEqual({ min: -12, max: 200 })
    expect(shownRange({ shownCeiling: 100 }, -50, 1, false).min).toBeLessThanOrEqual(-50)
  })

  it('cuts what lies deep below an evaluated peak', () => {
    const { min } = shownRange({ shownCeiling: 100 }, -90, 1, true)
    expect(min).toBeGreaterThan(-90)
    expect(min).toBeLessThanOrEqual(-20)
  })
})

it('knows the newest time, and 0 of nothing', () => {
  expect(latestOf(ringOf(1, 2, 3))).toBe(2)
  expect(latestOf(createSampleRing(4))).toBe(0)
})

it('glides while any edge of the view changes', () => {
  const view = startView(100)
  expect(moves(view, { ...view })).toBe(false)
  expect(moves(view, { ...view, shownToS: view.shownToS + 1 })).toBe(true)
  expect(moves(view, { ...view, shownCeiling: view.shownCeiling + 1 })).toBe(true)
})

import { describe, expect, it } from 'vitest'
import { peakInFrame, peakInRing, peakMark } from '#renderer/plots/live/livePeak.ts'
import { createSampleRing } from '#renderer/plots/live/sampleRing.ts'

const timeS = Float64Array.of(10, 11, 12, 13)
const force = Float64Array.of(5, 80, 79, 2)

describe('the peak of a live curve', () => {
  it('stands in a frame where the load was reached', () => {
    expect(peakInFrame({ timeS, force }, 79.2)).toEqual({ timeS: 12, force: 79.2 })
  })

  it('is looked for after the capture began, not in what came before', () => {
    const ring = createSampleRing(16)
    ring.push(timeS, force, [-1e9, 1e9])
    expect(peakInRing(ring, 0, 80)).toEqual({ timeS: 11, force: 80 })
    expect(peakInRing(ring, 11.5, 80)).toEqual({ timeS: 12, force: 80 })
    expect(peakInRing(ring, 99, 80)).toEqual({ timeS: 99, force: 80 })
  })

  it('is named in shown units', () => {
    const display = { factor: 2, unit: 'u', format: (shown: number) => shown.toFixed(1) }
    expect(peakMark({ timeS: 3, force: 4 }, display)).toEqual({ timeS: 3, value: 8, label: '8.0 u', shape: 'peak' })
  })
})

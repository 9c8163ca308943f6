import { describe, expect, it } from 'vitest'
import { createThinnedPoints, thinByMinimumAndMaximum } from '#renderer/plots/decimation.ts'

const indexed = (timeS: readonly number[], force: readonly number[]) => ({
  length: timeS.length,
  timeAt: (index: number) => timeS[index]!,
  forceAt: (index: number) => force[index]!,
})

function thin(timeS: readonly number[], force: readonly number[], columnS: number, columns = 100) {
  const out = createThinnedPoints(columns)
  thinByMinimumAndMaximum(indexed(timeS, force), 0, timeS.length, columnS, out)
  return { timeS: [...out.timeS.subarray(0, out.length)], force: [...out.force.subarray(0, out.length)] }
}

/** A noisy saw of many samples, the same at every run. */
const saw = Array.from({ length: 5000 }, (_, i) => ((i * 7919) % 1009) + (i === 3333 ? 1e6 : 0))
const evenly = saw.map((_, i) => i / 1000)

describe('thinByMinimumAndMaximum', () => {
  it('keeps the highest and the lowest sample of every column, in the order in which they came', () => {
    expect(thin([0, 0.1, 0.2, 0.3, 1, 1.1], [3, 9, 1, 4, 5, 2], 1)).toEqual({
      timeS: [0.1, 0.2, 1, 1.1],
      force: [9, 1, 5, 2],
    })
  })

  it('never loses a peak of a single sample', () => {
    const { force, timeS } = thin(evenly, saw, 0.05)
    expect(Math.max(...force)).toBe(Math.max(...saw))
    expect(timeS[force.indexOf(Math.max(...saw))]).toBe(3.333)
  })

  it('gives times that rise strictly and no more than two points a column', () => {
    const { timeS } = thin(evenly, saw, 0.05)
    expect(timeS.every((time, i) => i === 0 || time > timeS[i - 1]!)).toBe(true)
    expect(timeS.length).toBeLessThanOrEqual(2 * 101)
  })

  it('passes sparse samples unchanged', () => {
    expect(thin([0.05, 0.9, 2.2], [1, 2, 3], 0.5)).toEqual({ timeS: [0.05, 0.9, 2.2], force: [1, 2, 3] })
  })

  it('keeps the same points while the view scrolls over them, so that nothing shimmers', () => {
    const out = createThinnedPoints(200)
    const tail = (from: number) => {
      thinByMinimumAndMaximum(indexed(evenly, saw), from, evenly.length, 0.05, out)
      return [...out.timeS.subarray(0, out.length)].filter((time) => time >= 2)
    }
    expect(tail(137)).toEqual(tail(1500))
  })

  it('stops when its room is full instead of writing past it', () => {
    const out = createThinnedPoints(3)
    thinByMinimumAndMaximum(indexed(evenly, saw), 0, evenly.length, 0.01, out)
    expect(out.length).toBe(out.timeS.length)
  })

  it('refuses columns without width', () => {
    expect(() => thin([0], [0], 0)).toThrow(RangeError)
  })
})

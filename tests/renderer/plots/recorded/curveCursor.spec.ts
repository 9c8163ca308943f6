import type uPlot from 'uplot'
import { describe, expect, it } from 'vitest'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { type CursorSample, createCurveCursor, cursorSteps } from '#renderer/plots/recorded/curveCursor.ts'

const curve: ForceCurve = {
  timeS: Float64Array.of(0, 1, 2, 3),
  force: Float64Array.of(0, 10, 20, 30),
  unit: 'N',
  samples: 4,
}

/** A plot that puts its cursor on the sample at `left` pixels, a pixel a second. */
function withCursor(beside: ForceCurve | null = null) {
  const read: (CursorSample | null)[] = []
  const plot = {
    valToPos: (value: number) => value,
    setCursor: ({ left }: { left: number }) => cursor.standAt(left),
  } as unknown as uPlot
  const cursor = createCurveCursor(plot, { curve: () => curve, beside: () => beside, factor: () => 2 }, (sample) =>
    read.push(sample),
  )
  return { cursor, read }
}

const whole = { fromS: 0, toS: 3 }

describe('the cursor of a recorded curve', () => {
  it('reads the sample it stands on in shown units, and the second curve there', () => {
    const { cursor, read } = withCursor({ ...curve, force: Float64Array.of(1, 11, 21, 31) })
    cursor.standAt(2)
    expect(read).toEqual([{ timeS: 2, shown: 40, beside: 42, kept: false }])
    expect(cursor.timeS()).toBe(2)
  })

  it('moves by samples and stops at the ends', () => {
    const { cursor, read } = withCursor()
    cursor.standAt(2)
    cursor.move(-1, whole)
    cursor.move(10, whole)
    cursor.move(Number.NEGATIVE_INFINITY, whole)
    expect(read.map((sample) => sample?.timeS)).toEqual([2, 1, 3, 0])
  })

  it('begins in the middle of what is in view', () => {
    const { cursor, read } = withCursor()
    cursor.move(1, { fromS: 0, toS: 2 })
    expect(read.at(-1)?.timeS).toBe(2)
  })

  it('keeps a sample whatever the pointer does, and lets it go when it is kept once more', () => {
    const { cursor, read } = withCursor()
    cursor.keep(1)
    cursor.standAt(3)
    cursor.standAt(null)
    expect(read.map((sample) => sample?.timeS)).toEqual([1, 1, 1])
    expect(read.at(-1)).toEqual({ timeS: 1, shown: 20, beside: null, kept: true })
    cursor.keep(2)
    expect(cursor.kept()).toEqual({ timeS: 2, force: 20 })
    cursor.keep(2)
    expect(cursor.kept()).toBeNull()
    expect(read.at(-1)).toBeNull()
  })

  it('moves the sample that is kept by keys', () => {
    const { cursor, read } = withCursor()
    cursor.keep(1)
    cursor.move(1, whole)
    expect(cursor.kept()).toEqual({ timeS: 2, force: 20 })
    expect(read.at(-1)).toMatchObject({ timeS: 2, kept: true })
    cursor.keep(null)
    expect(read.at(-1)).toMatchObject({ timeS: 2, kept: false })
  })

  it('reads nothing beyond the curve', () => {
    const { cursor, read } = withCursor()
    cursor.standAt(null)
    expect(read).toEqual([null])
    expect(cursor.timeS()).toBeNull()
  })
})

describe('cursorSteps', () => {
  it('goes by ten when it is to be fast, and to the ends', () => {
    expect(cursorSteps('ArrowRight', false)).toBe(1)
    expect(cursorSteps('ArrowLeft', true)).toBe(-10)
    expect(cursorSteps('End', false)).toBe(Number.POSITIVE_INFINITY)
    expect(cursorSteps('Enter', false)).toBeNull()
  })
})

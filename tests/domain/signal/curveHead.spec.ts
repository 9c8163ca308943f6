import { describe, expect, it } from 'vitest'
import { judgeHead } from '#domain/signal/curveHead.ts'

const head = (forces: readonly number[], allowed = 0) =>
  judgeHead(
    Float64Array.from(forces, (_, i) => i / 10),
    Float64Array.from(forces),
    forces.length,
    allowed,
  )

describe('the head of a curve', () => {
  it('at rest has its median for level, whatever one glitch says', () => {
    expect(head([7, 6, 7, 8, 7, 9000, 7, 6, 8])).toMatchObject({ atRest: true, level: 7 })
  })

  it('that rises starts under load, above the zero of the tare', () => {
    expect(head([200, 300, 400, 500, 600, 700, 800, 900, 1000])).toEqual({ atRest: false, level: 0, noise: 0 })
    expect(head([-20, 80, 180, 280, 380, 480, 580, 680, 780])).toMatchObject({ atRest: false, level: -20 })
  })

  it('that falls is at rest nowhere yet', () => {
    expect(head([900, 800, 700, 600, 500, 400, 300, 200, 100])).toMatchObject({ atRest: false, level: 800 })
  })

  it('may rise a little where the start threshold allows it', () => {
    expect(head([0, 1, 2, 3, 4, 5, 6, 7, 8], 10)).toMatchObject({ atRest: true, level: 4 })
  })

  it('has noise about its own line: 1.4826 times the median deviation of 1', () => {
    // Residuals about the line through the medians are 0, 1 and -1 in turn.
    expect(head([0, 1, -1, 0, 1, -1, 0, 1, -1]).noise).toBeCloseTo(1.4826, 4)
    expect(() => judgeHead(new Float64Array(0), new Float64Array(0), 0, 0)).toThrow(RangeError)
  })
})

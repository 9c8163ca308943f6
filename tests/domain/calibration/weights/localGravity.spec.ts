import { describe, expect, it } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import { localGravity } from '#domain/calibration/weights/localGravity.ts'

describe('local gravity', () => {
  it('comes from latitude and height, believed to 0.005 %', () => {
    // WGS 84 table value at 52 degrees and 100 m; tolerance half its last place.
    const local = localGravity({ kind: 'latitude', latitudeDeg: 52, heightM: 100, ellipsoid: 'WGS 84' })
    expect(Math.abs(local.gMPerS2 - 9.8121656)).toBeLessThan(5.1e-8)
    expect(local.halfWidthShare).toBe(5e-5)
  })

  it('is as typed, with the width that was typed', () => {
    const local = localGravity({ kind: 'typed', gMPerS2: 9.81, halfWidthMPerS2: 0.000981 })
    expect(local.gMPerS2).toBe(9.81)
    expect(local.halfWidthShare).toBeCloseTo(1e-4, 12)
  })

  it.each([
    [{ kind: 'latitude', latitudeDeg: 95, heightM: 0, ellipsoid: 'WGS 84' }, /latitude of 95 degrees/],
    [{ kind: 'latitude', latitudeDeg: 45, heightM: 20_000, ellipsoid: 'WGS 84' }, /height of 20000 m/],
    [{ kind: 'typed', gMPerS2: 32.17, halfWidthMPerS2: 0 }, /32.17 m\/s2/],
  ] as const)('says plainly what is wrong with %j', (choice, message) => {
    expect(() => localGravity(choice)).toThrow(Trouble)
    expect(() => localGravity(choice)).toThrow(message)
  })
})

describe('the ends of local gravity', () => {
  const at = (latitudeDeg: number, heightM: number) => () =>
    localGravity({ kind: 'latitude', latitudeDeg, heightM, ellipsoid: 'WGS 84' })
  const typed = (gMPerS2: number) => () => localGravity({ kind: 'typed', gMPerS2, halfWidthMPerS2: 0 })

  it('are the poles, 500 m below and 10,000 m above the sea, and 9.76 and 9.84 m/s2', () => {
    const ends = [at(-90, 0), at(90, 0), at(45, -500), at(45, 10_000), typed(9.76), typed(9.84)]
    for (const end of ends) expect(end).not.toThrow()
    const beyond = [at(-90.1, 0), at(90.1, 0), at(45, -501), at(45, 10_001), typed(9.759), typed(9.841)]
    for (const one of beyond) expect(one).toThrow(Trouble)
  })
})

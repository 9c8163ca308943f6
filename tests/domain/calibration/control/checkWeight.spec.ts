import { describe, expect, it } from 'vitest'
import { checkWeightVerdict } from '#domain/calibration/control/checkWeight.ts'

/** Mean 0, mean moving range 0.8, so limits ± 3 · 0.8 / 1.128 = ± 2.1277 N, by hand. */
const baseline = [0.4, -0.4, 0.4, -0.4, 0.4, -0.4, 0.4, -0.4]

describe('check weight', () => {
  it('is compared with the uncertainty until there is a chart', () => {
    expect(checkWeightVerdict([0.3], 0.5).standing).toBe('too-few')
    expect(checkWeightVerdict([0.3], 0.5)).toMatchObject({ finding: 'within-uncertainty', checksMissing: 7 })
    const off = checkWeightVerdict([0.1, -0.7], 0.5)
    expect(off).toMatchObject({ standing: 'outside', finding: 'beyond-uncertainty', deviationN: -0.7, allowedN: 0.5 })
  })

  it('is in control inside the limits of its first eight readings', () => {
    const verdict = checkWeightVerdict([...baseline, 1], 9)
    expect(verdict.standing).toBe('in-control')
    expect(verdict.upperN).toBeCloseTo(2.1277, 4)
    expect(verdict.lowerN).toBeCloseTo(-2.1277, 4)
  })

  it('asks for action outside the limits', () => {
    for (const off of [2.2, -2.2]) {
      const verdict = checkWeightVerdict([...baseline, 0.1, off], 9)
      expect(verdict.standing).toBe('outside')
      expect(verdict.finding).toBe('beyond-limits')
    }
  })

  it('warns of a slow drift that no single reading shows', () => {
    // EWMA of weight 0.3 with limits ± 2.1277 · sqrt(0.3 / 1.7) = ± 0.894; 1.2 repeated reaches 0.912 at the fourth, by hand.
    expect(checkWeightVerdict([...baseline, 1.2, 1.2, 1.2], 9).standing).toBe('in-control')
    const verdict = checkWeightVerdict([...baseline, 1.2, 1.2, 1.2, 1.2], 9)
    expect(verdict.standing).toBe('watch')
    expect(verdict.finding).toBe('drift')
  })

  it('warns of eight in a row on one side', () => {
    // Western Electric rules, the fourth: eight points in a row on one side of the centre line; so in several textbooks on control
    // charts. By chance 2 · (1/2)⁸, 0.8 %, half of it on either side.
    const oneSided = [0.2, 0.3, 0.2, 0.1, 0.3, 0.2, 0.2, 0.3]
    expect(checkWeightVerdict([...baseline, ...oneSided], 9).finding).toBe('one-sided')
    expect(checkWeightVerdict([...baseline, -0.1, ...oneSided.slice(1)], 9).standing).toBe('in-control')
  })

  it('keeps limits open by the resolution when the first readings agree to the digit', () => {
    expect(checkWeightVerdict([0, 0, 0, 0, 0, 0, 0, 0, 0.1], 9).standing).toBe('outside')
    expect(checkWeightVerdict([0, 0, 0, 0, 0, 0, 0, 0, 0.1], 9, 0.1).standing).toBe('in-control')
  })

  it('sets its limits about the centre of the first eight, wherever that is', () => {
    const about = (centre: number, ...later: number[]) =>
      checkWeightVerdict(
        [...baseline, ...later].map((value) => value + centre),
        9,
      )
    const verdict = about(10, 1)
    expect([verdict.lowerN, verdict.upperN].map((limit) => Math.round(limit! * 1e4))).toEqual([78_723, 121_277])
    expect(about(10, 0.2, -0.2, 0.2, -0.2, 0.2, -0.2, 0.2, -0.2).standing).toBe('in-control')
    expect(about(-10, 0.2, -0.2, 0.2, -0.2, 0.2, -0.2, 0.2, -0.2).standing).toBe('in-control')
  })

  it('is still inside on a limit itself', () => {
    const { lowerN, upperN } = checkWeightVerdict([...baseline, 0], 9)
    for (const limit of [lowerN!, upperN!])
      expect(checkWeightVerdict([...baseline, limit], 9).standing).toBe('in-control')
    expect(checkWeightVerdict([0.5], 0.5)).toMatchObject({ standing: 'too-few', lowerN: -0.5, upperN: 0.5 })
    expect(checkWeightVerdict([0], 0).standing).toBe('too-few')
  })

  it('says how many checks are missing, until the ninth is judged by the chart', () => {
    const missing = (count: number) => checkWeightVerdict([...baseline, 0].slice(0, count), 9)
    expect(missing(8)).toMatchObject({ standing: 'too-few', checksMissing: 0 })
    expect(missing(9)).toMatchObject({ standing: 'in-control', checksMissing: 0 })
    expect(checkWeightVerdict([...baseline, 0, 0], 9).checksMissing).toBe(0)
  })

  it('warns of eight in a row below the centre as of eight above, not of eight on it', () => {
    expect(checkWeightVerdict([...baseline, ...Array(8).fill(-0.2)], 9).finding).toBe('one-sided')
    expect(checkWeightVerdict([...baseline, ...Array(8).fill(0)], 9).finding).toBe('as-it-should')
  })

  it('refuses to judge nothing', () => {
    expect(() => checkWeightVerdict([], 1)).toThrow(RangeError)
    expect(() => checkWeightVerdict([1], -1)).toThrow(RangeError)
    expect(() => checkWeightVerdict([1], 1, -0.5)).toThrow(RangeError)
  })
})

import { describe, expect, it } from 'vitest'
import { proposeDegree } from '#domain/calibration/fit/degreeProposal.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { pontius } from './fixtures/pontius.ts'

const deflection = pontius.map(([y]) => y)
const load = pontius.map(([, x]) => x)

describe('proposal of a degree', () => {
  it('is the quadratic for the load cell case study, in both roles, as its authors chose', () => {
    // NIST/SEMATECH e-Handbook 4.6.1: the line shows lack of fit, the quadratic does not.
    for (const proposal of [proposeDegree(deflection, load), proposeDegree(load, deflection)]) {
      expect(proposal.degree).toBe(2)
      expect(proposal.reason).toEqual({ code: 'lack-not-significant' })
      expect(proposal.tried[0]!.lackOfFit!.pValue).toBeLessThan(0.0001)
      expect(proposal.tried.map(({ degree }) => degree)).toEqual([1, 2, 3])
    }
    // The case study's own test, with the readings as the steps.
    expect(proposeDegree(load, deflection).tried[1]!.lackOfFit!.f).toBeCloseTo(0.8107, 4)
  })

  it('is the line where the line fits within the repeats', () => {
    const forces = [10, 20, 30, 40, 10, 20, 30, 40, 10, 20, 30, 40]
    const noise = [2, -1, 1, -2, -1, 2, -2, 1, 1, -2, 2, -1]
    const proposal = proposeDegree(
      forces.map((force, i) => force * 100 + noise[i]!),
      forces,
    )
    expect(proposal.degree).toBe(1)
    expect(proposal.reason).toEqual({ code: 'lack-not-significant' })
  })

  it('follows the significance of the next coefficient where nothing was repeated', () => {
    const readings = [0, 1, 2, 3, 4, 5, 6, 7]
    const noise = [1, -2, 2, -1, -1, 1, 1, -1]
    const bent = proposeDegree(
      readings,
      readings.map((r, i) => 10 * r + 0.5 * r * r + 0.02 * noise[i]!),
    )
    expect(bent.degree).toBe(2)
    const straight = proposeDegree(
      readings,
      readings.map((r, i) => 10 * r + 0.02 * noise[i]!),
    )
    expect(straight.degree).toBe(1)
    expect(straight.reason).toMatchObject({ code: 'next-not-significant' })
  })

  it('is the curve that goes through every reading, rounding aside', () => {
    const readings = [0, 1, 2, 3, 0, 1, 2, 3]
    expect(
      proposeDegree(
        readings,
        readings.map((r) => 0.1 + 0.3 * r),
      ).degree,
    ).toBe(1)
    expect(
      proposeDegree(
        readings,
        readings.map((r) => 0.1 + 0.3 * r + 0.07 * r * r),
      ).degree,
    ).toBe(2)
  })

  it('says so when even the highest degree misses the steps', () => {
    const readings = [0, 10, 20, 30, 40, 50].flatMap((r) => [r - 0.01, r + 0.01])
    const forces = [0, 11, 18, 33, 37, 51].flatMap((f) => [f, f])
    const proposal = proposeDegree(readings, forces)
    expect(proposal.reason).toEqual({ code: 'all-lack' })
  })

  it('is the line for two or three steps, and says what cannot be tested', () => {
    const two = proposeDegree([0, 1, 0, 1], [0, 5, 0, 5.1])
    expect(two.degree).toBe(1)
    expect(two.reason).toEqual({ code: 'too-few-loads' })
    const three = proposeDegree([0, 1, 2], [0, 5, 10.4])
    expect(three.degree).toBe(1)
    expect(three.reason).toEqual({ code: 'too-few-steps' })
  })

  it('never is a curve that turns back between the readings', () => {
    const readings = [0, 1, 2, 3, 4].flatMap((r) => [r, r])
    const forces = [0, 6, 9, 8, 4].flatMap((f, i) => [f + 0.01 * i, f - 0.01 * i])
    expect(proposeDegree(readings, forces).degree).toBe(1)
  })
})

describe('what decides on a degree', () => {
  const eight = [0, 1, 2, 3, 4, 5, 6, 7]
  const noise = [1, -2, 2, -1, -1, 1, 1, -1]
  function codeOf(readings: readonly number[], forces: readonly number[], throughZero = false): string {
    const { reason } = proposeDegree(readings, forces, throughZero)
    return typeof reason === 'string' ? reason : reason.code
  }

  it('is a probability of 5 % where nothing was repeated', () => {
    // scipy 1.17.1: the bend at which 2 * stats.t.sf(c2 / se(c2), 5) of numpy.linalg.lstsq is 0.05: optimize.brentq, 0.0066315675.
    const bentBy = (bend: number) =>
      proposeDegree(
        eight,
        eight.map((r, i) => 10 * r + bend * r * r + 0.02 * noise[i]!),
      ).degree
    expect(limitOf((bend) => bentBy(bend) === 2, 0.001, 0.01)).toBeCloseTo(0.0066315675, 6)
  })

  it('is not rounding: what is left must be below a ten thousand millionth of the span of the forces', () => {
    const leaving = (share: number, zero = 0) =>
      codeOf(
        eight,
        eight.map((r, i) => zero + 10 * r + 70 * share * noise[i]!),
      )
    expect(leaving(1e-11)).toBe('exact')
    expect(leaving(1e-8)).not.toBe('exact')
    // Far from zero the forces span no more than before.
    expect(leaving(1e-8, 10_000)).not.toBe('exact')
    expect(codeOf([0, 1, 2], [0, 5, 10])).toBe('exact')
    expect(proposeDegree([0, 1, 2], [5, 5, 5]).degree).toBe(1)
  })

  it('is how many loads differ, of which the zero point is none where the curve is held there', () => {
    const triedOf = (readings: readonly number[], forces: readonly number[], throughZero: boolean) =>
      proposeDegree(readings, forces, throughZero).tried.map(({ degree }) => degree)
    const [readings, forces] = [
      [0, 1, 2, 0, 1, 2],
      [0, 1, 2.1, 0, 1.1, 2.2],
    ]
    expect(triedOf(readings, forces, false)).toEqual([1, 2])
    expect(triedOf(readings, forces, true)).toEqual([1, 2])
    expect(triedOf([0, 1, 0, 1], [0, 1, 0, 1.1], true)).toEqual([1])
    for (const sign of [1, -1])
      expect(
        triedOf(
          [1, 2, 1, 2].map((reading) => sign * reading),
          [1, 2.1, 1.0001, 2.1003],
          true,
        ),
      ).toEqual([1, 2])
    expect(codeOf([0, 1], [0, 5])).toBe('too-few-loads')
    expect(() => proposeDegree([3, 3], [5, 5.1])).toThrow(RangeError)
  })

  it('ends with the highest degree that can be tested where all of them lack', () => {
    const readings = [0, 10, 20, 30, 40, 50].flatMap((r) => [r - 0.01, r + 0.01])
    const forces = [0, 11, 18, 33, 37, 51].flatMap((f) => [f, f])
    const { degree, tried } = proposeDegree(readings, forces)
    expect(tried.length).toBeGreaterThan(1)
    expect(degree).toBe(tried.at(-1)!.degree)
  })
})

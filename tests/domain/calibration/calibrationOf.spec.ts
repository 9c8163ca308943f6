import { describe, expect, it } from 'vitest'
import { curvedCharacteristic, readingCounts } from '#acquisition/virtual/transferCharacteristic.ts'
import { calibrationAssessment, calibrationResult } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { polynomialAt } from '#domain/calibration/fit/polynomial.ts'
import { uncertaintyAt } from '#domain/calibration/uncertainty/uncertaintyAt.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { pontius } from './fit/fixtures/pontius.ts'

const digits = (value: number | null | undefined, expected: number) =>
  -Math.log10(Math.abs(value! / expected - 1) + 1e-16)

const rowsOf = (
  force: (pair: readonly [number, number]) => number,
  reading: (pair: readonly [number, number]) => number,
) =>
  pontius.map(
    (pair, index): CalibrationRow => ({
      run: index < 20 ? 1 : 2,
      direction: 'up',
      forceN: force(pair),
      reading: reading(pair),
    }),
  )
const loadByDeflection = rowsOf(
  ([, load]) => load,
  ([y]) => y,
)
const deflectionByLoad = rowsOf(
  ([y]) => y,
  ([, load]) => load,
)

describe('calibration of NIST StRD Pontius', () => {
  it('has the certified coefficients when its deflection is taken as the force', () => {
    // NIST StRD Pontius, certified values; nine digits asked for, eleven reached.
    const { result, proposal } = calibrationOf(deflectionByLoad)
    expect(result.degree).toBe(2)
    expect(proposal.degree).toBe(2)
    ;[0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14].forEach((expected, k) => {
      expect(digits(result.coefficients[k], expected)).toBeGreaterThan(11)
    })
    ;[0.107938612033077e-3, 0.157817399981659e-9, 0.486652849992036e-16].forEach((expected, k) => {
      expect(digits(result.coefficientSE[k], expected)).toBeGreaterThan(11)
    })
    expect(digits(result.residualSD, 0.205177424076185e-3)).toBeGreaterThan(11)
    expect(digits(result.rSquared, 0.999999900178537)).toBeGreaterThan(14)
    expect(result.readings).toBe(40)
  })

  it('agrees with exact arithmetic with the load as the force, and proposes the quadratic', () => {
    // Exact rational arithmetic (Python fractions, normal equations) of load on deflection.
    const { result } = calibrationOf(loadByDeflection)
    expect(result.degree).toBe(2)
    ;[-851.209800710622, 1365678.8549434931, 8394.392804252955].forEach((expected, k) => {
      expect(digits(result.coefficients[k], expected)).toBeGreaterThan(11)
    })
    expect(result.verifiedRangeN).toEqual([150_000, 3_000_000])
    expect(result.steps).toHaveLength(20)
  })

  it('gives errors of a step as by hand from the curve', () => {
    // R 4.2.2: m <- lm(load ~ y + I(y^2)); p <- fitted(m)[load == 150000]; 100 * (mean(p) / 150000 - 1); 100 * diff(range(p)) / 150000
    const { result } = calibrationOf(loadByDeflection)
    const [first] = result.steps
    expect(first!.q).toBeCloseTo(-0.026327148, 8)
    expect(first!.b).toBeCloseTo(0.3008569479, 8)
    expect(first).toMatchObject({ forceN: 150_000, v: null, f0: null, a: null, class: '0.5' })
    expect(result.class).toBe('0.5')
  })

  it('says that the straight line misses the steps, though its R squared is 0.99999', () => {
    const { result, lackOfFit, notes, budget } = calibrationOf(loadByDeflection, { degree: 1 })
    expect(result.rSquared).toBeGreaterThan(0.99998)
    // R as in lackOfFit.spec.ts.
    expect(lackOfFit!.f).toBeCloseTo(214.749401924, 6)
    expect(notes[0]).toEqual({ code: 'degree-chosen', degree: 1 })
    expect(notes[1]).toEqual({ code: 'lack-of-fit' })
    expect(budget!.steps[0]!.contributions.map(({ source }) => source)).toContain('lack-of-fit')
  })

  it('fits the shape that calibrate prints, with null for what the data cannot give', () => {
    const assessment = calibrationOf(loadByDeflection)
    expect(calibrationResult.safeParse(assessment.result).error).toBeUndefined()
    expect(calibrationAssessment.safeParse(assessment).error).toBeUndefined()
    expect(Object.keys(assessment.result)).toEqual([
      'degree',
      'coefficients',
      'coefficientSE',
      'residualSD',
      'rSquared',
      'readings',
      'verifiedRangeN',
      'steps',
      'class',
      'expandedUncertaintyPercent',
    ])
    expect(assessment.residualsN).toHaveLength(40)
  })
})

/** Increasing and decreasing force in three runs on a straight cell that reads 0.15 N high on the way down. */
function bench(options: { sign?: 1 | -1; zero?: number } = {}): CalibrationRow[] {
  const { sign = 1, zero = 4000 } = options
  const scatter = [3, -2, 1, -3, 2, -1, 2, -3, 1, 2, -1]
  return [1, 2, 3].flatMap((run) =>
    [0, 20, 40, 60, 80, 100, 80, 60, 40, 20, 0].map((forceN, place): CalibrationRow => {
      const down = place > 5
      const reading = zero + forceN * 1000 + (down ? 150 : 0) + scatter[(place + 4 * run) % 11]!
      return { run, direction: down ? 'down' : 'up', forceN, reading: sign * reading }
    }),
  )
}

describe('calibration of a bench', () => {
  it('knows reversibility and zero error where force was taken off again', () => {
    const { result, notes } = calibrationOf(bench(), { fitOver: 'up', resolution: 10 })
    const twenty = result.steps[0]!
    expect(result.degree).toBe(1)
    expect(result.readings).toBe(18)
    // By hand: 0.15 N of 20 N is 0.75 %, of 100 N 0.15 %; scatter is below 0.006 N, 0.03 % and 0.006 %.
    expect(Math.abs(twenty.v! - 0.75)).toBeLessThan(0.03)
    expect(Math.abs(twenty.f0! - 0.15)).toBeLessThan(0.006)
    expect(twenty.a).toBeCloseTo(0.05, 4)
    expect(twenty.class).toBe('2')
    expect(result.class).toBe('2')
    expect(notes).toContainEqual({ code: 'no-hold' })
    for (const code of ['not-repeated', 'no-decreasing', 'no-zero-return', 'no-resolution'])
      expect(notes).not.toContainEqual({ code })
  })

  it('fits over all readings when asked, which sets the curve between rising and falling', () => {
    const all = calibrationOf(bench())
    const rising = calibrationOf(bench(), { fitOver: 'up' })
    expect(all.result.readings).toBe(33)
    // Down readings are 150 counts higher, so the same reading means less force: 15 of 33 rows, about 0.07 N less.
    const at = (assessment: typeof all) => polynomialAt(assessment.result.coefficients, 54_000)
    expect(at(rising) - at(all)).toBeGreaterThan(0.04)
    expect(at(rising) - at(all)).toBeLessThan(0.1)
  })

  it('keeps the reading as it is when an inverted one is agreed to: the slope is negative', () => {
    expect(() => calibrationOf(bench({ sign: -1 }))).toThrow(/wired in reverse/)
    const inverted = calibrationOf(bench({ sign: -1 }), { invertedAccepted: true }).result
    const straight = calibrationOf(bench()).result
    expect(inverted.coefficients[1]).toBeCloseTo(-straight.coefficients[1]!, 12)
    expect(inverted.residualSD).toBeCloseTo(straight.residualSD!, 12)
    expect(inverted.steps).toHaveLength(5)
  })

  it('starts the verified range at 200 times the resolution, and judges the class there', () => {
    // ASTM E4-16 §10.1: 150 counts are 0.15 N, so 30 N.
    const { result, notes } = calibrationOf(bench(), { fitOver: 'up', resolution: 150, degree: 1 })
    expect(result.verifiedRangeN![0]).toBeCloseTo(30, 2)
    expect(result.verifiedRangeN![1]).toBe(100)
    expect(notes).toContainEqual({ code: 'steps-below-range', steps: 1 })
    const none = calibrationOf(bench(), { resolution: 900, degree: 1 }).result
    expect(none.verifiedRangeN).toBeNull()
    expect(none.class).toBe('none')
    expect(none.expandedUncertaintyPercent).toBeNull()
  })

  it('goes through zero when held there', () => {
    const { result, throughZero } = calibrationOf(bench({ zero: 0 }), { throughZero: true, degree: 1 })
    expect(throughZero).toBe(true)
    expect(result.coefficients[0]).toBe(0)
    expect(result.coefficientSE[0]).toBe(0)
    expect(Math.abs(result.coefficients[1]! - 0.001)).toBeLessThan(3e-6)
  })

  it('says nothing of accuracy when there are only as many readings as coefficients', () => {
    const rows = bench().filter((row) => row.run === 1 && row.direction === 'up' && [20, 100].includes(row.forceN))
    const { result, budget, notes } = calibrationOf(rows)
    expect(result.residualSD).toBeNull()
    expect(result.coefficientSE).toEqual([null, null])
    expect(result.expandedUncertaintyPercent).toBeNull()
    expect(result.class).toBe('none')
    expect(budget).toBeNull()
    expect(notes[0]).toEqual({ code: 'no-degrees-of-freedom' })
  })

  it('refuses what is no calibration, in one sentence', () => {
    const two = bench().filter((row) => row.forceN === 20 || row.forceN === 100)
    expect(() => calibrationOf(two, { degree: 3 })).toThrow(/needs at least 4 different loads/)
    expect(() => calibrationOf(bench(), { capacityN: 90 })).toThrow(/more than the rated load of 90 N/)
    expect(() => calibrationOf([])).toThrow(Trouble)
    const onlyDown = bench().filter((row) => row.direction === 'down')
    expect(() => calibrationOf(onlyDown, { fitOver: 'up' })).toThrow(Trouble)
  })

  it('refuses a curve that turns back between the readings', () => {
    const rows = [0, 60, 90, 98, 100].map(
      (reading, index): CalibrationRow => ({ run: 1, direction: 'up', forceN: 25 * index, reading }),
    )
    const bowed = [0, 30, 36, 39, 70, 100].map(
      (reading, index): CalibrationRow => ({
        run: 1,
        direction: 'up',
        forceN: [0, 40, 60, 61, 62, 63][index]!,
        reading,
      }),
    )
    expect(() => calibrationOf(rows, { degree: 2 })).toThrow(/turns back on itself/)
    expect(() => calibrationOf(bowed, { degree: 2 })).toThrow(/turns back on itself/)
  })
})

describe('what a calibration finds in its rows', () => {
  /** A bent cell, 0.3 % at its highest force, that reads 0.16 N high on the way down; forces of a step differ a little. */
  const scatter = [3, -2, 1, -3, 2, -1, 2, -3, 1, 2, -1]
  const rows = [1, 2, 3].flatMap((run) =>
    [20, 40, 60, 80, 100, 80, 60, 40, 20].map((stepN, place): CalibrationRow => {
      const direction = place > 4 ? 'down' : 'up'
      const forceN = stepN * (1 + 2e-4 * (run - 2))
      const bent = 1000 * forceN * (1 + (3e-3 * forceN) / 100) + (direction === 'down' ? 160 : 0)
      return { run, direction, forceN, reading: bent + scatter[(place + 4 * run) % 11]! }
    }),
  )
  const zeros = [1, 2, 3].map((run): CalibrationRow => ({ run, direction: 'up', forceN: 0, reading: 900 * run }))
  const stepOf = (forceN: number) => 20 * Math.round(forceN / 20)
  const up = rows.filter(({ direction }) => direction === 'up')
  const errorOf = (coefficients: readonly number[]) => (row: CalibrationRow) =>
    coefficients.reduce((sum, coefficient, power) => sum + coefficient * row.reading ** power, 0) - row.forceN
  const means = (some: readonly CalibrationRow[], error: (row: CalibrationRow) => number) =>
    [...Map.groupBy(some, (row) => stepOf(row.forceN)).values()].map((step) => ({
      step,
      mean: step.reduce((sum, row) => sum + error(row), 0) / step.length,
    }))

  it('has a lack of fit of the farthest mean of a step from the curve, of the rows that the curve went through', () => {
    for (const [fitOver, fitted] of [
      ['up', up],
      ['all', rows],
    ] as const) {
      const { budget, result, lackOfFit } = calibrationOf(rows, { degree: 1, fitOver })
      if (fitOver === 'up') expect(lackOfFit!.pValue).toBeLessThan(1e-6)
      const farthest = Math.max(...means(fitted, errorOf(result.coefficients)).map(({ mean }) => Math.abs(mean)))
      const lackN = budget!.model.lackOfFitHalfWidthN
      if (lackN !== null) expect(lackN).toBeCloseTo(farthest, 10)
      else expect(lackOfFit!.pValue).toBeGreaterThan(0.05)
    }
  })

  it('has residuals of the force that the curve gives less that applied, in the order of the rows', () => {
    const { result, residualsN, indicatedN } = calibrationOf(rows, { degree: 2 })
    rows.forEach((row, index) => {
      expect(residualsN[index]).toBeCloseTo(errorOf(result.coefficients)(row), 10)
      expect(indicatedN[index]).toBeCloseTo(errorOf(result.coefficients)(row) + row.forceN, 10)
    })
  })

  it('takes the scatter of rising load above zero alone for that of a reading where falling load is in the curve', () => {
    const small = [1, 2, 3].map(
      (run): CalibrationRow => ({ run, direction: 'up', forceN: 0.5, reading: 500 + 4 * run }),
    )
    const ordered = [1, 2, 3].flatMap((run) => [...zeros, ...small, ...rows].filter((row) => row.run === run))
    const low = ordered.map((row) => (row.forceN === 0 ? { ...row, reading: 40 * row.run } : row))
    const { budget, result } = calibrationOf(low, { degree: 2, fitOver: 'all' })
    const rising = low.filter(({ direction, forceN }) => direction === 'up' && forceN > 0)
    const error = errorOf(result.coefficients)
    const byForce = [...Map.groupBy(rising, (row) => (row.forceN < 1 ? 0.5 : stepOf(row.forceN))).values()]
    const squares = byForce.flatMap((step) => {
      const mean = step.reduce((sum, row) => sum + error(row), 0) / step.length
      return step.map((row) => (error(row) - mean) ** 2)
    })
    // Three readings of each of six loads: two degrees of freedom each.
    expect(budget!.model.repeatabilityDegreesOfFreedom).toBe(12)
    expect(budget!.model.repeatabilityN).toBeCloseTo(Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / 12), 10)
  })

  it('takes the spread about the curve for it only where the curve fits and holds rising load alone', () => {
    const degreesOfFreedom = (degree: 1 | 2, fitOver: 'up' | 'all') =>
      calibrationOf(rows, { degree, fitOver }).budget!.model.repeatabilityDegreesOfFreedom
    // 15 rising rows in five steps: ten about the steps. About a parabola through them twelve.
    expect(degreesOfFreedom(1, 'up')).toBe(10)
    expect(degreesOfFreedom(2, 'all')).toBe(10)
    const { budget, result } = calibrationOf(rows, { degree: 2, fitOver: 'up' })
    const larger = result.residualSD! >= budget!.model.repeatabilityN - 1e-12
    expect(budget!.model.repeatabilityDegreesOfFreedom).toBe(larger ? 12 : 10)
  })

  it('has the class of its worst step in the verified range, the lowest included', () => {
    // 0.16 N of 20 N is 0.8 %: class 1 by its reversibility of 1.5; of 40 N 0.4 %: class 0.5.
    const { result, classRanges } = calibrationOf(rows, { degree: 2, fitOver: 'up' })
    expect(result.steps.map((step) => step.class)).toEqual(['1', '0.5', '0.5', '0.5', '0.5'])
    expect(result.class).toBe('1')
    expect(classRanges).toEqual([
      { class: '0.5', fromN: expect.closeTo(40, 1), toN: expect.closeTo(100, 1) },
      { class: '1', fromN: expect.closeTo(20, 1), toN: expect.closeTo(100, 1) },
    ])
  })

  it('is none with one load', () => {
    expect(() => calibrationOf(zeros)).toThrow(/needs at least 2 different loads/)
  })
})

describe('coverage of the stated uncertainty', () => {
  /** The virtual amplifier's cell, slightly curved and hysteretic, with a capacity that shop weights come near to. */
  const cell = { ...curvedCharacteristic, capacityN: 250, nPerCount: 0.001 }
  const countsOf = (forceN: number, highestN = forceN) => readingCounts(cell, forceN, highestN)

  /** One calibration with weights, gravity and noise drawn anew, and one later reading at each of `forcesN`. */
  function simulate(
    seed: number,
    forcesN: readonly number[],
    falling: readonly number[] = [],
  ): { single: boolean[]; curve: boolean[] } {
    const random = createRandom(seed)
    const weightsShare = 5e-4
    const gravityShare = 5e-5
    const noiseCounts = 40
    // The true force differs from the stated one by what is believed of mass and gravity at most.
    const error = 1 + random.between(-weightsShare, weightsShare) + random.between(-gravityShare, gravityShare)
    const read = (trueN: number, highestN = trueN) =>
      Math.round(countsOf(trueN, highestN) + noiseCounts * random.normal())
    const rising = [0, 25, 50, 75, 100, 125, 150, 175, 200]
    const rows = [1, 2, 3].flatMap((run) => [
      ...rising.map((forceN): CalibrationRow => ({ run, direction: 'up', forceN, reading: read(forceN * error) })),
      ...falling.map(
        (forceN): CalibrationRow => ({ run, direction: 'down', forceN, reading: read(forceN * error, 200) }),
      ),
    ])
    const { result, budget } = calibrationOf(rows, { fitOver: 'up', resolution: 1, weightsShare, gravityShare })
    const held = (reading: (trueN: number) => number) =>
      forcesN.map(
        (forceN) =>
          Math.abs(polynomialAt(result.coefficients, reading(forceN)) - forceN) <=
          uncertaintyAt(budget!.model, forceN).expandedN,
      )
    return { single: held((forceN) => read(forceN)), curve: held((forceN) => countsOf(forceN)) }
  }

  it('holds a later reading at every force, and the characteristic, in at least 93 of 100 (300 seeded calibrations, k = 2)', () => {
    const forcesN = [26, 60, 110, 160, 199]
    const runs = Array.from({ length: 300 }, (_, seed) => simulate(seed + 1, forcesN))
    forcesN.forEach((_forceN, place) => {
      expect(runs.filter(({ single }) => single[place]).length / runs.length).toBeGreaterThanOrEqual(0.93)
    })
    // The characteristic itself, at all of these forces at once.
    expect(runs.filter(({ curve }) => curve.every(Boolean)).length / runs.length).toBeGreaterThanOrEqual(0.93)
  })

  it('holds the characteristic on rising load just as well when falling load was read too', () => {
    const runs = Array.from({ length: 100 }, (_, seed) => simulate(seed + 501, [60, 199], [150, 100, 50, 0]))
    expect(runs.filter(({ curve }) => curve.every(Boolean)).length).toBeGreaterThanOrEqual(93)
  })

  it('is no wider than it must be: half of it would hold the truth in fewer than 85 of 100', () => {
    // Coverage of one standard uncertainty of a normal variable is 68 % (R: pnorm(1) - pnorm(-1)); 85 leaves room for the rectangles.
    const half = Array.from({ length: 300 }, (_, seed) => simulateHalf(seed + 1001))
    expect(half.filter(Boolean).length / half.length).toBeLessThan(0.85)
  })

  function simulateHalf(seed: number): boolean {
    const random = createRandom(seed)
    const read = (trueN: number) => Math.round(countsOf(trueN) + 40 * random.normal())
    const rows = [1, 2, 3].flatMap((run) =>
      [0, 50, 100, 150, 200].map((forceN): CalibrationRow => ({ run, direction: 'up', forceN, reading: read(forceN) })),
    )
    const { result, budget } = calibrationOf(rows, { resolution: 1 })
    const indicatedN = polynomialAt(result.coefficients, read(120))
    return Math.abs(indicatedN - 120) <= uncertaintyAt(budget!.model, 120).expandedN / 2
  }
})

import { describe, expect, test } from 'vitest'
import type { CurveFilter } from '#contract/breaks/curveFilter.ts'
import { filterCurve } from '#domain/signal/filters/filterCurve.ts'

const every = (intervalS: number, count: number) => Float64Array.from({ length: count }, (_, i) => i * intervalS)
const highestOf = (values: Float64Array) => values.reduce((most, value) => Math.max(most, value))

describe('filterCurve', () => {
  test('CFC 60 at 1 kHz is scipy.signal.filtfilt over two periods of padding', () => {
    const force = Float64Array.from({ length: 40 }, (_, i) => (i < 30 ? 50 * i : 100))
    // scipy 1.17.1: filtfilt(*butter(2, 2.0775 * 60, fs=1000), [50.0 * i if i < 30 else 100.0 for i in range(40)], padlen=20)
    const expected = [
      0.0004199101508888248, 50.000120968656, 100.00006515244631, 150.00023729283953, 200.00054124957185,
      250.0007438279343, 300.00039008764446, 349.9988145945535, 399.9954517165564, 449.99067562583724,
      499.98723583629845, 549.9917946915575, 600.0149764628793, 650.0669054142281, 700.1444388510454, 750.2084042227883,
      800.1574055555272, 849.8218262619507, 899.0252172868697, 947.7758670419538, 996.6250153163675, 1047.107003767033,
      1101.9127092874428, 1164.0635013105846, 1234.0560753262419, 1304.2577313624997, 1351.5943158427274,
      1333.6336148960688, 1199.379496197919, 931.5176109224124, 594.0639366127292, 301.9565546437997,
      125.84093241221164, 56.99714231261869, 50.77973196767444, 67.82727143584654, 85.76895406931317, 96.5747642508577,
      100.26027179636426, 99.99861631629831,
    ]
    const filtered = filterCurve({ timeS: every(0.001, 40), force }, { kind: 'cfc', frequencyClass: 60 })
    for (const [i, value] of expected.entries()) expect(filtered[i]).toBeCloseTo(value, 8)
    // The peak of 1450 N is gone: a two-pass filter is never for the peak.
    expect(highestOf(filtered)).toBeLessThan(1352)
  })

  test('Butterworth 10 Hz at 80 samples a second is scipy.signal.filtfilt over two periods of padding', () => {
    const force = Float64Array.from({ length: 24 }, (_, i) => (i * i * 7) % 23)
    // scipy 1.17.1: f1 = arctan(tan(pi * 10 / 80) / (sqrt(2) - 1)**0.25) * 80 / pi; filtfilt(*butter(2, f1, fs=80), x, padlen=16)
    const expected = [
      -5.038511437405191e-6, 4.869720035020687, 9.715928358075402, 14.135092528534438, 17.323016752111116,
      18.91929854777304, 18.999129744824028, 17.599405484988342, 15.476967756050218, 14.131221722650878,
      14.275628394115055, 15.029815515848998, 15.029815510155105, 14.275628437359028, 14.131221969832568,
      15.4769683286575, 17.59940614409194, 18.99912941000462, 18.919295170899083, 17.32300875998136, 14.13508324297569,
      9.715932717394722, 4.869766522367984, 0.00010585746296998266,
    ]
    const filtered = filterCurve({ timeS: every(1 / 80, 24), force }, { kind: 'butterworth', cutoffHz: 10 })
    for (const [i, value] of expected.entries()) expect(filtered[i]).toBeCloseTo(value, 9)
  })

  const filters: CurveFilter[] = [
    { kind: 'cfc', frequencyClass: 60 },
    { kind: 'butterworth', cutoffHz: 20 },
    { kind: 'moving-average', windowS: 0.02 },
  ]

  test.each(filters)('$kind filters each stretch between gaps on its own', (filter) => {
    const stretch = Float64Array.from({ length: 400 }, (_, i) => 5 * i + ((i * 7919) % 11))
    const fall = Float64Array.from({ length: 300 }, (_, i) => 40 + ((i * 31) % 7))
    const apart = [stretch, fall].map((force) => filterCurve({ timeS: every(0.001, force.length), force }, filter))
    const timeS = every(0.001, 700).map((time, i) => (i < 400 ? time : time + 0.25))
    const force = Float64Array.of(...stretch, ...fall)
    const together = filterCurve({ timeS, force }, filter)
    for (const [i, value] of [...apart[0]!, ...apart[1]!].entries()) expect(together[i]).toBeCloseTo(value, 6)
  })

  test.each(filters)('$kind is not troubled by samples that come a little unevenly', (filter) => {
    const timeS = Float64Array.from({ length: 2000 }, (_, i) => 0.001 * (i + (((i * 7919) % 101) - 50) / 500))
    const force = timeS.map((time) => 1000 * time)
    const filtered = filterCurve({ timeS, force }, filter)
    // Times are out by at most a tenth of an interval, 0.1 N on this ramp; a window may hold a sample more on one side, 0.5 N.
    for (const [i, value] of force.entries())
      expect(Math.abs(filtered[i]! - value)).toBeLessThan(filter.kind === 'moving-average' ? 0.6 : 0.25)
  })

  test.each(filters)('$kind takes a lone sample between gaps and a curve of none as they are', (filter) => {
    const timeS = every(0.001, 60).map((time, i) => (i < 40 ? time : i === 40 ? time + 0.1 : time + 0.2))
    const force = Float64Array.from({ length: 60 }, (_, i) => (i === 40 ? 777 : 5))
    expect(filterCurve({ timeS, force }, filter)).toEqual(force)
    expect(filterCurve({ timeS: every(1, 0), force: every(1, 0) }, filter)).toHaveLength(0)
    expect(filterCurve({ timeS: Float64Array.of(0), force: Float64Array.of(3) }, filter)).toEqual(Float64Array.of(3))
  })

  test('takes two samples for a series too', () => {
    // scipy 1.17.1: f1 = arctan(tan(pi * 0.1) / (sqrt(2) - 1)**0.25) / pi; filtfilt(*butter(2, f1, fs=1), [0.0, 10.0], padtype='odd', padlen=1)
    const curve = { timeS: Float64Array.of(0, 1), force: Float64Array.of(0, 10) }
    const filtered = filterCurve(curve, { kind: 'butterworth', cutoffHz: 0.1 })
    for (const [i, value] of [-1.249241863583463, 1.079456714033992].entries())
      expect(filtered[i]).toBeCloseTo(value, 11)
  })

  test.each(filters)('$kind takes away the peak of a steep ramp and drop, so it is never for the peak', (filter) => {
    const force = Float64Array.from({ length: 3000 }, (_, i) => (i >= 2490 && i <= 2500 ? 500 * (i - 2490) : 0))
    expect(highestOf(filterCurve({ timeS: every(0.001, 3000), force }, filter))).toBeLessThan(4500)
  })

  test('refuses what filterRefusal refuses', () => {
    const curve = { timeS: every(1 / 80, 500), force: new Float64Array(500) }
    expect(() => filterCurve(curve, { kind: 'cfc', frequencyClass: 60 })).toThrow(RangeError)
    expect(() => filterCurve(curve, { kind: 'butterworth', cutoffHz: 33 })).toThrow(RangeError)
    expect(() => filterCurve(curve, { kind: 'moving-average', windowS: 0.01 })).toThrow(RangeError)
  })
})

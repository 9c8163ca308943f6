import { describe, expect, test } from 'vitest'
import { filterTwoPass, onePassShare, secondOrderLowPass } from '#domain/signal/filters/twoPass.ts'

// scipy 1.17.1: b, a = scipy.signal.butter(2, cutoff, fs=rate); b1 and b2 are -a[1] and -a[2]
test.each([
  [1000, 10_000, 0.0674552738890719, 0.1349105477781438, 1.1429805025399011, -0.41280159809618877],
  [5, 80, 0.029954582208092474, 0.05990916441618495, 1.454243586251585, -0.5740619150839549],
  [0.5, 80, 0.00037506961629696616, 0.0007501392325939323, 1.9444776577670935, -0.9459779362322813],
  [30, 80, 0.5690355937288493, 1.1380711874576985, -0.9428090415820634, -0.33333333333333337],
])('one pass at %d Hz of %d is that of scipy.signal.butter', (cutoffHz, rateHz, a0, a1, b1, b2) => {
  const made = secondOrderLowPass(Math.tan((Math.PI * cutoffHz) / rateHz))
  const expected = { a0, a1, a2: a0, b1, b2 }
  for (const key of ['a0', 'a1', 'a2', 'b1', 'b2'] as const) expect(made[key]).toBeCloseTo(expected[key], 13)
})

const series = Float64Array.from({ length: 24 }, (_, i) => (i * i * 7) % 23)
const tenHz = secondOrderLowPass(Math.tan((Math.PI * 10) / 80))

describe('filterTwoPass', () => {
  // scipy 1.17.1: filtfilt(*butter(2, 10, fs=80), [(i*i*7) % 23 for i in range(24)], padtype='odd', padlen=8)
  const padded = [
    0.007966884022166387, 5.0048811768087305, 9.779159606800627, 13.93721861997534, 16.927147259514587,
    18.464389290247667, 18.601447299962885, 17.555855350654134, 15.969448450785833, 14.78239349638874,
    14.45714157158348, 14.615072932134181, 14.615069014606448, 14.457188106843656, 14.782653806193785,
    15.970132237526006, 17.557051626092374, 18.602791171210495, 18.464598104949648, 16.923699172042515,
    13.926833959997742, 9.76012874465909, 4.98220689420842, 0.0009270644730906552,
  ]
  // scipy 1.17.1: the same with padtype=None
  const bare = [
    2.4228145309750584, 5.5110249705957255, 9.451460267383416, 13.459621695255045, 16.58615263412474,
    18.302024180496627, 18.561666422243878, 17.571648585304718, 15.99637118614434, 14.801508106734552,
    14.467031764690438, 14.623422282626146, 14.632378202988228, 14.490552684718155, 14.826221558091369,
    15.991176738663992, 17.483525412873593, 18.330179153686025, 17.913467116294676, 16.18259694478762,
    13.484190282912287, 10.731595165091862, 9.057957722115558, 8.614535852455878,
  ]
  test.each([
    [8, padded],
    [0, bare],
  ])('with a padding of %d values is scipy.signal.filtfilt', (padding, expected) => {
    const filtered = filterTwoPass(series, tenHz, padding)
    for (const [i, value] of expected.entries()) expect(filtered[i]).toBeCloseTo(value, 11)
  })

  test('leaves a constant as it is to the last bit, however large', () => {
    for (const level of [0, 1 / 3, -8_388_608.25, 1e9]) {
      const filtered = filterTwoPass(new Float64Array(50).fill(level), tenHz, 20)
      expect(filtered.every((value) => value === level)).toBe(true)
    }
  })

  test('leaves a ramp as it is, from the first sample to the last', () => {
    const ramp = Float64Array.from({ length: 200 }, (_, i) => 100 + 3 * i)
    const filtered = filterTwoPass(ramp, tenHz, 32)
    // 1e-6: what is left of the start after 32 values is exp(-2 pi 12.5 / 80 / sqrt(2) * 32 * 2) of a lag of some units.
    for (const [i, value] of ramp.entries()) expect(Math.abs(filtered[i]! - value)).toBeLessThan(1e-6)
  })

  test('shifts nothing in time: what is the same from both sides stays so', () => {
    const filtered = filterTwoPass(
      Float64Array.from({ length: 101 }, (_, i) => (i === 50 ? 1 : 0)),
      tenHz,
      30,
    )
    for (let k = 1; k < 40; k++) expect(filtered[50 + k]).toBeCloseTo(filtered[50 - k]!, 12)
  })

  // scipy 1.17.1: filtfilt(*butter(2, 10, fs=80), x, padtype='odd', padlen=len(x) - 1), the longest that it takes
  test.each([
    [
      [0, 10],
      [-1.1161037178419613, 1.3309506061720608],
    ],
    [
      [0, 10, 4],
      [-0.25473835305720105, 2.1345469021787746, 3.4300098113877793],
    ],
    [
      [0, 7, 5, 17, 20],
      [-0.38181763120362144, 4.5286271985829885, 9.673501207241479, 15.1445164704609, 20.707821262334146],
    ],
  ])('takes a padding longer than the series %j for as much as there is', (values, expected) => {
    const filtered = filterTwoPass(Float64Array.from(values), tenHz, 1000)
    for (const [i, value] of expected.entries()) expect(filtered[i]).toBeCloseTo(value, 11)
  })

  test('each pass takes half of the 3 dB: with |H|² = 1 / (1 + s⁴) twice half of the power is left', () => {
    expect((1 / (1 + onePassShare ** 4)) ** 2).toBeCloseTo(0.5, 12)
  })

  test('takes a padding longer than the series, a single value and none at all', () => {
    expect(filterTwoPass(series.subarray(0, 5), tenHz, 1000)).toEqual(filterTwoPass(series.subarray(0, 5), tenHz, 4))
    expect(filterTwoPass(Float64Array.of(7), tenHz, 10)).toEqual(Float64Array.of(7))
    expect(filterTwoPass(new Float64Array(0), tenHz, 10)).toHaveLength(0)
  })

  test('changes nothing in what it is given', () => {
    const before = series.slice()
    filterTwoPass(series, tenHz, 8)
    expect(series).toEqual(before)
  })

  test('refuses what is no frequency and no padding', () => {
    for (const w of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => secondOrderLowPass(w)).toThrow(RangeError)
    expect(() => filterTwoPass(series, tenHz, -1)).toThrow(RangeError)
  })
})

import { describe, expect, it } from 'vitest'
import {
  quantitiesIn,
  withoutEndingZeros,
  writeCount,
  writeFixed,
  writeLimit,
  writeNumber,
  writeTyped,
} from '#words/quantities.ts'

const { SI, US } = { SI: quantitiesIn('SI'), US: quantitiesIn('US') }

describe('quantities', () => {
  // NIST SP 811 (2008), appendix B.8: 1 lbf = 4.448 222 N, 1 psi = 6.894 757 kPa, 1 in = 25.4 mm, 1 in² = 645.16 mm², 1 lb = 0.453 592 37 kg, 1 ft·lbf = 1.355 818 J.
  it.each([
    ['force', 4448.222, '1000', 'lbf'],
    ['strength', 6.894757, '1000', 'psi'],
    ['length', 25.4, '1', 'in'],
    ['area', 645.16, '1', 'in²'],
    ['mass', 0.45359237, '1', 'lb'],
    ['energy', 1.355818, '12', 'in·lbf'],
  ] as const)('shows a %s of %d as %s %s', (name, stored, shown, unit) => {
    expect(withoutEndingZeros(US[name].number(stored))).toBe(shown)
    expect(US[name].unit).toBe(unit)
  })

  it('shows SI values as they are stored', () => {
    expect(SI.force.text(4812.4)).toBe('4812\u00a0N')
    expect(SI.strength.text(8.02)).toBe('8.02\u00a0MPa')
    expect(SI.area.text(600)).toBe('600\u00a0mm²')
  })

  it('writes into a field what reads back as the same length, and nothing for what is not known', () => {
    const inches = writeTyped(30, US.length.factor)
    expect(inches).toBe('1.1811')
    expect((Number(inches) / US.length.factor).toFixed(2)).toBe('30.00')
    expect(writeTyped(null, 1)).toBe('')
  })

  it('writes a dash for what is not known, never 0', () => {
    expect(SI.force.text(null)).toBe('–')
    expect(US.area.number(null)).toBe('–')
  })
})

describe('writeNumber', () => {
  it.each([
    [12345.6, '12\u2009346'],
    [1234.5, '1235'],
    [123.45, '123.5'],
    [12.345, '12.35'],
    [-0.0001, '0.000'],
    [-5.5, '−5.500'],
  ])('writes %d as %s', (value, text) => expect(writeNumber(value, 3)).toBe(text))
})

describe('writeLimit', () => {
  it.each([
    [0.026, 1, 'below 0.1'],
    [0.06, 1, '0.1'],
    [0.0005, 2, 'below 0.01'],
    [0.33, 2, '0.33'],
    [0, 2, '0.00'],
  ])('writes %d to %d decimals as %s, and never a limit above 0 as 0', (value, most, text) =>
    expect(writeLimit(value, most)).toBe(text),
  )
})

describe('writeFixed', () => {
  it('keeps its decimals, so that live digits do not dance', () => {
    expect([0, 9.96, 100].map((value) => writeFixed(value, 1))).toEqual(['0.0', '10.0', '100.0'])
  })
})

it('counts with the same thin space as every other number', () => {
  expect([7, 1587, 10_000, 2_345_678].map(writeCount)).toEqual(['7', '1587', '10\u2009000', '2\u2009345\u2009678'])
})

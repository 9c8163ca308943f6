import { describe, expect, it } from 'vitest'
import { signedNumber, writeCount, writeFixed, writeLimit, writeNumber } from '#words/units/numbers.ts'

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

it('gives changes a sign, and none to nothing', () => {
  expect([signedNumber(0.0123, 2), signedNumber(-0.5, 1), signedNumber(0.001, 2), signedNumber(null, 2)]).toEqual([
    '+0.01',
    '−0.5',
    '0.00',
    '–',
  ])
})

import { expect, test } from 'vitest'
import { decimalReadings, powerOfTen } from '#archive/curves/decimals.ts'

test('keeps counts as they are', () => {
  expect(decimalReadings(Float64Array.of(-8388608, 0, 8388607))).toEqual({
    mantissas: Float64Array.of(-8388608, 0, 8388607),
    decimals: 0,
  })
})

test('finds the fewest decimals that hold every reading exactly', () => {
  expect(decimalReadings(Float64Array.of(12.5, 0.001, -3))).toEqual({
    mantissas: Float64Array.of(12_500, 1, -3000),
    decimals: 3,
  })
})

test('holds every text of a number with up to fifteen digits', () => {
  for (const text of ['0.1', '0.123456789012345', '123456.789012345', '-0.07', '4.35', '1.005', '999999999999999']) {
    const found = decimalReadings(Float64Array.of(Number(text)))
    expect(found, text).not.toBeNull()
    expect(found!.mantissas[0]! / powerOfTen(found!.decimals)).toBe(Number(text))
  }
})

test('gives up on doubles that no short decimal equals, and on very small and very large ones', () => {
  for (const reading of [Math.PI, 0.1 + 0.2, 1e-7, 1e15, 1e300, Number.MIN_VALUE])
    expect(decimalReadings(Float64Array.of(1, reading)), String(reading)).toBeNull()
})

test('gives up when one reading needs decimals that push another past fifteen digits', () => {
  expect(decimalReadings(Float64Array.of(999_999_999_999, 0.0001))).toBeNull()
})

import { expect, test } from 'vitest'
import { packedLength, packNumbers, unpackNumbers } from '#archive/curves/bitPacking.ts'

function roundTrip(values: Float64Array): Float64Array {
  const target = new Float64Array(values.length)
  unpackNumbers(packNumbers(values), target)
  return target
}

test('packs the numbers of the worked example of FORMAT.md into its bytes', () => {
  expect(Buffer.from(packNumbers(Float64Array.of(0, 0, 1, -2))).toString('hex')).toBe('02e0')
  expect(Buffer.from(packNumbers(Float64Array.of(3, 49, -2, 962))).toString('hex')).toBe('0b0610c300080f')
})

test('gives back every number at every width, on both sides of zero', () => {
  for (let bits = 0; bits <= 52; bits++) {
    const edge = Math.min(2 ** bits, 2 ** 52 - 1)
    const values = Float64Array.from({ length: 130 }, (_, i) => (i % 2 === 0 ? 1 : -1) * Math.max(edge - i, 0))
    // Adding 0 makes minus zero zero, which is what comes back.
    expect(roundTrip(values)).toEqual(values.map((value) => value + 0))
  }
})

test('gives back any count of numbers around the size of a group', () => {
  for (const count of [0, 1, 63, 64, 65, 127, 128, 129]) {
    const values = Float64Array.from({ length: count }, (_, i) => i * i - 500)
    expect(roundTrip(values)).toEqual(values)
  }
})

test('stores equal numbers of zero in one byte a group', () => {
  expect(packedLength(new Float64Array(6400))).toBe(100)
  expect(packNumbers(new Float64Array(6400)).length).toBe(100)
})

test('refuses bytes that are too few, too many or have an impossible width', () => {
  const bytes = packNumbers(Float64Array.of(5, -900, 70_000))
  const target = new Float64Array(3)
  expect(() => unpackNumbers(bytes.subarray(0, -1), target)).toThrow(RangeError)
  expect(() => unpackNumbers(Uint8Array.of(...bytes, 0), target)).toThrow(RangeError)
  expect(() => unpackNumbers(Uint8Array.of(54, ...new Uint8Array(30)), target)).toThrow(RangeError)
  expect(() => unpackNumbers(new Uint8Array(0), target)).toThrow(RangeError)
})

import { expect, it } from 'vitest'
import { planeOf } from '#domain/strength/face/planes.ts'
import { filledFromAround, outsideGlare } from '#domain/strength/face/shine.ts'
import { outcomeOf } from '#tests/reference/faces/outcomeOf.ts'

const size = { width: 60, height: 40 }
const inMiddle = (i: number) => Math.abs((i % 60) - 30) <= 3 && Math.abs(Math.floor(i / 60) - 20) <= 3

it('leaves out white and saturated light with what lies next to it', () => {
  const plain = (value: number) => planeOf(size, () => value)
  const glaring = planeOf(size, (i) => (inMiddle(i) ? 1 : 0.4))
  for (const face of [
    { red: glaring, green: glaring, blue: glaring },
    { red: glaring, green: plain(0.4), blue: plain(0.2) },
  ]) {
    const counts = outsideGlare(face)
    expect(counts.values[20 * 60 + 30]).toBe(0)
    expect(counts.values[20 * 60 + 36]).toBe(0)
    expect(counts.values[20 * 60 + 45]).toBe(1)
  }
})

it('counts a light wood that is not saturated', () => {
  const face = { red: planeOf(size, () => 0.95), green: planeOf(size, () => 0.8), blue: planeOf(size, () => 0.6) }
  expect(outsideGlare(face).values.every((one) => one === 1)).toBe(true)
})

it('fills what does not count from what lies around it and leaves the rest', () => {
  const values = planeOf(size, (i) => (inMiddle(i) ? 99 : i % 60 < 30 ? 20 : 22))
  const counts = planeOf(size, (i) => (inMiddle(i) ? 0 : 1))
  const filled = outcomeOf(filledFromAround(values, counts))
  expect(filled.values[20 * 60 + 30]).toBeGreaterThan(20)
  expect(filled.values[20 * 60 + 30]).toBeLessThan(22)
  expect(filled.values[0]).toBe(20)
})

it('leaves values as they are where nothing counts', () => {
  const values = planeOf(size, () => 7)
  expect(
    outcomeOf(
      filledFromAround(
        values,
        planeOf(size, () => 0),
      ),
    ).values.every((value) => value === 7),
  ).toBe(true)
})

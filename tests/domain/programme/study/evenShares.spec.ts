import { expect, it } from 'vitest'
import { evenShares } from '#domain/programme/study/evenShares.ts'

const sharesOf = (gives: readonly number[], blocks: number) => {
  const { numerators, denominator } = evenShares(gives, blocks)
  return numerators.map((one) => one / denominator)
}

it('boards that give enough share evenly', () => {
  expect(sharesOf([50, 40, 60], 60)).toEqual([20, 20, 20])
  expect(sharesOf([50, 40, 60, 41], 54)).toEqual([13.5, 13.5, 13.5, 13.5])
})

it('a small board gives all it has, and the others share the rest', () => {
  expect(sharesOf([3, 100, 100], 72)).toEqual([3, 34.5, 34.5])
  expect(sharesOf([100, 10, 3, 100], 73)).toEqual([30, 10, 3, 30])
})

it('boards that give just enough are used up', () => {
  expect(sharesOf([4, 9, 1], 14)).toEqual([4, 9, 1])
})

it('refuses more blocks than the boards give', () => {
  expect(() => evenShares([4, 9], 14)).toThrow(RangeError)
  expect(() => evenShares([], 1)).toThrow(RangeError)
})

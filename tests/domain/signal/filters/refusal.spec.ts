import { expect, test } from 'vitest'
import { rounded, roundedDown, roundedUp } from '#domain/signal/filters/refusal.ts'

test('a figure has three digits', () => {
  expect([1234.4, 1236, 0.0012345].map(rounded)).toEqual([1230, 1240, 0.00123])
})

test('what is advised as the most is never above it, nor far below', () => {
  expect([1234, 1236, 1230, 0.0012399].map(roundedDown)).toEqual([1230, 1230, 1230, 0.00123])
})

test('what is advised as the least is never below it, nor far above', () => {
  expect([1234, 1236, 1230, 0.0012301].map(roundedUp)).toEqual([1240, 1240, 1230, 0.00124])
})

import { describe, expect, it } from 'vitest'
import { readNumber } from '#renderer/widgets/typedNumber.ts'

describe('readNumber', () => {
  it.each([
    ['12', 12],
    [' 0,25 ', 0.25],
    ['.5', 0.5],
    ['-3', -3],
    ['', null],
    ['12 mm', undefined],
    ['1,2,3', undefined],
    ['Infinity', undefined],
    ['0x10', undefined],
  ])('reads %j as %j', (text, number) => expect(readNumber(text)).toBe(number))
})

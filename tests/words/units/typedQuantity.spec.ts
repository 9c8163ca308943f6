import { describe, expect, it } from 'vitest'
import { quantitiesIn } from '#words/units/quantities.ts'
import { convertTyped, keptText, noUnit, readQuantity, withItsUnit } from '#words/units/typedQuantity.ts'

const [SI, US] = [quantitiesIn('SI'), quantitiesIn('US')]

describe('readQuantity', () => {
  it.each([
    ['30', SI.length, 30],
    ['1 3/16', US.length, 30.1625],
    ['30 mm', US.length, 30],
    ['1 3/16 in', SI.length, 30.1625],
    ['25 kN', SI.force, 25_000],
    ['25 kN', US.force, 25_000],
    ['12.5 lbf', SI.force, 55.6027701908],
    ['68', US.temperature, 20],
    ['20 °C', US.temperature, 20],
    ['2.75 lb', SI.mass, 1.2473790175],
    ['', SI.mass, null],
    ['3/4', noUnit, 0.75],
  ])('reads %j in a field of its unit', (text, field, stored) =>
    expect(readQuantity(text, field, 'it')).toEqual({ stored }),
  )

  it.each([
    ['ten', '“ten” is not a number. Write the length in inches.'],
    ['1,234', '“1,234” may be 1.234 or 1234. Write the one you mean without the comma.'],
    ['3 kg', '“3 kg” has a unit that does not fit here. Write the length in inches.'],
  ])('asks about %j instead of guessing', (text, error) =>
    expect(readQuantity(text, US.length, 'the length in inches')).toEqual({ error }),
  )
})

describe('a text after its unit became another', () => {
  it('is the same quantity: 30 x 20 mm are 1.1811 x 0.787402 in', () => {
    // NIST SP 811: 1 in = 25.4 mm exactly.
    expect(convertTyped('30', 'mm', 'in')).toBe('1.1811')
    expect(convertTyped('20', 'mm', 'in')).toBe('0.787402')
    expect(convertTyped('1 3/16', 'in', 'mm')).toBe('30.1625')
  })

  it.each(['', 'ten', '1,234', '25 kN'])('stays as it is where it is %j', (text) =>
    expect(convertTyped(text, 'N', 'lbf')).toBe(text),
  )

  it('keeps its own unit when it is read', () => {
    expect(withItsUnit('30', 'mm')).toBe('30 mm')
    expect(withItsUnit('1 in', 'mm')).toBe('1 in')
    expect(readQuantity(withItsUnit('30', 'mm'), US.length, '')).toEqual({ stored: 30 })
  })
})

it('keeps every digit of what is stored', () => {
  expect(keptText(25.4 / 3, SI.length)).toBe('8.46666666667')
  expect(keptText(20, US.temperature)).toBe('68')
  expect(keptText(null, SI.length)).toBe('')
})

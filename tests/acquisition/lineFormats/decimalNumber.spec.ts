import { describe, expect, it } from 'vitest'
import { scanCounter, scanDecimal } from '#acquisition/lineFormats/decimalNumber.ts'
import { createRandom } from '#domain/numbers/random.ts'

const ascii = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

function scan(text: string) {
  const found = { value: Number.NaN, next: -1, whole: false }
  return scanDecimal(ascii(text), 0, found) ? found : null
}

describe('decimal numbers from bytes', () => {
  it('are what the language itself reads from the same text, as long as whole numbers are exact', () => {
    // Reference: Number() of the JavaScript engine.
    const random = createRandom(5)
    const digits = (most: number) => {
      let text = ''
      for (let i = random.wholeBetween(1, most); i > 0; i--) text += random.wholeBetween(0, 9)
      return text
    }
    for (let i = 0; i < 20_000; i++) {
      let text = ['', '-', '+'][random.wholeBetween(0, 2)]! + digits(random.unit() < 0.2 ? 25 : 9)
      if (random.unit() < 0.5) text += `.${digits(random.unit() < 0.2 ? 25 : 6)}`
      if (random.unit() < 0.2) text += `e${['', '-', '+'][random.wholeBetween(0, 2)]}${random.wholeBetween(0, 40)}`
      const found = scan(text)
      const exact = Math.abs(Number(text)) <= Number.MAX_SAFE_INTEGER
      if (found === null ? exact : !exact || found.value !== Number(text) + 0 || found.next !== text.length)
        throw new Error(`${text} was read as ${found?.value}`)
    }
  })

  it.each([
    ['12.', 12],
    ['.5', 0.5],
    ['-000.120', -0.12],
    ['1e3', 1000],
    ['-0', 0],
    ['9007199254740991', 9_007_199_254_740_991],
    ['-9007199254740991', -9_007_199_254_740_991],
    ['00000000000000000000007', 7],
  ])('reads %s', (text, value) => {
    expect(scan(text)?.value).toBe(value)
  })

  it.each(['', '-', '.', '+.', 'e5', 'NaN', 'Infinity', '1e999', '--1', ' 1'])('does not read "%s"', (text) => {
    expect(scan(text)).toBeNull()
  })

  // 2^53 and 2^53 + 1 have one and the same double.
  it.each([
    '9007199254740992',
    '9007199254740993',
    '-9007199254740993',
    '9007199254740993.5',
    '1e16',
    '0.9007199254740993e16',
  ])('are none where whole numbers would be rounded: %s', (text) => {
    expect(scan(text)).toBeNull()
  })

  it('leave a letter e alone when no exponent follows', () => {
    expect(scan('12e')).toMatchObject({ value: 12, next: 2 })
    expect(scan('12e+')).toMatchObject({ value: 12, next: 2 })
  })

  it('end a counter at 2^32 - 1', () => {
    const found = { value: 0, next: 0, whole: false }
    expect(scanCounter(ascii('4294967295,'), 0, found)).toBe(true)
    expect(found).toMatchObject({ value: 4294967295, next: 10 })
    expect(scanCounter(ascii('4294967296'), 0, found)).toBe(false)
    expect(scanCounter(ascii('-1'), 0, found)).toBe(false)
  })
})

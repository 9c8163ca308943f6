/** A number as a person typed it, with the unit written behind it ('' without). */
export type TypedNumber =
  | { kind: 'nothing' }
  | { kind: 'number'; value: number; unit: string }
  /** A comma may part thousands or decimals: both readings are given, and a person has to say which. */
  | { kind: 'ambiguous'; asDecimal: number; asThousands: number }
  | { kind: 'not-a-number' }

/** Nobody types a longer number. */
const longest = 100

const fraction = /^([+-]?)(?:(\d+)[ -])? ?(\d+) ?\/ ?(\d+)(?!\d) ?(.*)$/
const decimal = /^([+-]?)((?:\d{1,3}(?: \d{3})+(?!\d))?[\d.,]*)((?:[eE][+-]?\d+)?) ?(.*)$/

/**
 * Reads a number as people write it: 12.5, 3,5, 1 200, 1 3/16, 1-3/16, ¾, 25 kN, 1e-3. A comma before three digits is
 * ambiguous, unless a zero stands before it or another separator shows what it means. A lone point parts decimals, as the
 * program writes them.
 */
export function readTypedNumber(text: string): TypedNumber {
  if (text.length > longest) return { kind: 'not-a-number' }
  const plain = plainCharacters(text)
  if (plain === '') return { kind: 'nothing' }
  const parts = fraction.exec(plain)
  if (parts !== null) {
    const [, sign, whole = '0', top, bottom, unit = ''] = parts
    const value = Number(whole) + Number(top) / Number(bottom)
    return Number.isFinite(value) ? number(sign, value, unit) : { kind: 'not-a-number' }
  }
  const [, sign, body = '', exponent = '', unit = ''] = decimal.exec(plain) ?? []
  const digits = body.replaceAll(' ', '')
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits)) {
    const factor = Number(`${sign === '-' ? '-' : ''}1${exponent}`)
    return {
      kind: 'ambiguous',
      asDecimal: Number(digits.replace(',', '.')) * factor,
      asThousands: Number(digits.replace(',', '')) * factor,
    }
  }
  const written = withDecimalPoint(digits)
  const value = written === null ? Number.NaN : Number(written + exponent)
  // Beyond 2^53 reading would round
  return value <= Number.MAX_SAFE_INTEGER ? number(sign, value, unit) : { kind: 'not-a-number' }
}

function number(sign: string | undefined, value: number, unit: string): TypedNumber {
  return { kind: 'number', value: sign === '-' ? -value : value, unit }
}

/** One kind of space, minus and fraction bar; a fraction in one character becomes three, with a space before them. */
function plainCharacters(text: string): string {
  return text
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (one) => ` ${one.normalize('NFKC')}`)
    .replaceAll('\u2044', '/')
    .replaceAll('\u2212', '-')
    .replace(/\s+/g, ' ')
    .trim()
}

/** Digits with a decimal point and no other separator; null where the separators make no sense. */
function withDecimalPoint(digits: string): string | null {
  if (!/\d/.test(digits)) return null
  if (/^\d*\.?\d*$/.test(digits)) return digits
  if (/^\d*,\d*$/.test(digits)) return digits.replace(',', '.')
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(digits)) return digits.replaceAll(',', '')
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(digits)) return digits.replaceAll('.', '').replace(',', '.')
  if (/^\d{1,3}(\.\d{3}){2,}$/.test(digits)) return digits.replaceAll('.', '')
  return null
}

/** A number with about four significant figures and never more decimals than `most`, thousands set apart by a thin space. */
export function writeNumber(value: number, most: number): string {
  const size = Math.abs(value)
  const decimals = Math.min(most, size >= 1000 ? 0 : size >= 100 ? 1 : size >= 10 ? 2 : 3)
  return writeFixed(value, decimals)
}

/** A number with so many significant figures, none of which is lost by writing it out. */
export function writeSignificant(value: number, figures: number): string {
  const rounded = Number(value.toPrecision(figures))
  const beforePoint = rounded === 0 ? 1 : Math.floor(Math.log10(Math.abs(rounded))) + 1
  return writeFixed(rounded, Math.max(figures - beforePoint, 0))
}

/** Percents as a sentence has them: whole ones from ten on, else one decimal where there is one. */
export function percentWords(percent: number): string {
  return `${withoutEndingZeros(writeFixed(percent, percent >= 9.95 ? 0 : 1))} %`
}

/** Tenths at most, and none where there are none; null: a dash. */
export function writeTenths(value: number | null): string {
  return value === null ? '–' : withoutEndingZeros(writeFixed(value, 1))
}

/** A percent of what is measured in whole ones, such as humidity or torn wood: tenths at most. */
export function percentText(percent: number): string {
  return `${writeTenths(percent)} %`
}

/** A limit above 0 as `writeNumber` writes it; one that would read as 0 is written as "below 0.01". */
export function writeLimit(value: number, most: number): string {
  const least = 10 ** -Math.min(most, 3)
  return value > 0 && value < least / 2 ? `below ${least}` : writeNumber(value, most)
}

/** A number with so many decimals, thousands set apart by a thin space, a true minus sign and never "-0". */
export function writeFixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals)
  const [whole = '0', fraction] = text.split('.')
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u2009') : whole
  const sign = value < 0 && Number(text) !== 0 ? '−' : ''
  return fraction === undefined ? sign + grouped : `${sign}${grouped}.${fraction}`
}

/** How many there are of something, written as any other number is. */
export function writeCount(count: number): string {
  return writeFixed(count, 0)
}

/** "600.0" becomes "600", "1.50" becomes "1.5". */
export function withoutEndingZeros(written: string): string {
  return written.includes('.') ? written.replace(/\.?0+$/, '') : written
}

/**
 * A stored value as it stands in a field to be typed over; null: an empty one. Six significant digits: enough for any ruler,
 * and a round trip through inches gives the same millimetres back.
 */
export function writeTyped(stored: number | null, factor: number): string {
  return stored === null ? '' : String(Number((stored * factor).toPrecision(6)))
}

/** A change with its sign; null: there is nothing before it. */
export function signedNumber(value: number | null, decimals: number): string {
  if (value === null) return '–'
  const text = writeFixed(value, decimals)
  return value > 0 && Number(value.toFixed(decimals)) !== 0 ? `+${text}` : text
}

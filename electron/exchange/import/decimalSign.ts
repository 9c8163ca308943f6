import type { DecimalSign } from '#contract/specimens/importMapping.ts'

/**
 * How the numbers of a file are written. `sign` null: it cannot be told, and a number that could be read in two ways is refused;
 * `lonePoint`: a point before three digits parts decimals all the same, as in a file whose fields are parted by commas.
 */
export type NumberWriting = { readonly sign: DecimalSign | null; readonly lonePoint: boolean }

const decimalsAfter = (sign: string) =>
  new RegExp(`^[+-]?(?:\\d*\\${sign}(?:\\d{1,2}|\\d{4,})|0*\\${sign}\\d+|\\d{4,}\\${sign}\\d+)(?!\\d)`)
const groupedBy = (group: string, sign: string) =>
  new RegExp(
    `^[+-]?\\d{1,3}(?:\\${group}\\d{3})+(?:\\${sign}\\d+)(?!\\d)|^[+-]?\\d{1,3}(?:\\${group}\\d{3}){2,}(?!\\d)`,
  )

const evidence: readonly { sign: DecimalSign; shownBy: readonly RegExp[] }[] = [
  { sign: ',', shownBy: [decimalsAfter(','), groupedBy('.', ',')] },
  { sign: '.', shownBy: [decimalsAfter('.'), groupedBy(',', '.')] },
]

/**
 * The sign before the decimals that the numbers of a file show beyond doubt: one with one, two or more than three digits behind
 * it, behind a zero, or beside a sign that parts thousands. null: none does, or they contradict one another.
 */
export function foundDecimalSign(texts: Iterable<string>): { sign: DecimalSign | null; contradiction: boolean } {
  const found = new Set<DecimalSign>()
  for (const text of texts) {
    const plain = text.replaceAll(/[\s\u00a0\u202f]/g, '')
    for (const { sign, shownBy } of evidence) if (shownBy.some((shows) => shows.test(plain))) found.add(sign)
    if (found.size === 2) return { sign: null, contradiction: true }
  }
  return { sign: [...found][0] ?? null, contradiction: false }
}

const numberWith: Readonly<Record<DecimalSign, RegExp>> = {
  '.': /^(?:\d*|\d{1,3}(?:,\d{3})+)(?:\.\d*)?$/,
  ',': /^(?:\d*|\d{1,3}(?:\.\d{3})+)(?:,\d*)?$/,
}

/**
 * A number as text with a point before its decimals and nothing between its thousands, where it is written with this sign; null:
 * it is not. What follows the number stays.
 */
export function withPoint(text: string, sign: DecimalSign): string | null {
  const group = sign === ',' ? '.' : ','
  const [, before = '', body = '', after = ''] =
    /^(\s*[+\-\u2212]?\s*)([\d.,]+(?:[ \u00a0\u202f]\d{3}(?!\d)[\d.,]*)*)(.*)$/s.exec(text) ?? []
  if (body === '' || !/[.,]/.test(body)) return text
  const digits = body.replaceAll(/[ \u00a0\u202f]/g, '')
  if (!numberWith[sign].test(digits)) return null
  return `${before}${digits.replaceAll(group, '').replace(sign, '.')}${after}`
}

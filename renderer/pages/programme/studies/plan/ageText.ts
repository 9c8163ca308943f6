import { ageMonths } from '#contract/programme/study.ts'

/** Ages as they are typed: rising, each once; with what is wrong or doubtful about the text. */
export type ReadAges = { agesMonths: number[]; error: string | null; question: string | null }

const entry = /^(\d{1,4})(?:\s*(m|months?|y|years?))?$/i

/** Ages in months from a text such as "0, 6, 12, 2 years"; those out of order are put in order, and that is said. */
export function readAges(text: string): ReadAges {
  const words = text
    .split(/[,;\n]|(?<=\d)\s+(?=\d)/)
    .map((word) => word.trim())
    .filter((word) => word !== '')
  const ages: number[] = []
  let question: string | null = null
  for (const word of words) {
    const months = monthsOf(word)
    if (months === null)
      return {
        agesMonths: [],
        error: `“${word}” is no age: write whole months, as 0, 6, 12, or years, as 2 years; a hundred years at most.`,
        question: null,
      }
    const before = ages.at(-1)
    if (ages.includes(months)) question ??= `${months} stands twice: it is kept once.`
    else if (before !== undefined && months < before)
      question ??= `${months} stands after ${before}: ages are kept in rising order.`
    ages.push(months)
  }
  const agesMonths = [...new Set(ages)].sort((one, other) => one - other)
  return { agesMonths, error: agesMonths.length === 0 ? 'Write at least one age.' : null, question }
}

function monthsOf(word: string): number | null {
  const [, digits, unit = ''] = entry.exec(word) ?? []
  if (digits === undefined) return null
  const months = Number(digits) * (/^y/i.test(unit) ? 12 : 1)
  return ageMonths.safeParse(months).success ? months : null
}

/** Ages as they stand in the field. */
export function agesText(agesMonths: readonly number[]): string {
  return agesMonths.join(', ')
}

/** The text after Enter behind an age: open for the next one, as in a list; null where no age was typed since. */
export function openForNextAge(text: string): string | null {
  const typed = text.trimEnd()
  return typed === '' || /[,;]$/.test(typed) ? null : `${typed}, `
}

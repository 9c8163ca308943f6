/** What a title says of the blocks below it: the exposure ('': none) and the age in months. */
export type Condition = { exposure: string; ageMonths: number | null }

/** An exposure has no longer name. */
const longest = 200
const age = /^(?:after |at |age:? ?)?(\d+(?:[.,]\d+)?) ?-?(months?|mo\.?|m|years?|yrs?\.?|y)$/i

/** Reads a title such as "Dry, 12 months": the part that is an age, and what is left as it stands. */
export function conditionOf(title: string): Condition {
  const text = title.trim()
  if (text.length > longest || !text.isWellFormed()) return { exposure: '', ageMonths: null }
  const parts = text
    .replaceAll(/\s+/g, ' ')
    .split(/ ?[,;/|()\u2013\u2014] ?| - /)
    .filter((part) => part !== '')
  const ages = parts.flatMap((part) => monthsIn(part) ?? [])
  if (ages.length !== 1) return { exposure: text, ageMonths: null }
  const rest = parts.filter((part) => monthsIn(part) === null)
  return { exposure: rest.join(', '), ageMonths: ages[0]! }
}

function monthsIn(part: string): number | null {
  const [, written, unit] = age.exec(part) ?? []
  if (written === undefined) return null
  const number = Number(written.replace(',', '.'))
  return /^y/i.test(unit!) ? monthsOfYears(number) : number
}

/** Years in months, without the crumbs of binary fractions, which would make 1.1 years another age than 13.2 months. */
export function monthsOfYears(years: number): number {
  return Number((years * 12).toPrecision(12))
}

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
  const [, number, unit] = age.exec(part) ?? []
  if (number === undefined) return null
  return Number(number.replace(',', '.')) * (/^y/i.test(unit!) ? 12 : 1)
}

import { runningOf } from './label.ts'

const digits = '0123456789'

/**
 * Labels that are one slip away from a number that is none, likeliest first: two digits swapped, one digit wrong, one digit left
 * out, one digit too many. Which of them exist is for the archive to say. Empty for what holds anything but digits, and for a
 * label that is right.
 */
export function nearestLabels(typed: string): string[] {
  if (!/^\d{1,9}$/.test(typed) || runningOf(typed) !== null) return []
  const places = Array.from({ length: typed.length + 1 }, (_, place) => ({
    before: typed.slice(0, place),
    here: typed.charAt(place),
    after: typed.slice(place + 1),
    on: typed.slice(place),
  }))
  const within = places.slice(0, -1)
  const swapped = within.slice(0, -1).map(({ before, here, after }) => before + after.charAt(0) + here + after.slice(1))
  const wrong = within.flatMap(({ before, after }) => [...digits].map((digit) => before + digit + after))
  const leftOut = places.flatMap(({ before, on }) => [...digits].map((digit) => before + digit + on))
  const tooMany = within.map(({ before, after }) => before + after)
  return [...new Set([...swapped, ...wrong, ...leftOut, ...tooMany])].filter((label) => runningOf(label) !== null)
}

import { countOf } from '../units/counts.ts'
import { percentWords } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

export type WoodBlock = { strengthMPa: number; woodFailurePercent: number | null }

/** What counts as a wood failure in a figure. */
export function woodLimitWords(limitPercent: number): string {
  return `wood failure from ${percentWords(limitPercent)} on`
}

/** What wood failure against strength shows: how many blocks of either sort, and between which strengths. */
export function woodStrengthWords(blocks: readonly WoodBlock[], limitPercent: number, strength: Quantity): string {
  const range = (some: readonly WoodBlock[]) => {
    const values = some.map(({ strengthMPa }) => strengthMPa)
    const [least, most] = [Math.min(...values), Math.max(...values)]
    return least === most ? `at ${strength.text(least)}` : `at ${strength.number(least)} to ${strength.text(most)}`
  }
  const told = (some: readonly WoodBlock[], what: string) =>
    some.length === 0 ? `No block ${what}.` : `${countOf(some.length, 'block')} ${what}, ${range(some)}.`
  const known = blocks.filter(({ woodFailurePercent }) => woodFailurePercent !== null)
  const torn = known.filter(({ woodFailurePercent }) => woodFailurePercent! >= limitPercent)
  const bond = known.filter(({ woodFailurePercent }) => woodFailurePercent! < limitPercent)
  const sentences = [
    told(torn, `failed in the wood (${percentWords(limitPercent)} or more)`),
    told(bond, 'failed in the bond'),
  ]
  const unknown = blocks.length - known.length
  if (unknown > 0) sentences.push(`${unassessedWords(unknown)}.`)
  return sentences.join(' ')
}

/** How many blocks a figure of torn wood cannot show. */
export function unassessedWords(count: number): string {
  return `${countOf(count, 'block')} without an assessed wood failure ${count === 1 ? 'is' : 'are'} not drawn`
}

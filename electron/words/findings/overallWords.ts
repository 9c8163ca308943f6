import { countOf } from '../units/counts.ts'
import { percentWords, withoutEndingZeros, writeSignificant } from '../units/numbers.ts'
import { listed } from './answerWords.ts'

/** An adhesive's standing beside the reference: a ratio of 1 is as strong. */
export type OverallStanding = {
  adhesive: string
  ratio: number | null
  low: number | null
  high: number | null
  /** Names of the conditions in which it or the reference has no block. */
  missing: readonly string[]
}

const percent = (ratio: number) => percentWords(100 * ratio)

/** A ratio with its interval: "112 % (104 % to 121 %)"; null: a dash. */
export function ratioWords({ ratio, low, high }: Pick<OverallStanding, 'ratio' | 'low' | 'high'>): string {
  if (ratio === null) return '–'
  return low === null || high === null ? percent(ratio) : `${percent(ratio)} (${percent(low)} to ${percent(high)})`
}

/** Whether a standing differs from that of the reference: not where its interval holds 100 %, nor where it has none. */
export function differs({ low, high }: Pick<OverallStanding, 'low' | 'high'>): boolean {
  return low !== null && high !== null && (low > 1 || high < 1)
}

/** One adhesive beside the reference over all conditions. */
export function standingWords(standing: OverallStanding, reference: string): string {
  const { adhesive, ratio, low, missing } = standing
  const without = missing.length === 0 ? '' : ` Without blocks to compare in: ${missing.join('; ')}.`
  if (ratio === null) return `${adhesive} has no condition in common with ${reference}.`
  const figures = ratioWords(standing)
  if (low === null)
    return `${adhesive}: ${figures} of ${reference}, without an interval, for a mean rests on one block.${without}`
  if (!differs(standing)) return `${adhesive} is not to be told from ${reference}: ${figures}.${without}`
  return `${adhesive} holds ${low > 1 ? 'more' : 'less'} than ${reference}: ${figures}.${without}`
}

/** A number that a person gave a condition. */
export function weightWords(weight: number): string {
  return `weight ${withoutEndingZeros(writeSignificant(weight, 3))}`
}

/** What stands before the adhesives: of what the standing is a mean. */
export function overallIntro(conditions: readonly { name: string; weight: number }[], reference: string): string {
  const weights = new Set(conditions.map(({ weight }) => weight))
  const named = conditions.map(({ name, weight }) => (weights.size > 1 ? `${name} (${weightWords(weight)})` : name))
  const how = weights.size > 1 ? 'weighted as said' : 'all with the same weight'
  return (
    `Strength relative to ${reference}, the mean of the ratios in ${countOf(conditions.length, 'condition')}, ${how}: ` +
    `${listed(named)}.`
  )
}

/** What the figure of standings shows. */
export function overallFigureWords(standings: readonly OverallStanding[], reference: string): string {
  const known = standings.filter(({ ratio }) => ratio !== null)
  return known.length === 0
    ? `No adhesive has a condition in common with ${reference}.`
    : known.map((one) => standingWords(one, reference)).join(' ')
}

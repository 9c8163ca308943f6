import type { SeriesAhead } from '#contract/findings/ageing.ts'
import { fitAllAgeing, weightedFits } from './ageingFit.ts'
import { type Forecast, forecastAt } from './forecast.ts'
import { leastAges, type Series } from './series.ts'

/** What is asked of each series: how sure, to which age it is drawn, and the chance of which share of the first strength at which age (null: at the end). */
export type AheadTerms = { confidence: number; endMonths: number; share: number; atMonths: number | null }

/** So many places of a line are worked out, closer together when young, as the square root of the age. */
const steps = 72

/**
 * The line of a series from its first age to the end of the programme, averaged over the models of ageing, with its band; and the
 * chance that its mean has fallen below a share of the first one at an age. Neither where it has fewer than four ages or no model fits.
 * Null without any block. Checked: tests/domain/findings/ageing/seriesAhead.spec.ts.
 */
export function seriesAhead({ group, ages }: Series, terms: AheadTerms): SeriesAhead | null {
  const filled = ages.filter(({ blocks }) => blocks.length > 0)
  const first = filled[0]
  if (first === undefined) return null
  const { confidence, share } = terms
  const agesMonths = filled.map(({ ageMonths }) => ageMonths)
  const seen = { group, agesMonths, endMonths: Math.max(terms.endMonths, agesMonths.at(-1)!) }
  const atMonths = terms.atMonths ?? seen.endMonths
  const none = { ...seen, curve: null, below: null }
  if (filled.length < leastAges) return none
  const fits = weightedFits(fitAllAgeing(filled.flatMap(({ blocks }) => blocks)))
  if (fits.length === 0) return none
  const at = (ageMonths: number): Forecast =>
    forecastAt(fits, ageMonths, { confidence, firstAgeMonths: first.ageMonths, share })
  const { belowShareProbability: probability, belowShareRange: range } = at(atMonths)
  return {
    ...seen,
    curve: placesFrom(agesMonths, seen.endMonths).map((ageMonths) => {
      const { meanMPa, lowMPa, highMPa } = at(ageMonths)
      return { ageMonths, meanMPa: held(meanMPa), lowMPa: held(lowMPa), highMPa: held(highMPa) }
    }),
    below:
      probability === null || range === null || !Number.isFinite(probability) || atMonths <= first.ageMonths
        ? null
        : { ageMonths: atMonths, sharePercent: 100 * share, probability, least: range[0], most: range[1] },
  }
}

/** Nothing holds less than nothing, wherever a line may lead. */
const held = (strengthMPa: number) => Math.max(strengthMPa, 0)

/** Ages from the first one seen to the end, with each that was seen among them. */
function placesFrom(agesMonths: readonly number[], endMonths: number): number[] {
  const [from, to] = [Math.sqrt(agesMonths[0]!), Math.sqrt(endMonths)]
  const places = Array.from({ length: steps + 1 }, (_, i) => (from + ((to - from) * i) / steps) ** 2)
  const rounded = places.map((age) => Math.round(age * 100) / 100)
  return [...new Set([...rounded, ...agesMonths])].sort((one, other) => one - other)
}

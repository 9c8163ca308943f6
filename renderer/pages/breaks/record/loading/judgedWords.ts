import type { JudgedAspect, LoadingAspect } from '#domain/signal/practice/judgeLoading.ts'
import { type LimitKey, limitText, limitWords } from '#words/settings/practiceWords.ts'
import { writeLimit } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'

export const verdictWords: Record<JudgedAspect['verdict'], string> = {
  inside: 'within the limits',
  outside: 'outside the limits',
  'not-known': 'not known',
}

const limitOf: Record<Exclude<LoadingAspect, 'sampling-bound'>, LimitKey> = {
  'time-to-failure': 'timeToFailureS',
  rate: 'rateNPerS',
  'stress-rate': 'rateMPaPerS',
  speed: 'speedMmPerMin',
}

/** What was judged, and the figure beside its limits in the units shown: "7.06 s, wanted: 5 to 60 s". */
export function judgedWords(
  { aspect, value, limits }: Pick<JudgedAspect, 'aspect' | 'value' | 'limits'>,
  quantities: Quantities,
): { name: string; figures: string } {
  const { name, unit, factor } =
    aspect === 'sampling-bound'
      ? { name: 'Sampling bound', unit: '%', factor: 1 }
      : limitWords(limitOf[aspect], quantities)
  const wanted = `wanted: ${limitText(limits, unit, factor) ?? 'anything'}`
  return { name, figures: value === null ? wanted : `${writeLimit(value * factor, 2)} ${unit}, ${wanted}` }
}

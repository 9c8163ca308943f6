import type { JudgedAspect, LoadingAspect, UnknownBecause } from '#domain/signal/practice/judgeLoading.ts'
import { asSentence } from '../sentence.ts'
import { type LimitKey, limitText, limitWords } from '../settings/practiceWords.ts'
import { writeLimit } from '../units/numbers.ts'
import type { Quantities } from '../units/quantities.ts'
import { outcomeWords } from './outcomeWords.ts'

export const verdictNames: Record<JudgedAspect['verdict'], string> = {
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

/** What was judged, and the figure beside its limits in the units shown: "7.06 s, limits: 5 to 60 s". */
export function judgedFigures(
  { aspect, value, limits }: Pick<JudgedAspect, 'aspect' | 'value' | 'limits'>,
  quantities: Quantities,
): { name: string; figures: string } {
  const { name, unit, factor } =
    aspect === 'sampling-bound'
      ? { name: 'Sampling bound', unit: '%', factor: 1 }
      : limitWords(limitOf[aspect], quantities)
  const asked = `limits: ${limitText(limits, unit, factor) ?? 'none'}`
  return { name, figures: value === null ? asked : `${writeLimit(value * factor, 2)} ${unit}, ${asked}` }
}

const unknown: Record<UnknownBecause, string> = {
  'nothing-loaded': asSentence(outcomeWords.none),
  'older-method': 'An older method made this result and did not look for it: evaluate the break again.',
  'no-failure': 'There was no failure, so there is no time to it.',
  'no-rate': 'The loading rate is not known: there is no scale, or the curve has too few samples.',
  'no-area': 'The bonded area is not known: enter it with the specimen.',
  'no-speed':
    'No speed of the press was given: a load curve alone cannot show it. Measure it with a rule and a watch, give it in the settings, and evaluate the break again.',
  clipped: 'The converter reached the end of its range: how much higher the load went is not known.',
  'no-rate-at-peak': 'The sampling bound is not known: there is no loading rate just before the peak.',
}

type Sides = Record<'inside' | 'below' | 'above', string>

const rateSentences: Sides = {
  inside: 'The load rose as fast as this practice wants.',
  below: 'The load rose more slowly than this practice allows: load faster.',
  above: 'The load rose faster than this practice allows: load more slowly.',
}

const sentences: Record<Exclude<LoadingAspect, 'sampling-bound'>, Sides> = {
  'time-to-failure': {
    inside: 'The joint failed within the time that this practice allows.',
    below: 'The joint failed sooner than this practice allows: load more slowly.',
    above: 'The joint failed later than this practice allows: load faster.',
  },
  rate: rateSentences,
  'stress-rate': rateSentences,
  speed: {
    inside: 'The press moved as fast as this practice wants.',
    below: 'The press moved more slowly than this practice allows.',
    above: 'The press moved faster than this practice allows.',
  },
}

/** How one figure of a loading stands to the practice, and what to do. It has no unit of force or length. */
export function judgedSentence({ aspect, side, unknownBecause, cure }: JudgedAspect): string {
  if (unknownBecause !== null) return unknown[unknownBecause]
  if (aspect !== 'sampling-bound') return sentences[aspect][side ?? 'inside']
  if (side === null) return 'The samples follow one another closely enough for the peak.'
  return `The true peak may lie further above the highest sample than this practice allows: ${cureWords(cure)}.`
}

function cureWords(cure: JudgedAspect['cure']): string {
  if (cure?.kind === 'close-the-gap') return 'samples are missing at the peak, so check cable and connection'
  if (cure === null || cure.sampleRateHz === null) return 'sample faster, or load more slowly'
  return `sample at ${cure.sampleRateHz} Hz or faster, or load more slowly`
}

import type { AgeingAnswer, BoardsAtAge, SeriesAhead } from '#contract/findings/ageing.ts'
import type { FindingOf } from '#contract/findings/lines.ts'
import { capitalised } from '../sentence.ts'
import { countOf } from '../units/counts.ts'
import { percentWords, signedNumber, writeCount, writeSignificant } from '../units/numbers.ts'
import { atAge, whenBroken } from './ageingFigureWords.ts'
import { changedAnswer, listed } from './answerWords.ts'

type Name = (group: string) => string
type Retention = FindingOf<'retention'>

/** A chance as a sentence has it: never wholly sure. */
export function chanceWords(probability: number): string {
  if (probability < 0.005) return 'below 1 %'
  if (probability > 0.995) return 'above 99 %'
  return percentWords(Math.round(100 * probability))
}

/**
 * What became of all series by their last ages: how many fell, rose or show no change, with a sentence for each that
 * changed or is too uncertain, and one for the others together.
 */
export function changesAnswer(retentions: readonly Retention[], name: Name): string[] {
  const series = [...Map.groupBy(retentions, ({ group }) => group).values()].map((ages) => {
    const last = ages.toSorted((one, other) => one.ageMonths! - other.ageMonths!).at(-1)!
    return { group: last.group, fate: fateOf(last), sentence: changedAnswer(ages, name)! }
  })
  if (series.length < 2) return series.map(({ sentence }) => sentence)
  const of = (fate: Fate) => series.filter((one) => one.fate === fate)
  const [fell, rose, open, unknown] = [of('fell'), of('rose'), of('open'), of('unknown')]
  const chance = 0.05 * (series.length - unknown.length)
  const told = fell.length + rose.length > 0
  return [
    `Of ${countOf(series.length, 'series', 'series')} by their last ages, ${writeCount(fell.length)} fell, ${writeCount(rose.length)} rose and ` +
      `${writeCount(open.length)} ${open.length === 1 ? 'shows' : 'show'} no change that can be told.`,
    ...[...fell, ...rose, ...unknown].map(({ sentence }) => sentence),
    ...(open.length === 0 ? [] : [`No change can be told of ${listed(open.map(({ group }) => name(group)))}.`]),
    ...(told
      ? [
          `Each series is judged by itself at 95 %: were none of them to change, about ${writeSignificant(chance, 2)} would be named all the same.`,
        ]
      : []),
  ]
}

type Fate = 'fell' | 'rose' | 'open' | 'unknown'

function fateOf({ low, high, bounded }: Retention): Fate {
  if (bounded !== true || low === null || high === null) return 'unknown'
  return high < 1 ? 'fell' : low > 1 ? 'rose' : 'open'
}

/** What a share of the first strength says, in a cell of a table. */
export function retentionWords({ ratio, low, high, bounded }: Retention): string {
  if (ratio === null) return '–'
  const share = (part: number) => percentWords(100 * part)
  if (bounded === false) return `${share(ratio)} (unbounded)`
  return low === null || high === null ? share(ratio) : `${share(ratio)} (${share(low)} to ${share(high)})`
}

/** That series of two or three ages get no line, with their ages; null: each has enough. */
export function fewAgesSentence(
  series: readonly Pick<SeriesAhead, 'group' | 'agesMonths'>[],
  name: Name,
): string | null {
  const few = series.filter(({ agesMonths }) => agesMonths.length < 4)
  if (few.length === 0) return null
  const first = few[0]!
  if (few.length === 1)
    return (
      `${name(first.group)} was broken at ${countOf(first.agesMonths.length, 'age')} (${listed(first.agesMonths.map(atAge))}): too few for a line, which would ` +
      'look surer than it is; from four ages on there is one.'
    )
  return `${writeCount(few.length)} series have fewer than four ages and get no line, which would look surer than it is.`
}

/**
 * What the lines say of the chance that the mean has fallen below a share of the first one; null: there is none. Sure only where
 * every kind of line that is not ruled out is.
 */
export function belowSentence({ group, below, curve }: SeriesAhead, name: Name): string | null {
  if (below === null || curve === null) return null
  const { probability, least, most, ageMonths, sharePercent } = below
  const event = `the mean of ${name(group)} at ${atAge(ageMonths)} lies below ${percentWords(sharePercent)} of its first one`
  const chance = `the chance is ${chanceWords(probability)}`
  const verdict =
    least >= 0.95
      ? `In all likelihood ${event}: ${chance}.`
      : most <= 0.05
        ? `It is unlikely that ${event}: ${chance}.`
        : `The data leave open whether ${event}: ${chance}, by kind of line from ${chanceWords(least)} to ${chanceWords(most)}.`
  return verdict
}

const modelNames: Record<FindingOf<'ageing-model'>['model'], string> = {
  constant: 'no change',
  linear: 'straight line',
  'log-time': 'logarithm of time',
  'square-root-time': 'square root of time',
  'exponential-approach': 'approach to an end',
}

/** What a model of ageing is called. */
export function modelName(model: FindingOf<'ageing-model'>['model']): string {
  return modelNames[model]
}

/** Which model the data of one series carry, and whether they decide: from its lines of that kind; null: none has a weight. */
export function modelsSentence(models: readonly FindingOf<'ageing-model'>[], name: Name): string | null {
  const weighed = models
    .filter((one): one is typeof one & { weight: number } => one.weight !== null)
    .sort((one, other) => other.weight - one.weight)
  const [best] = weighed
  if (best === undefined) return null
  const group = name(best.group)
  if (best.weight >= 0.9)
    return `Of the kinds of line, "${modelName(best.model)}" carries ${chanceWords(best.weight)} of the weight for ${group}.`
  // Those within a factor of e of the best, that is 2 of AICc, can hardly be told from it
  const near = weighed.filter(({ weight }) => weight >= best.weight * Math.exp(-1))
  const names = near.map(({ model }) => `"${modelName(model)}"`)
  return near.length === 1
    ? `For ${group} "${modelName(best.model)}" fits best with ${chanceWords(best.weight)} of the weight, and others are not ruled out.`
    : `The data of ${group} do not decide between ${listed(names)}: the line is averaged over all.`
}

const perYear = (percent: number) => `${signedNumber(percent, 1)} %`

/** What all series together say of the change a year. */
export function togetherSentences({ together }: Pick<AgeingAnswer, 'together'>): string[] {
  if (together === null) return []
  const { commonPercentPerYear: common, commonLowPercentPerYear: low, commonHighPercentPerYear: high } = together
  const size = `${perYear(common)} a year (${perYear(low)} to ${perYear(high)})`
  const all = `${countOf(together.series.length, 'series', 'series')} together`
  const course =
    high < 0
      ? `The ${all} lose strength: ${size}.`
      : low > 0
        ? `The ${all} gain strength: ${size}.`
        : `The ${all} show no common change that can be told: ${size}.`
  const spread = together.spreadPercentPerYear
  return [
    course,
    spread < 0.05
      ? 'Their slopes differ by no more than their blocks make them differ: each is drawn wholly to the common one.'
      : `Their slopes spread by ${writeSignificant(spread, 2)} % a year about it; each is drawn towards it as far as its own blocks leave it open.`,
  ]
}

/** What the boards do at one age. */
export function boardsSentence({ ageMonths, boards, boardShare, p }: BoardsAtAge): string {
  const at = capitalised(whenBroken(ageMonths))
  const among = countOf(boards, 'board')
  return p < 0.05
    ? `${at} the ${among} differ: ${percentWords(100 * boardShare)} of the variance within groups lies between them (p ${chance(p)}).`
    : `${at} the ${among} cannot be told apart (p ${chance(p)}).`
}

/** A p value as a cell has it. */
export function chance(p: number | null): string {
  return p === null ? '–' : p < 0.001 ? 'below 0.001' : p.toFixed(3)
}

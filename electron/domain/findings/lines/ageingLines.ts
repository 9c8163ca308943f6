import type { FindingLine } from '#contract/findings/lines.ts'
import type { FindingsOptions } from '#contract/findings/options.ts'
import { type AgeingBlock, fitAllAgeing, weightedFits } from '../ageing/ageingFit.ts'
import { parameterNames } from '../ageing/ageingModels.ts'
import { changeToFind } from '../ageing/changeToFind.ts'
import { forecastAt } from '../ageing/forecast.ts'
import { retentionOf } from '../ageing/retention.ts'
import { leastAges, type Series } from '../ageing/series.ts'
import { jonckheere, mannKendall } from '../ageing/trends.ts'

/** Kinds of lines about a group over its ages. */
export const ageingKinds = [
  'trend',
  'retention',
  'ageing-model',
  'forecast',
  'detectable',
] as const satisfies readonly FindingLine['kind'][]
/** Ages to which a series is carried on, months: ten, twenty and thirty years; beyond them, twice the last age. */
const forecastAges = [120, 240, 360]
/** "Below a share": of the strength at the first age. */
const askedShare = 0.8
/** The power with which a change counts as one that can be seen. */
const wantedPower = 0.8

/**
 * Lines about one group over its ages; none for a single age. `wants` says which kinds are asked for, so that a note stands beside one of
 * them. Checked: tests/domain/findings/lines/ageingLines.spec.ts.
 */
export function* ageingLines(
  { group, ages }: Series,
  options: FindingsOptions,
  wants: (kind: FindingLine['kind']) => boolean,
): Generator<FindingLine> {
  const filled = ages.filter(({ blocks }) => blocks.length > 0)
  if (filled.length < 2) {
    yield { kind: 'note', about: ageingKinds.find(wants) ?? 'trend', code: 'few-ages', group, ageMonths: null }
    return
  }
  const all = filled.flatMap(({ blocks }) => blocks)
  const first = filled[0]!
  yield { kind: 'trend', group, ageMonths: null, test: 'mann-kendall', ...mannKendall(all) }
  // Its groups are the ages that were planned
  const planned = filled.flatMap(({ ageMonths, blocks }) => blocks.map((block) => ({ ...block, ageMonths })))
  yield { kind: 'trend', group, ageMonths: null, test: 'jonckheere', ...jonckheere(planned), slopeMPaPerYear: null }
  yield* retentionLines(group, filled, options.confidence)
  if (wants('ageing-model') || wants('forecast')) yield* modelLines(group, all, filled.length, first.ageMonths, options)
  const { ageMonths } = filled.at(-1)!
  const changePercent = changeToFind(
    filled.map(({ blocks }) => strengthsOf(blocks)),
    options.confidence,
    wantedPower,
  )
  yield { kind: 'detectable', group, ageMonths, changePercent, power: wantedPower }
  if (changePercent === null) yield { kind: 'note', about: 'detectable', code: 'no-change-to-find', group, ageMonths }
}

const strengthsOf = (blocks: readonly AgeingBlock[]) => blocks.map(({ strengthMPa }) => strengthMPa)

function* retentionLines(group: string, [first, ...later]: Series['ages'], confidence: number): Generator<FindingLine> {
  const note = { kind: 'note', about: 'retention', group } as const
  const referenceAgeMonths = first!.ageMonths
  if (referenceAgeMonths > 0) yield { ...note, code: 'later-start', ageMonths: referenceAgeMonths }
  for (const { ageMonths, blocks } of later) {
    const found = retentionOf(strengthsOf(first!.blocks), strengthsOf(blocks), confidence)
    yield { kind: 'retention', group, ageMonths, referenceAgeMonths, ...found }
    if (found.bounded === false) yield { ...note, code: 'retention-unbounded', ageMonths }
    else if (found.low === null) yield { ...note, code: 'one-block', ageMonths }
  }
}

function* modelLines(
  group: string,
  blocks: readonly AgeingBlock[],
  ageCount: number,
  firstAgeMonths: number,
  { confidence }: FindingsOptions,
): Generator<FindingLine> {
  const fits = fitAllAgeing(blocks)
  for (const { model, fit, weight } of fits) {
    const names = parameterNames[model]
    const named = (values: readonly number[]) => Object.fromEntries(names.map((name, i) => [name, values[i]!]))
    const found =
      typeof fit === 'string'
        ? { parameters: null, standardErrors: null, sigmaMPa: null, aicc: null, weight: null, failed: fit }
        : {
            parameters: named(fit.parameters),
            standardErrors: named(fit.standardErrors),
            sigmaMPa: fit.sigmaMPa,
            aicc: fit.aicc,
            weight,
            failed: null,
          }
    yield { kind: 'ageing-model', group, ageMonths: null, model, ...found }
  }
  const usable = weightedFits(fits)
  if (ageCount < leastAges || usable.length === 0) {
    yield {
      kind: 'note',
      about: 'forecast',
      code: ageCount < leastAges ? 'few-ages' : 'no-fit',
      group,
      ageMonths: null,
    }
    return
  }
  // Blocks of the last pull were not all broken on one day
  const last = blocks.reduce((most, { ageMonths }) => Math.max(most, ageMonths), 0)
  const ahead = forecastAges.filter((age) => age > last)
  for (const ageMonths of ahead.length > 0 ? ahead : [2 * last]) {
    const { belowShareRange: _range, ...forecast } = forecastAt(usable, ageMonths, {
      ...{ confidence, firstAgeMonths, share: askedShare },
    })
    yield { kind: 'forecast', group, ...forecast }
  }
}

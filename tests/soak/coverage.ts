import { fitAllAgeing } from '#domain/findings/ageing/ageingFit.ts'
import { type AgeingModelName, meanAt } from '#domain/findings/ageing/ageingModels.ts'
import { forecastAt } from '#domain/findings/ageing/forecast.ts'
import { retentionOf } from '#domain/findings/ageing/retention.ts'
import { slopesTogether } from '#domain/findings/ageing/slopesTogether.ts'
import { censoredFit } from '#domain/findings/censored/censoredFit.ts'
import { groupSummary } from '#domain/findings/groupSummary.ts'
import { rankIntervals } from '#domain/findings/rankIntervals.ts'
import { normalQuantile } from '#domain/numbers/distributions/normal.ts'
import { createRandom, type RandomStream } from '#domain/numbers/random.ts'

/** How often an interval held what it was made to hold, in percent, beside what is asked of it. */
type Coverage = { what: string; percent: number; from: number; to: number }

const confidence = 0.95
const blocks = 10
const truth = { mean: 10, sd: 1.2 }
const shape = 9

/**
 * Simulates studies whose truth is known and counts how often the intervals of findings hold it: as many studies as the first word
 * says (2,000). One standard error of a coverage of 95 % is 0.5 points then.
 */
export async function soak(words: readonly string[]): Promise<boolean> {
  const studies = Number(words[0] ?? 2000)
  if (!Number.isInteger(studies) || studies < 100)
    throw new RangeError('coverage takes a number of studies, 100 or more')
  const found = [
    ...summaries(studies),
    ...weibulls(studies),
    ...[3, blocks].map((n) => ranks(Math.ceil(studies / 4), n)),
    ...forecasts(studies),
  ]
  found.push(...[4, 12].flatMap((count) => slopes(Math.ceil(studies / 4), count)))
  let held = true
  for (const { what, percent, from, to } of found) {
    const holds = percent >= from && percent <= to
    held &&= holds
    console.log(`${holds ? 'held  ' : 'FAILED'} ${percent.toFixed(1).padStart(5)} %, asked ${from} to ${to}: ${what}`)
  }
  return held
}

const share = (studies: number, holds: (random: RandomStream) => boolean, seed: number): number => {
  let count = 0
  for (let study = 0; study < studies; study++) if (holds(createRandom(study, seed))) count += 1
  return (100 * count) / studies
}
const normals = (random: RandomStream, n: number, mean = truth.mean) =>
  Array.from({ length: n }, () => mean + truth.sd * random.normal())

function summaries(studies: number): Coverage[] {
  const summary = (random: RandomStream) =>
    groupSummary(
      {
        group: '',
        ageMonths: null,
        excluded: 0,
        counted: normals(random, blocks).map((strengthMPa) => ({
          group: '',
          ageMonths: null,
          specimen: null,
          strengthMPa,
          woodFailurePercent: null,
          board: null,
          excludedBecause: null,
          simulated: false,
        })),
      },
      { woodFailure: 'observed', limitPercent: 75, adjustFactor: 1 },
      { confidence, tolerance: { confidence, content: 0.95 } },
    )
  const fifth = truth.mean + truth.sd * normalQuantile(0.05)
  const within = (value: number, low: number | null, high: number | null) => low! <= value && value <= high!
  return [
    {
      what: `mean of ${blocks} normal blocks`,
      percent: share(
        studies,
        (random) => {
          const { meanLowMPa, meanHighMPa } = summary(random)
          return within(truth.mean, meanLowMPa, meanHighMPa)
        },
        1,
      ),
      from: 93,
      to: 97,
    },
    {
      what: `lower tolerance limit of ${blocks} normal blocks, 95 % confidence`,
      percent: share(studies, (random) => summary(random).lowerToleranceMPa! <= fifth, 2),
      from: 93,
      to: 97,
    },
    {
      what: `retention of two ages of ${blocks} normal blocks`,
      percent: share(
        studies,
        (random) => {
          const { low, high, bounded } = retentionOf(normals(random, blocks), normals(random, blocks, 8), confidence)
          return bounded === false || within(0.8, low, high)
        },
        3,
      ),
      from: 93,
      to: 97,
    },
  ]
}

function weibulls(studies: number): Coverage[] {
  const b10 = (-Math.log(0.9)) ** (1 / shape)
  const weibull = (random: RandomStream) => (-Math.log(1 - random.unit())) ** (1 / shape)
  return [Number.POSITIVE_INFINITY, 1.05, 0.97].map((wood, i) => ({
    what:
      wood === Number.POSITIVE_INFINITY
        ? `B10 of ${blocks} Weibull blocks, none censored`
        : `B10 of ${blocks} Weibull blocks, wood at ${wood} of the scale of the bond`,
    percent: share(
      studies,
      (random) => {
        const failed: number[] = []
        const censored: number[] = []
        for (let block = 0; block < blocks; block++) {
          const bond = weibull(random)
          const limit = wood * random.between(0.85, 1.15)
          if (bond < limit) failed.push(bond)
          else censored.push(limit)
        }
        const fit = censoredFit({ failed, censored }, 'weibull', confidence)
        if (typeof fit === 'string') return true
        return (fit.b10LowMPa ?? 0) <= b10 && b10 <= (fit.b10HighMPa ?? Number.POSITIVE_INFINITY)
      },
      10 + i,
    ),
    from: 92,
    to: 98,
  }))
}

/** Ranks of 20 groups of n blocks whose true means lie half an SD of a block apart on average. */
function ranks(studies: number, n: number): Coverage {
  let count = 0
  let asked = 0
  for (let study = 0; study < studies; study++) {
    const random = createRandom(study, 20)
    const means = normals(random, 20)
    const found = rankIntervals(
      means.map((mean) => normals(random, n, mean)),
      { confidence, draws: 1000, seed: study + 1 },
    )
    for (const [i, { low, high }] of found.entries()) {
      const rank = 1 + means.filter((mean) => mean > means[i]!).length
      if (low <= rank && rank <= high) count += 1
      asked += 1
    }
  }
  // Ranks are whole, so that an interval holds more than it must.
  return { what: `true rank of each of 20 groups of ${n} blocks`, percent: (100 * count) / asked, from: 93, to: 100 }
}

const ages = [0, 6, 12, 18, 24, 36]
const truths: Record<AgeingModelName, number[]> = {
  constant: [10],
  linear: [10, -0.02],
  'log-time': [10, -0.5],
  'square-root-time': [10, -0.25],
  'exponential-approach': [10, 7, 15],
}

/** The mean at ten years, forecast from six ages in three years, when the truth is each model in turn. */
function forecasts(studies: number): Coverage[] {
  return (Object.keys(truths) as AgeingModelName[]).map((model, i) => ({
    what: `mean at 120 months, forecast from ${ages.length} ages of ${blocks} blocks, the truth being ${model}`,
    percent: share(
      Math.ceil(studies / 4),
      (random) => {
        const series = ages.flatMap((ageMonths) =>
          normals(random, blocks, meanAt(model, ageMonths, truths[model])).map((strengthMPa) => ({
            ageMonths,
            strengthMPa,
            held: false,
          })),
        )
        const fits = fitAllAgeing(series).flatMap(({ fit, weight }) =>
          typeof fit === 'string' || weight === null ? [] : [{ fit, weight }],
        )
        const { lowMPa, highMPa } = forecastAt(fits, 120, { confidence, firstAgeMonths: 0, share: 0.8 })
        const mean = meanAt(model, 120, truths[model])
        return lowMPa <= mean && mean <= highMPa
      },
      30 + i,
    ),
    // The band holds every model that the data leave possible, so that it is wider than one model's.
    from: 93,
    to: 100,
  }))
}

/** Slopes of so many series that spread by 2 % a year about a common one, as a year of pulls and as ten years of them show. */
function slopes(studies: number, count: number): Coverage[] {
  const [common, spread, cv] = [-0.02, 0.02, 0.12]
  const percent = (change: number) => 100 * Math.expm1(change)
  const kept = [
    [0, 3, 6, 12],
    [0, 12, 24, 60, 120],
  ].map((pulls) => {
    let [ofCommon, ofSeries] = [0, 0]
    for (let study = 0; study < studies; study++) {
      const random = createRandom(study, 40 + count)
      const truth = Array.from({ length: count }, () => common + spread * random.normal())
      const found = slopesTogether(
        truth.map((slope, i) => ({
          group: String(i),
          blocks: pulls.flatMap((ageMonths) =>
            Array.from({ length: blocks }, () => ({
              ageMonths,
              strengthMPa: 10 * Math.exp((slope * ageMonths) / 12 + cv * random.normal()),
            })),
          ),
        })),
        confidence,
      )!
      const { commonLowPercentPerYear: low, commonHighPercentPerYear: high } = found
      if (low <= percent(common) && percent(common) <= high) ofCommon += 1
      for (const [i, { lowPercentPerYear, highPercentPerYear }] of found.series.entries())
        if (lowPercentPerYear <= percent(truth[i]!) && percent(truth[i]!) <= highPercentPerYear) ofSeries += 1
    }
    return {
      months: pulls.at(-1)!,
      ofCommon: (100 * ofCommon) / studies,
      ofSeries: (100 * ofSeries) / studies / count,
    }
  })
  // Few series or young ones do not show how their slopes spread, and the intervals allow for any spread then.
  const asked = { from: 91, to: 100 }
  return kept.flatMap(({ months, ofCommon, ofSeries }) => [
    { what: `common slope of ${count} series with pulls to ${months} months`, percent: ofCommon, ...asked },
    { what: `slope of each of ${count} series with pulls to ${months} months`, percent: ofSeries, ...asked },
  ])
}

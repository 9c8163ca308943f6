import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { fitAgeing } from '#domain/findings/ageing/ageingFit.ts'
import { jonckheere } from '#domain/findings/ageing/trends.ts'
import { type CensoredStrengths, censoredFit } from '#domain/findings/censored/censoredFit.ts'
import { kaplanMeier } from '#domain/findings/censored/kaplanMeier.ts'
import type { StrengthDistribution } from '#domain/findings/censored/locationScale.ts'
import { equivalentPairs } from '#domain/findings/compare/equivalence.ts'
import type { GroupValues } from '#domain/findings/compare/groupValues.ts'
import { kruskalWallisTest, oneWayTest, welchTest } from '#domain/findings/compare/meansTests.ts'
import { dunnHolm, gamesHowell, tukeyKramer } from '#domain/findings/compare/pairs.ts'
import { bartlettTest, brownForsytheTest, leveneTest } from '#domain/findings/compare/spreadTests.ts'
import { groupSummary } from '#domain/findings/groupSummary.ts'
import { grubbsOutlier } from '#domain/findings/outliers.ts'
import { type RandomBlock, randomStudies, studiesCsv } from './dataSets.ts'

// Expected: R 4.2.2 with survival, by referenceNumbers.R beside this file, on the same studies (`studiesCsv`).
type Reference = Record<string, (number | null)[]>
const script = new URL('./referenceNumbers.R', import.meta.url).pathname
const kept = readFileSync(new URL('./referenceNumbers.ndjson', import.meta.url), 'utf8')
const parsed = (text: string) =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Reference)

const studies = 200
const blocks = randomStudies(studies)

/** The same numbers, under the same names, as the script prints of one study. */
function ours(study: readonly RandomBlock[]): Reference {
  const names = [...new Set(study.map(({ group }) => group))]
  const groups: GroupValues[] = names.map((group) => ({
    group,
    values: Float64Array.from(study.filter((one) => one.group === group).map(({ strength }) => strength)),
  }))
  const one = study.filter(({ group }) => group === names[0])
  const strengths = (held: boolean) => one.filter((block) => block.held === held).map(({ strength }) => strength)
  const split = { failed: strengths(false), censored: strengths(true) }
  const tested = ({ statistic, p }: { statistic: number | null; p: number | null }) => [statistic, p]
  const cell = {
    group: names[0]!,
    ageMonths: null,
    excluded: 0,
    counted: one.map(({ strength }) => ({
      group: names[0]!,
      ageMonths: null,
      specimen: null,
      strengthMPa: strength,
      woodFailurePercent: null,
      board: null,
      excludedBecause: null,
      simulated: false,
    })),
  }
  const summary = groupSummary(
    cell,
    { woodFailure: 'observed', limitPercent: 75, adjustFactor: 1 },
    { confidence: 0.95, tolerance: { confidence: 0.75, content: 0.95 } },
  )
  const welch = welchTest(groups)
  const survival = kaplanMeier(split)
  const aged = study.map(({ age, strength, held }) => ({ ageMonths: age, strengthMPa: strength, held }))
  const plain = aged.map((block) => ({ ...block, held: false }))
  const firstTwo = groups.slice(0, 2)
  const [pair] = equivalentPairs(firstTwo, 15, 0.95)
  const outlier = grubbsOutlier(
    one.map(({ strength }) => strength),
    0.05,
  )
  return {
    summary: [
      summary.meanMPa,
      summary.sdMPa,
      summary.meanLowMPa,
      summary.meanHighMPa,
      summary.q1MPa,
      summary.medianMPa,
      summary.q3MPa,
    ],
    brownForsythe: tested(brownForsytheTest(groups)),
    levene: tested(leveneTest(groups)),
    bartlett: tested(bartlettTest(groups)),
    oneWay: tested(oneWayTest(groups)),
    welch: [welch.statistic, welch.df2, welch.p],
    kruskalWallis: tested(kruskalWallisTest(groups)),
    tukeyP: tukeyKramer(groups, 0.95).map(({ p }) => p),
    dunnZ: dunnHolm(groups).map(({ statistic }) => statistic),
    dunnP: dunnHolm(groups).map(({ p }) => p),
    equivalence: [pair!.pLower, pair!.pUpper],
    welchPair: gamesHowell(firstTwo, 0.95).flatMap(({ lowMPa, highMPa, df, p }) => [lowMPa, highMPa, df, p]),
    pooledPair: tukeyKramer(firstTwo, 0.95).flatMap(({ lowMPa, highMPa, p }) => [lowMPa, highMPa, p]),
    grubbs: [outlier?.statistic ?? null, outlier?.critical ?? null],
    weibull: fitted(split, 'weibull'),
    lognormal: fitted(split, 'lognormal'),
    normal: fitted(split, 'normal'),
    survival: survival.survival,
    survivalSE: survival.standardError,
    linear: fitNumbers(fitAgeing('linear', plain)),
    kendallZ: [jonckheere(aged).z],
    squareRootHeld: fitNumbers(fitAgeing('square-root-time', aged)).slice(0, 2),
  }
}

/** Log likelihood, location, log of the scale and the standard errors of both, as survreg has them. */
function fitted(split: CensoredStrengths, distribution: StrengthDistribution): (number | null)[] {
  const fit = censoredFit(split, distribution, 0.95)
  if (typeof fit === 'string') return [null, null, null, null, null]
  const [one, two] = Object.values(fit.parameters) as [number, number]
  const [ofOne, ofTwo] = Object.values(fit.standardErrors) as [number, number]
  const location = distribution === 'weibull' ? [Math.log(one), -Math.log(two)] : [one, Math.log(two)]
  return [fit.logLikelihood, ...location, distribution === 'weibull' ? ofOne / one : ofOne, ofTwo / two]
}

function fitNumbers(fit: ReturnType<typeof fitAgeing>): (number | null)[] {
  return typeof fit === 'string' ? [null, null, null, null] : [...fit.parameters, ...fit.standardErrors]
}

/** So close, relative to the number or, below a thousandth, to that: R's range distribution has ten digits, its survreg eight. */
const tolerance = 1e-6

/** Studies with a group of equal values: R prints an infinite statistic or a likelihood of its last step, we say that there is none. */
const withoutSpread = [45, 99, 129]
const likelihoods = ['weibull', 'lognormal', 'normal']

function differences(study: number, found: Reference, expected: Reference): string[] {
  return Object.entries(found).flatMap(([name, values]) => {
    // A larger likelihood is a better fit: R's survreg says of one study that it ran out of steps.
    const isBetter = likelihoods.includes(name) && (values[0] ?? 0) > (expected[name]![0] ?? 0) + 1e-6
    if (isBetter) return []
    return values.flatMap((value, i) => {
      const reference = expected[name]![i] ?? null
      if (withoutSpread.includes(study) && (value === null || reference === null)) return []
      const isNear =
        value === null || reference === null
          ? value === reference
          : Math.abs(value - reference) <= tolerance * Math.max(Math.abs(reference), 1e-3)
      return isNear ? [] : [`${name} ${i}: ${value}, R ${reference}`]
    })
  })
}

function compared(expected: readonly Reference[]): string[] {
  return expected.flatMap((reference, i) =>
    differences(i + 1, ours(blocks.filter(({ set }) => set === i + 1)), reference).map(
      (text) => `study ${i + 1}, ${text}`,
    ),
  )
}

function rThatIsHere(): string | null {
  try {
    return execFileSync('Rscript', ['-e', 'library(survival); cat("R")'], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    })
  } catch {
    return null
  }
}

describe('the statistics of 200 random studies', () => {
  it('are those that R printed', () => {
    const expected = parsed(kept)
    expect(expected).toHaveLength(studies)
    expect(compared(expected)).toEqual([])
  })

  it.runIf(rThatIsHere() === 'R')('are those of the R of this machine', () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-studies-'))
    try {
      const file = join(folder, 'studies.csv')
      writeFileSync(file, studiesCsv(blocks))
      expect(compared(parsed(execFileSync('Rscript', [script, file], { encoding: 'utf8' })))).toEqual([])
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})

import type { FindingLine } from '#contract/findings/lines.ts'
import type { FindingsOptions } from '#contract/findings/options.ts'
import { censoredFit } from '../censored/censoredFit.ts'
import { kaplanMeier } from '../censored/kaplanMeier.ts'
import type { StrengthDistribution } from '../censored/locationScale.ts'
import { groupSummary } from '../groupSummary.ts'
import { type Cell, censoredStrengths, type Treatment, treatedBlocks } from '../observation.ts'
import { esdOutliers, grubbsOutlier } from '../outliers.ts'

const distributions: readonly StrengthDistribution[] = ['weibull', 'lognormal', 'normal']
/** How the intervals of a censored fit are found (domain/findings/censored/profileInterval.ts). */
const profileMethod = 'profile likelihood, small-sample scale'

/**
 * Lines about one group at one age by itself. `wants` says which kinds are asked for, so that nothing is computed in vain.
 * Checked: tests/domain/findings/lines/cellLines.spec.ts.
 */
export function* cellLines(
  cell: Cell,
  treatment: Treatment,
  options: FindingsOptions,
  wants: (kind: FindingLine['kind']) => boolean,
): Generator<FindingLine> {
  const { group, ageMonths } = cell
  const { confidence, toleranceConfidence, toleranceContent } = options
  const tolerance = { confidence: toleranceConfidence, content: toleranceContent }
  const summary = groupSummary(cell, treatment, { confidence, tolerance })
  yield { kind: 'group-summary', group, ageMonths, treatment: treatment.woodFailure, ...summary }
  const about = { kind: 'note', about: 'group-summary', group, ageMonths } as const
  if (summary.n === 0) yield { ...about, code: 'no-blocks' }
  else if (summary.n === 1) yield { ...about, code: 'one-block' }
  else if (summary.sdMPa === 0) yield { ...about, code: 'no-spread' }
  if (wants('censored-fit') || wants('survival')) yield* censoredLines(cell, treatment, options)
  if (wants('outlier')) yield* outlierLines(cell, treatment, 1 - confidence)
}

function* censoredLines(cell: Cell, treatment: Treatment, options: FindingsOptions): Generator<FindingLine> {
  const { group, ageMonths, counted } = cell
  if (counted.length === 0) return
  const strengths = censoredStrengths(counted, treatment)
  const counts = { failures: strengths.failed.length, censored: strengths.censored.length }
  const wanted = options.distribution === null ? distributions : [options.distribution]
  const note = { kind: 'note', about: 'censored-fit', group, ageMonths } as const
  let why: ReturnType<typeof censoredFit> | null = null
  let isOpen = false
  for (const distribution of wanted) {
    const fit = censoredFit(strengths, distribution, options.confidence)
    if (typeof fit === 'string') why = fit
    else isOpen ||= [fit.meanLowMPa, fit.meanHighMPa, fit.b10LowMPa, fit.b10HighMPa].includes(null)
    const found = typeof fit === 'string' ? noFit : fit
    yield { kind: 'censored-fit', group, ageMonths, distribution, ...counts, ...found, intervalMethod: profileMethod }
  }
  if (why !== null)
    yield { ...note, code: why === 'no-failure' ? 'no-failure' : why === 'no-spread' ? 'one-strength' : 'no-fit' }
  if (isOpen) yield { ...note, code: 'open-interval' }
  yield { kind: 'survival', group, ageMonths, ...kaplanMeier(strengths) }
}

const noFit = {
  logLikelihood: null,
  aic: null,
  aicc: null,
  parameters: null,
  standardErrors: null,
  meanMPa: null,
  meanLowMPa: null,
  meanHighMPa: null,
  medianMPa: null,
  b10MPa: null,
  b10LowMPa: null,
  b10HighMPa: null,
} as const

function* outlierLines(cell: Cell, treatment: Treatment, alpha: number): Generator<FindingLine> {
  const blocks = treatedBlocks(cell.counted, treatment)
  const values = blocks.map(({ strengthMPa }) => strengthMPa)
  const { group, ageMonths } = cell
  const named = (index: number) => ({ specimen: blocks[index]!.block.specimen, strengthMPa: values[index]! })
  const one = grubbsOutlier(values, alpha)
  if (one !== null) {
    const { index, ...found } = one
    yield { kind: 'outlier', group, ageMonths, method: 'grubbs', ...named(index), ...found }
  }
  for (const { index, ...found } of esdOutliers(values, alpha))
    yield { kind: 'outlier', group, ageMonths, method: 'generalized-esd', ...named(index), ...found }
}

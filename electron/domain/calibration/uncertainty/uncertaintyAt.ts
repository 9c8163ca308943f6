import type {
  UncertaintyAtForce,
  UncertaintyContribution,
  UncertaintyModel,
} from '#contract/calibration/uncertainty.ts'
import { bracketedRoot } from '../../numbers/bracketedRoot.ts'
import { tQuantile } from '../../numbers/distributions/studentT.ts'
import { fittedValue, standardErrorOfFit } from '../fit/prediction.ts'
import { effectiveDegreesOfFreedom } from './effectiveDegreesOfFreedom.ts'

const coverageFactor = 2

/**
 * The reading at which the fit gives a force: among the readings, else a little beyond because repeats scatter, else (a curve that
 * misses its own end steps) the end that comes nearest.
 */
function readingAt(model: UncertaintyModel, forceN: number): number {
  const gap = (reading: number) => fittedValue(model.centred, reading) - forceN
  const [low, high] = model.readingRange
  const margin = 0.2 * (high - low)
  for (const [from, to] of [
    [low, high],
    [low - margin, high + margin],
  ] as const)
    if (gap(from) <= 0 !== gap(to) <= 0) return bracketedRoot(gap, from, to)
  return Math.abs(gap(low)) < Math.abs(gap(high)) ? low : high
}

function contributionsAt(model: UncertaintyModel, forceN: number): UncertaintyContribution[] {
  const reading = readingAt(model, forceN)
  const step = 1e-4 * model.centred.scale
  const slope = (fittedValue(model.centred, reading + step) - fittedValue(model.centred, reading - step)) / (2 * step)
  const contributions: UncertaintyContribution[] = []
  const rectangular = (source: UncertaintyContribution['source'], halfWidthN: number | null) => {
    if (halfWidthN !== null)
      contributions.push({
        source,
        standardUncertaintyN: halfWidthN / Math.sqrt(3),
        distribution: 'rectangular',
        degreesOfFreedom: null,
      })
  }
  const share = (part: number | null) => (part === null ? null : part * forceN)
  rectangular('weights', share(model.weightsShare))
  rectangular('buoyancy', share(model.buoyancyShare))
  rectangular('lever', share(model.leverShare))
  rectangular('gravity', share(model.gravityShare))
  contributions.push({
    source: 'fit',
    standardUncertaintyN: standardErrorOfFit(model.centred, reading),
    distribution: 'normal',
    degreesOfFreedom: model.centred.degreesOfFreedom,
  })
  rectangular('lack-of-fit', model.lackOfFitHalfWidthN)
  contributions.push({
    source: 'repeatability',
    standardUncertaintyN: model.repeatabilityN,
    distribution: 'normal',
    degreesOfFreedom: model.repeatabilityDegreesOfFreedom,
  })
  rectangular('resolution', model.resolution === null ? null : (model.resolution * Math.abs(slope)) / 2)
  rectangular('zero', model.zeroHalfWidthN)
  rectangular('reversibility', share(model.reversibilityShare))
  rectangular('creep', share(model.creepShare))
  return contributions
}

/**
 * Uncertainty of a force found with a calibration, in N and percent of it, with every contribution.
 *
 *   u_c² = Σ uᵢ²      U = 2 u_c      U₉₅ = t(0.975, ν_eff) u_c
 *
 * Shares and half-widths are rectangular: u = half-width / √3; resolution: half-width r/2 times the slope. Fit and
 * repeatability are normal with their degrees of freedom. A contribution that was not measured is left out, not taken as 0.
 * Throws RangeError for a force outside the range of the calibration.
 * Source: JCGM 100:2008, 5.1.2, 4.3.7, 6.2 and annex G (from memory); which contributions: common practice.
 * Checked: tests/domain/calibration/uncertainty/uncertaintyAt.spec.ts by hand, and calibrationOf.spec.ts by simulated coverage.
 */
export function uncertaintyAt(model: UncertaintyModel, forceN: number): UncertaintyAtForce {
  const [low, high] = model.forceRangeN
  if (!(forceN >= low && forceN <= high))
    throw new RangeError(`uncertaintyAt requires a force in the calibrated range, ${low} to ${high} N`)
  const contributions = contributionsAt(model, forceN)
  const combinedN = Math.hypot(...contributions.map(({ standardUncertaintyN }) => standardUncertaintyN))
  const freedom = effectiveDegreesOfFreedom(
    contributions.map(({ standardUncertaintyN, degreesOfFreedom }) => ({
      standardUncertainty: standardUncertaintyN,
      degreesOfFreedom,
    })),
  )
  const coverageFactor95 = tQuantile(0.975, freedom ?? Number.POSITIVE_INFINITY)
  return {
    forceN,
    contributions,
    combinedN,
    effectiveDegreesOfFreedom: freedom,
    expandedN: coverageFactor * combinedN,
    expandedPercent: (100 * coverageFactor * combinedN) / forceN,
    coverageFactor95,
    expanded95N: coverageFactor95 * combinedN,
  }
}

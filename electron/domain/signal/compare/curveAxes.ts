import type { Alignment, ComparedCurve, Normalising } from '#contract/breaks/comparison.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'

/** Where a curve is drawn: at ((t − originS) / timeUnit, force / forceUnit). */
export type CurveAxes = Pick<ComparedCurve, 'originS' | 'timeUnit' | 'forceUnit'>

/** What is known of a curve: the times of its result, and the load that counts as its peak, in the unit of the curve. */
export type CurveMarks = Pick<EvaluationResult, 'outcome' | 'onsetTimeS' | 'peakTimeS' | 'breakTimeS'> & {
  peak: number | null
}

/**
 * The axes of a curve, or why it cannot be compared that way, as the end of a sentence.
 *
 *   aligned at     originS   time of onset, of the peak or of the break
 *   force          forceUnit peak / 100: percent of its own peak
 *   force and time timeUnit  (peak − onset) / 100: percent of the time from onset to peak, as well
 *
 * Checked: tests/domain/signal/compare/curveAxes.spec.ts by hand.
 */
export function curveAxes(marks: CurveMarks, alignAt: Alignment, normalising: Normalising): CurveAxes | string {
  const { outcome, onsetTimeS, peakTimeS, breakTimeS, peak } = marks
  if (outcome === 'none') return 'nothing was loaded'
  const originS = { onset: onsetTimeS, peak: peakTimeS, break: breakTimeS }[alignAt]
  if (originS === null) {
    if (alignAt === 'break')
      return outcome === 'unloading' ? 'it ended in an unloading, not a break' : 'it has no break'
    return alignAt === 'onset' ? 'its start of loading was not found' : 'it has no peak'
  }
  if (normalising === 'no') return { originS, timeUnit: 1, forceUnit: 1 }
  if (peak === null || !(peak > 0)) return 'it has no peak above 0 to be a share of'
  const forceUnit = peak / 100
  if (normalising === 'force') return { originS, timeUnit: 1, forceUnit }
  if (onsetTimeS === null || peakTimeS === null || !(peakTimeS > onsetTimeS))
    return 'it has no time from start of loading to peak to be a share of'
  return { originS, timeUnit: (peakTimeS - onsetTimeS) / 100, forceUnit }
}

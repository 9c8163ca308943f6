import type { OverruledPeak } from '#contract/breaks/decision.ts'
import type { CurveEvent, Flag } from '#contract/breaks/evaluation.ts'
import { verifiedRangeFlags } from '../calibration/verificationOf.ts'

/** Said again of the load that counts, from the calibration. */
const rangeFlags: readonly Flag[] = ['above-verified-range', 'below-verified-range']

/**
 * Which flags of a result still hold when a person's word puts the sample at `timeS` in place of the peak found.
 *
 *   clipped        the sample stood at the end of the converter itself
 *   gap-at-peak    samples are missing next to the sample
 *   verified range never: it is judged anew
 *   all others     speak of the whole capture: the cell was overloaded, the curve sampled too slowly, however the load is read
 */
export function overruledFlags(found: readonly Flag[], events: readonly CurveEvent[], timeS: number): Flag[] {
  const lies = (within: CurveEvent['kind']) =>
    events.some(({ kind, startTimeS, endTimeS }) => kind === within && startTimeS <= timeS && timeS <= endTimeS)
  const kept = found.filter(
    (flag) =>
      !rangeFlags.includes(flag) && (flag !== 'clipped' || lies('clipping')) && (flag !== 'gap-at-peak' || lies('gap')),
  )
  return lies('gap') && !kept.includes('gap-at-peak') ? [...kept, 'gap-at-peak'] : kept
}

/**
 * The flags of a break: those of its result in force; where a person's word stands in place of the peak, those that hold for
 * the load that counts, the verified range of the calibration that it was found with among them (calibration null: none).
 */
export function flagsInForce(
  found: readonly Flag[],
  events: readonly CurveEvent[],
  word: Pick<OverruledPeak, 'kind' | 'timeS'> | null,
  peakN: number | null,
  calibration: { readonly verifiedRangeN: readonly [number, number] | null } | null,
): Flag[] {
  if (word === null) return [...found]
  const kept = overruledFlags(found, events, word.timeS)
  const range = calibration === null ? [] : verifiedRangeFlags(calibration.verifiedRangeN, peakN)
  return [...kept, ...range, word.kind]
}

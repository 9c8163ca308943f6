import type { BreakEnd, BreakHeader } from '#contract/breaks/capture.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import type { DetectionChange, DetectionSettings } from '#contract/breaks/detection.ts'
import type { Evaluation, EvaluationResult, NewEvaluation } from '#contract/breaks/evaluation.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { calibratedScale } from '#domain/calibration/scale/calibratedScale.ts'
import { zeroUnderScale } from '#domain/calibration/scale/scaleChange.ts'
import { evaluateRawCurve } from '#domain/signal/loading/evaluateRawCurve.ts'
import { storedEvaluation, type VerifiedRange } from '#domain/signal/loading/storedEvaluation.ts'

/** A finished break as it is evaluated once more. */
export type StoredBreak = { header: BreakHeader; end: BreakEnd; inForce: Evaluation; curve: RawCurve }

/** How it is evaluated: under a calibration (null: the scale of its result in force), with thresholds that differ from those at capture. */
export type WantedEvaluation = { calibration: Calibration | null; settings: DetectionChange }

/** An evaluation that has not been dated. */
export type UndatedEvaluation = Omit<NewEvaluation, 'madeAt' | 'result'> & { result: EvaluationResult }

type Circumstances = Pick<BreakHeader, 'readingUnit' | 'scale' | 'tare'> & { startThresholdN: number | null }

/**
 * What a stored curve says under other circumstances. `verifiedRangeN` is that of the calibration it is evaluated under.
 * Throws RangeError when the zero of the capture cannot be had under the other scale.
 */
export function evaluationUnder(
  stored: StoredBreak,
  wanted: WantedEvaluation,
  verifiedRangeN: VerifiedRange,
): UndatedEvaluation {
  const { header, end, curve } = stored
  const { startThresholdN, ...circumstances } =
    wanted.calibration === null ? asInForce(stored) : underCalibration(stored, wanted.calibration)
  const again = { ...circumstances, settings: changedSettings(header.settings, wanted.settings, startThresholdN) }
  const result = evaluateRawCurve(curve, again)
  const { madeAt: _undated, ...evaluation } = storedEvaluation(again, result, end.ending, '', verifiedRangeN)
  return { ...evaluation, breakId: header.breakId, besideId: stored.inForce.evaluationId }
}

function asInForce({ header, inForce }: StoredBreak): Circumstances {
  return {
    readingUnit: header.readingUnit,
    scale: inForce.scale,
    tare: header.tare === null ? null : { ...header.tare, offset: inForce.tareOffset },
    startThresholdN: inForce.settings.startThresholdN,
  }
}

/** The zero and the start threshold of the capture, carried over to the calibration. */
function underCalibration({ header, curve }: StoredBreak, calibration: Calibration): Circumstances {
  const scale = calibratedScale(calibration)
  const { tareOffset, startThresholdN } = zeroUnderScale(
    header.scale,
    scale,
    header.readingUnit,
    { tareOffset: header.tare?.offset ?? 0, startThresholdN: header.settings.startThresholdN },
    curve.readings[0] ?? 0,
  )
  const tare = header.tare === null ? null : { ...header.tare, offset: tareOffset }
  return { readingUnit: header.readingUnit, scale, tare, startThresholdN }
}

/** What the start threshold is found from: where one of these differs, the threshold of the capture no longer holds. */
const startSettings = ['capacityN', 'startNoiseMultiple', 'startCapacityShare'] as const

function changedSettings(
  atCapture: DetectionSettings,
  change: DetectionChange,
  startThresholdN: number | null,
): DetectionSettings {
  const given = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined))
  const settings: DetectionSettings = { ...atCapture, ...given }
  const found = startSettings.some((name) => settings[name] !== atCapture[name]) ? null : startThresholdN
  return { ...settings, startThresholdN: found }
}

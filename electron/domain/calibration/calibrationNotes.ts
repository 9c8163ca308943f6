import type { CalibrationStep, DegreeProposal, LackOfFitTest } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationNote } from '#contract/calibration/calibrationNotes.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import type { CalibrationOptions } from './calibrationOptions.ts'
import { significance } from './fit/degreeProposal.ts'

/** What the notes are made from. */
export type NotedCalibration = {
  readonly rows: readonly CalibrationRow[]
  readonly options: CalibrationOptions
  readonly degree: number
  readonly proposal: DegreeProposal
  readonly lackOfFit: LackOfFitTest | null
  readonly steps: readonly CalibrationStep[]
  readonly verifiedRangeN: readonly [number, number] | null
  readonly degreesOfFreedom: number
  readonly repeated: boolean
}

/** Known forces that end below this share of the capacity leave most of it to the curve alone. */
const capacityShare = 1 / 5
const goodRuns = 3
const goodSteps = 5

function notesOnRange({ steps, verifiedRangeN, options: { capacityN } }: NotedCalibration): CalibrationNote[] {
  if (verifiedRangeN === null) return [{ code: 'no-range' }]
  const [lowestN, highestN] = verifiedRangeN
  const notes: CalibrationNote[] = []
  const below = steps.filter((step) => step.forceN < lowestN).length
  if (below > 0) notes.push({ code: 'steps-below-range', steps: below })
  if (capacityN !== null && highestN < capacityShare * capacityN)
    notes.push({ code: 'far-below-capacity', percent: (100 * highestN) / capacityN })
  return notes
}

function notesOnMeasurements({ rows, steps, options, repeated }: NotedCalibration): CalibrationNote[] {
  const notes: CalibrationNote[] = []
  const runs = new Set(rows.filter((row) => row.direction === 'up').map((row) => row.run)).size
  if (runs < goodRuns) notes.push({ code: 'few-runs', runs })
  if (steps.length < goodSteps) notes.push({ code: 'few-steps', steps: steps.length })
  if (!repeated) notes.push({ code: 'not-repeated' })
  if (steps.every((step) => step.v === null)) notes.push({ code: 'no-decreasing' })
  if (steps.every((step) => step.f0 === null)) notes.push({ code: 'no-zero-return' })
  if (options.creepShare === null) notes.push({ code: 'no-hold' })
  if (options.resolution === null) notes.push({ code: 'no-resolution' })
  const shares = [
    ...(options.weightsShare === null ? (['weights'] as const) : []),
    ...(options.gravityShare === null ? (['gravity'] as const) : []),
  ]
  if (shares.length > 0) notes.push({ code: 'left-out', shares })
  return notes
}

function notesOnFit({
  degree,
  proposal,
  lackOfFit,
  degreesOfFreedom,
  options,
  rows,
}: NotedCalibration): CalibrationNote[] {
  const notes: CalibrationNote[] = []
  if (degreesOfFreedom === 0) notes.push({ code: 'no-degrees-of-freedom' })
  if (degree !== proposal.degree) notes.push({ code: 'degree-chosen', degree })
  if (lackOfFit !== null && lackOfFit.pValue < significance) notes.push({ code: 'lack-of-fit' })
  if (options.throughZero) {
    const readings = rows.map((row) => row.reading)
    const span = Math.max(...readings) - Math.min(...readings)
    const zero = rows.find((row) => row.forceN === 0 && Math.abs(row.reading) > 0.01 * span)
    if (zero !== undefined) notes.push({ code: 'zero-reading', reading: zero.reading })
  }
  return notes
}

/** What limits the word of a calibration, most serious first. Checked: tests/domain/calibration/calibrationNotes.spec.ts. */
export function calibrationNotes(calibration: NotedCalibration): CalibrationNote[] {
  return [...notesOnFit(calibration), ...notesOnRange(calibration), ...notesOnMeasurements(calibration)]
}

import type { CalibrationStep, DegreeProposal, LackOfFitTest } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import type { CalibrationOptions } from './calibrationOptions.ts'
import { significance } from './fit/degreeProposal.ts'
import { resolutionMultiple } from './steps/verifiedRange.ts'

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

function notesOnRange({ steps, verifiedRangeN, options }: NotedCalibration): string[] {
  if (verifiedRangeN === null)
    return [`No force applied is ${resolutionMultiple} times the resolution: there is no verified range.`]
  const below = steps.filter((step) => step.forceN < verifiedRangeN[0])
  const notes = []
  if (below.length > 0)
    notes.push(
      `${below.length} of the steps lie below ${resolutionMultiple} times the resolution, outside the verified range, and do not count for the class.`,
    )
  if (options.capacityN !== null && verifiedRangeN[1] < options.capacityN / 5)
    notes.push(
      `The highest known force is ${((100 * verifiedRangeN[1]) / options.capacityN).toFixed(1)} % of the capacity: results above it rest on the curve alone.`,
    )
  return notes
}

function notesOnMeasurements({ rows, steps, options, repeated }: NotedCalibration): string[] {
  const notes = []
  const runs = new Set(rows.filter((row) => row.direction === 'up').map((row) => row.run)).size
  if (runs < 3)
    notes.push(`There ${runs === 1 ? 'is 1 run' : `are ${runs} runs`} of increasing force; three are good practice.`)
  if (steps.length < 5)
    notes.push(
      `There ${steps.length === 1 ? 'is 1 step' : `are ${steps.length} steps`}; five or more are good practice.`,
    )
  if (!repeated)
    notes.push('No step was repeated: repeatability is not known, and the spread about the curve stands for it.')
  if (steps.every((step) => step.v === null))
    notes.push('Decreasing force was not measured: reversibility is not known.')
  if (steps.every((step) => step.f0 === null))
    notes.push('Zero was not read both before and after a run: the zero error is not known.')
  if (options.creepShare === null)
    notes.push('No load was held: how the reading creeps under a load that stays is not known.')
  if (options.resolution === null) notes.push('The resolution of the reading is not known.')
  const left = (['weightsShare', 'gravityShare'] as const).filter((name) => options[name] === null)
  if (left.length > 0)
    notes.push(
      `The uncertainty leaves out ${left.map((name) => (name === 'weightsShare' ? 'the weights' : 'local gravity')).join(' and ')}, of which nothing was stated.`,
    )
  return notes
}

function notesOnFit({ degree, proposal, lackOfFit, degreesOfFreedom, options, rows }: NotedCalibration): string[] {
  const notes = []
  if (degreesOfFreedom === 0)
    notes.push(
      'There are only as many readings as coefficients: the curve goes through all of them and nothing can be said of its errors.',
    )
  if (degree !== proposal.degree) notes.push(`Degree ${degree} was chosen; proposed was: ${proposal.reason}`)
  if (lackOfFit !== null && lackOfFit.pValue < significance)
    notes.push('The lack of fit is significant: the curve misses some steps by more than the repeats scatter.')
  if (options.throughZero) {
    const readings = rows.map((row) => row.reading)
    const span = Math.max(...readings) - Math.min(...readings)
    const zero = rows.find((row) => row.forceN === 0 && Math.abs(row.reading) > 0.01 * span)
    if (zero !== undefined)
      notes.push(
        `The curve is held at zero, but the reading without load is ${zero.reading}: fit with a constant instead.`,
      )
  }
  return notes
}

/** What limits the word of a calibration, each one plain sentence, most serious first. */
export function calibrationNotes(calibration: NotedCalibration): string[] {
  return [...notesOnFit(calibration), ...notesOnRange(calibration), ...notesOnMeasurements(calibration)]
}

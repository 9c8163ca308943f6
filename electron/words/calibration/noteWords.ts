import type { CalibrationAssessment, DegreeProposal } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationNote } from '#contract/calibration/calibrationNotes.ts'
import { resolutionMultiple } from '#domain/calibration/steps/verifiedRange.ts'
import { withoutEndingZeros, writeSignificant } from '../units/numbers.ts'
import { proposalWords } from './proposalWords.ts'

/** What limits the word of a calibration, one plain sentence each, most serious first. */
export function noteSentences({ notes, proposal }: Pick<CalibrationAssessment, 'notes' | 'proposal'>): string[] {
  return notes.map((note) => (typeof note === 'string' ? note : noteWords(note, proposal)))
}

function noteWords(note: CalibrationNote, proposal: DegreeProposal): string {
  switch (note.code) {
    case 'no-degrees-of-freedom':
      return 'There are only as many readings as coefficients: the curve goes through all of them and nothing can be said of its errors.'
    case 'degree-chosen':
      return `Degree ${note.degree} was chosen; proposed was: ${proposalWords(proposal)}`
    case 'lack-of-fit':
      return 'The lack of fit is significant: the curve misses some steps by more than the repeats scatter.'
    case 'zero-reading':
      return `The curve goes through zero, but the reading without load is ${withoutEndingZeros(writeSignificant(note.reading, 4))}: fit with a constant instead.`
    case 'no-range':
      return `No force applied is ${resolutionMultiple} times the resolution: there is no verified range.`
    case 'steps-below-range':
      return `${note.steps} of the steps lie below ${resolutionMultiple} times the resolution, outside the verified range, and do not count for the class.`
    case 'far-below-capacity':
      return `The highest known force is ${note.percent.toFixed(1)} % of the rated load: results above it are extrapolated.`
    case 'few-runs':
      return `There ${note.runs === 1 ? 'is 1 run' : `are ${note.runs} runs`} of increasing force; three are good practice.`
    case 'few-steps':
      return `There ${note.steps === 1 ? 'is 1 step' : `are ${note.steps} steps`}; five or more are good practice.`
    case 'not-repeated':
      return 'No step was repeated: repeatability is not known, and the spread about the curve stands for it.'
    case 'no-decreasing':
      return 'Decreasing force was not measured: reversibility is not known.'
    case 'no-zero-return':
      return 'Zero was not read both before and after a run: the zero error is not known.'
    case 'no-hold':
      return 'No load was held: how the reading creeps under a load that stays is not known.'
    case 'no-resolution':
      return 'The resolution of the reading is not known.'
    case 'left-out':
      return `The uncertainty leaves out ${note.shares.map((share) => (share === 'weights' ? 'the weights' : 'local gravity')).join(' and ')}, of which nothing was stated.`
  }
}

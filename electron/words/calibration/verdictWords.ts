import type { CheckVerdict } from '#contract/calibration/checkWeight.ts'
import { runLength } from '#domain/calibration/control/checkWeight.ts'
import { writeSignificant } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** What was seen of a check weight, and what to do, in a sentence or two each. */
export function verdictWords(verdict: CheckVerdict, force: Quantity): { sentence: string; action: string } {
  return { sentence: seenWords(verdict, force), action: actions[verdict.standing] }
}

const actions: Record<CheckVerdict['standing'], string> = {
  'too-few': 'Go on.',
  'in-control': 'Go on.',
  watch: 'Testing may go on today; look for what has changed and calibrate soon.',
  outside:
    'Do not test yet: look at weight, fixture, cable and zero, and check again. If it is outside again, calibrate before testing.',
}

function seenWords(verdict: CheckVerdict, force: Quantity): string {
  const { finding, deviationN, allowedN, lowerN, upperN, checksMissing } = verdict
  const number = (forceN: number | null) => writeSignificant((forceN ?? 0) * force.factor, 3)
  const text = (forceN: number | null) => `${number(forceN)}\u00a0${force.unit}`
  switch (finding) {
    case 'beyond-uncertainty':
      return `The check weight reads ${text(deviationN)} off, more than the uncertainty of ${text(allowedN)} allows.`
    case 'within-uncertainty':
      return `The check weight reads right within its uncertainty; ${checksMissing} more checks are needed for a control chart.`
    case 'beyond-limits':
      return `The check weight reads ${text(deviationN)} off, outside its limits of ${number(lowerN)} to ${text(upperN)}.`
    case 'drift':
      return 'The check weight drifts slowly away from its centre.'
    case 'one-sided':
      return `The last ${runLength} checks all lie on one side of the centre.`
    case 'as-it-should':
      return 'The check weight reads as it should.'
  }
}

import type { DegreeProposal } from '#contract/calibration/calibrationAssessment.ts'
import type { AssessmentChoices } from '#contract/calibration/calibrationRoutine.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { degreeWords } from '#words/calibration/fitWords.ts'
import { proposalWords } from '#words/calibration/proposalWords.ts'
import { resolutionWords } from '#words/calibration/resolutionWords.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Field } from '../../../widgets/Field.tsx'
import { Switch } from '../../../widgets/Switch.tsx'

const degrees = [
  { value: 'proposed', label: 'As proposed' },
  { value: '1', label: 'Line' },
  { value: '2', label: 'Parabola' },
  { value: '3', label: 'Cubic' },
] as const
const fits = [
  { value: 'up', label: 'Going up only' },
  { value: 'all', label: 'Up and down' },
] as const

/** How the readings are judged: the curve, which readings make it, and how finely the reading can be read. */
export function JudgementFields(props: {
  degree: AssessmentChoices['degree']
  throughZero: boolean
  fitOver: AssessmentChoices['fitOver']
  resolution: string
  resolutionError: string | null
  unit: ReadingUnit
  suggested: number | null
  down: boolean
  proposal: DegreeProposal | null
  onDegree(degree: AssessmentChoices['degree']): void
  onThroughZero(on: boolean): void
  onFitOver(fitOver: AssessmentChoices['fitOver']): void
  onResolution(text: string): void
}) {
  const { proposal, suggested, unit } = props
  return (
    <section className="judgement-fields" aria-labelledby="judgement-title">
      <h2 id="judgement-title">Evaluation of the readings</h2>
      <Choice
        label="Curve"
        options={degrees}
        value={props.degree === null ? 'proposed' : `${props.degree}`}
        onChange={(value) =>
          props.onDegree(value === 'proposed' ? null : (Number(value) as NonNullable<AssessmentChoices['degree']>))
        }
      />
      {proposal === null ? null : (
        <p className="judgement-hint">
          <strong>Proposed: {degreeWords[proposal.degree as keyof typeof degreeWords]}.</strong>{' '}
          {proposalWords(proposal)}
        </p>
      )}
      {props.down ? (
        <Choice label="Readings that make the curve" options={fits} value={props.fitOver} onChange={props.onFitOver} />
      ) : null}
      <Switch
        label="Curve at zero"
        on={props.throughZero}
        onChange={props.onThroughZero}
        onWord="goes through zero"
        offWord="fitted"
      />
      <Field
        label="Resolution of the reading"
        unit={unit}
        value={props.resolution}
        error={props.resolutionError}
        hint={resolutionWords(suggested)}
        onChange={(event) => props.onResolution(event.currentTarget.value)}
      />
    </section>
  )
}

import type { Assessment } from '#contract/breaks/assessment.ts'
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { Decision } from '#contract/breaks/decision.ts'
import { decisionWords, setAsideCauseWords } from '#words/breaks/decisionWords.ts'
import { patternNames } from '#words/breaks/patternWords.ts'
import { sampleWords } from '#words/breaks/sampleWords.ts'
import { percentText } from '#words/units/numbers.ts'
import { instantWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

type Entry =
  | { at: string; assessment: Assessment; decision: null }
  | { at: string; assessment: null; decision: Decision }

/** Assessments and decisions together, newest first; of those that speak of the same thing the newest is in force. */
export function BreakHistory({ record }: { record: BreakRecord }) {
  const entries: Entry[] = [
    ...record.assessments.map((assessment) => ({ at: assessment.recordedAt, assessment, decision: null })),
    ...record.decisions.map((decision) => ({ at: decision.recordedAt, assessment: null, decision })),
  ].toReversed()
  entries.sort((a, b) => b.at.localeCompare(a.at))
  if (entries.length === 0)
    return <p className="empty-words">Nothing yet. Describe the faces, or set the break aside with a reason.</p>
  return (
    <ol className="history">
      {entries.map((entry) => (
        <li key={entry.assessment === null ? `d${entry.decision.decisionId}` : `a${entry.assessment.assessmentId}`}>
          {entry.assessment === null ? (
            <DecisionLine record={record} decision={entry.decision} />
          ) : (
            <p>
              <strong>Faces</strong>: {assessmentWords(entry.assessment)}
            </p>
          )}
          <p className="quiet">
            {instantWords(entry.at)}
            {(entry.assessment ?? entry.decision).by === '' ? '' : `, ${(entry.assessment ?? entry.decision).by}`}
          </p>
        </li>
      ))}
    </ol>
  )
}

function DecisionLine({ record, decision }: { record: BreakRecord; decision: Decision }) {
  const { force } = useQuantities()
  const { kind, cause, sample, reason } = decision
  return (
    <p>
      <strong>{decisionWords[kind]}</strong>
      {cause === null ? '' : ` (${setAsideCauseWords[cause]})`}
      {sample === null ? '' : `, ${sampleWords(record, sample, force)}`}: {reason}
    </p>
  )
}

function assessmentWords({ woodFailurePercent, failurePattern, note }: Assessment): string {
  const words = [
    woodFailurePercent === null ? null : `wood failure ${percentText(woodFailurePercent)}`,
    failurePattern === null ? null : `${failurePattern}, ${patternNames[failurePattern]}`,
    note === '' ? null : `“${note}”`,
  ].filter((part) => part !== null)
  return words.length === 0 ? 'nothing recorded' : words.join('; ')
}

import type { Assessment, BreakRecord, Decision } from '#contract/records/break.ts'
import { decisionWords, instantWords, patternNames } from '../wording.ts'

type Entry =
  | { at: string; assessment: Assessment; decision: null }
  | { at: string; assessment: null; decision: Decision }

/** Assessments and decisions together, newest first; the newest of a kind is in force. */
export function BreakHistory({ record }: { record: BreakRecord }) {
  const entries: Entry[] = [
    ...record.assessments.map((assessment) => ({ at: assessment.recordedAt, assessment, decision: null })),
    ...record.decisions.map((decision) => ({ at: decision.recordedAt, assessment: null, decision })),
  ].sort((a, b) => b.at.localeCompare(a.at))
  if (entries.length === 0)
    return <p className="empty-words">Nothing yet. Describe the faces, or set the break aside with a reason.</p>
  return (
    <ol className="history">
      {entries.map((entry) => (
        <li key={entry.assessment === null ? `d${entry.decision.decisionId}` : `a${entry.assessment.assessmentId}`}>
          {entry.assessment === null ? (
            <p>
              <strong>{decisionWords[entry.decision.kind]}</strong>: {entry.decision.reason}
            </p>
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

function assessmentWords({ woodFailurePercent, failurePattern, note }: Assessment): string {
  const words = [
    woodFailurePercent === null ? null : `wood failure ${woodFailurePercent} %`,
    failurePattern === null ? null : `${failurePattern}, ${patternNames[failurePattern]}`,
    note === '' ? null : `“${note}”`,
  ].filter((part) => part !== null)
  return words.length === 0 ? 'nothing recorded' : words.join('; ')
}

import { useState } from 'react'
import { mostPullsAsked, type PullGroup, type PullSummary } from '#contract/programme/pullProcedures.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { pullBlocksWords, pullDecisionWords, pullStateWords, windowDaysWords } from '#words/programme/pullWords.ts'
import { toTakeWords } from '#words/programme/toTakeWords.ts'
import { ageInMonthsWords, calendarDayWords } from '#words/units/calendarDays.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { breakAddress, canBreak } from '../breaking/pullsToBreak.ts'
import { PullDecisionDialog, type PullWord } from './PullDecisionDialog.tsx'

/** Pulls of one study or of several, with what is known of them, and what can be done with them. */
export function PullTable({ pulls, studyId }: { pulls: readonly PullSummary[]; studyId: number | null }) {
  const withStudy = studyId === null
  const [deciding, setDeciding] = useState<{ pull: PullSummary; kind: PullWord } | null>(null)
  const asked = pulls.slice(0, mostPullsAsked)
  const names = asked.map(({ studyId, gluedOn, ageMonths }) => ({ studyId, gluedOn, ageMonths }))
  const blocks = useAnswer('pulls.blocks', { pulls: names })
  // The answer before stays for a moment after other pulls are shown
  const groups = blocks.value?.length === asked.length ? blocks.value : []
  return (
    <>
      <table className="data-table due-table">
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">State</th>
            {withStudy ? <th scope="col">Study</th> : null}
            <th scope="col">Age</th>
            <th scope="col">Glued on</th>
            <th scope="col">Blocks</th>
            <th scope="col">Window</th>
            <th scope="col">
              <span className="visually-hidden screen-only">Decide</span>
              <span className="due-printed">Taken on, by</span>
            </th>
          </tr>
        </thead>
        {pulls.map((pull, i) => (
          <tbody key={pull.key}>
            <PullRow pull={pull} studyId={studyId} onDecide={(kind) => setDeciding({ pull, kind })} />
            <ToTakeRow pull={pull} groups={groups[i] ?? []} columns={withStudy ? 8 : 7} />
          </tbody>
        ))}
      </table>
      {deciding === null ? null : <PullDecisionDialog {...deciding} onClose={() => setDeciding(null)} />}
    </>
  )
}

function PullRow({
  pull,
  studyId,
  onDecide,
}: {
  pull: PullSummary
  studyId: number | null
  onDecide(kind: PullWord): void
}) {
  const { state, decision, gluedOn, dueOn } = pull
  const day = calendarDayWords(dueOn)
  const word = (kind: PullWord, label: string) => (
    <button
      type="button"
      className="button button-quiet screen-only"
      aria-label={`${label}: ${day}`}
      onClick={() => onDecide(kind)}
    >
      {label}
    </button>
  )
  return (
    <tr>
      <th scope="row">
        {day}
        {decision === null ? null : <p className="due-decision">{pullDecisionWords(pull, decision)}</p>}
      </th>
      <td>
        <span className="tag" data-pull={state}>
          {pullStateWords[state]}
        </span>
      </td>
      {studyId === null ? (
        <td>
          {pull.studyTitle}
          {pull.demo ? <span className="quiet"> ({simulatedMark})</span> : null}
        </td>
      ) : null}
      <td className="due-day">
        {ageInMonthsWords(pull.ageMonths)}
        {pull.added ? <span className="quiet"> (added)</span> : null}
      </td>
      <td className="due-day">
        {gluedOn === null ? <span className="quiet">not yet</span> : calendarDayWords(gluedOn)}
      </td>
      <td>{pullBlocksWords(pull.blocks, gluedOn !== null)}</td>
      <td>{windowDaysWords(pull)}</td>
      <td className="data-table-buttons">
        {state !== 'planned' && canBreak(pull) ? (
          <a
            className="button button-quiet screen-only"
            aria-label={`Break: ${day}`}
            href={breakAddress(studyId, [pull])}
          >
            Break
          </a>
        ) : null}
        {state === 'done' ? null : (
          <>
            {word('moved', 'Move')}
            {state === 'skipped' ? null : word('skipped', 'Skip')}
          </>
        )}
        {decision === null || decision.kind === 'restored' || state === 'done' ? null : word('restored', 'Restore')}
      </td>
    </tr>
  )
}

/** Which blocks are to be taken for a pull, and from where. */
function ToTakeRow({
  pull: { gluedOn },
  groups,
  columns,
}: {
  pull: PullSummary
  groups: readonly PullGroup[]
  columns: number
}) {
  const { length } = useQuantities()
  if (groups.length === 0) return null
  const { places, common } = toTakeWords(groups, gluedOn !== null, length.text)
  return (
    <tr className="due-take">
      <td colSpan={columns}>
        <ul>
          {places.map(({ place, blocks }) => (
            <li key={place}>
              <strong>{place}</strong> {blocks}
            </li>
          ))}
          {common === '' ? null : <li className="quiet">All: {common}.</li>}
        </ul>
      </td>
    </tr>
  )
}
